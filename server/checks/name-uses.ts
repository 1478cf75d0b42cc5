/** Where lines use names: rigs, cables, balls, lures, species and the like. Definitions are not uses. */
import type { ReadLine } from "../../grammar/journal.ts";
import type { NameKind, SlotRow } from "../../grammar/vocabulary.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import type { Gear } from "../model/gear-types.ts";
import { NAMES_GEAR } from "../model/named-places.ts";
import { findSpecies } from "../model/species.ts";
import type { Place } from "./check.ts";
import { type Owner, ownerNear, ownerOf } from "./owners.ts";
import { rowOf } from "./sound-lines.ts";
import { allUnderOpeners, onEachLine } from "./under-openers.ts";

/** A name as a line uses it. */
export interface NameUse {
  /** In Unicode NFC. */
  readonly name: string;
  readonly quoted: boolean;
  readonly place: Place;
  readonly line: ReadLine;
  /** The attribute it is the value of; undefined for a slot. */
  readonly word: string | undefined;
  /** Whose the line is; undefined in a book without boats. */
  readonly owner: Owner | undefined;
  /** The line is an event of a trip, so that only gear of that day counts. */
  readonly isEvent: boolean;
}

type UsesByKind = ReadonlyMap<SlotRow["of"], readonly NameUse[]>;

const usesOfAnalysis = new WeakMap<JournalAnalysis, UsesByKind>();

/**
 * Every use of a kind of name that may be in doubt, in order. Left out are names on lines of a boat that no book
 * describes, species that are known, and on a trip's events rigs, cables, balls and lures that its gear holds.
 */
export function doubtfulUses(analysis: JournalAnalysis, kind: NameKind): readonly NameUse[] {
  let uses = usesOfAnalysis.get(analysis);
  if (uses === undefined) {
    uses = collect(analysis);
    usesOfAnalysis.set(analysis, uses);
  }
  return uses.get(kind) ?? [];
}

/** The uses under each opener, and those above the first, put together. */
function collect(analysis: JournalAnalysis): UsesByKind {
  const byKind = new Map<SlotRow["of"], NameUse[]>();
  for (const { kind, use } of allUnderOpeners(analysis, doubtfulUsesIn)) {
    const uses = byKind.get(kind);
    if (uses === undefined) byKind.set(kind, [use]);
    else uses.push(use);
  }
  return byKind;
}

interface UseOfKind {
  readonly kind: SlotRow["of"];
  readonly use: NameUse;
}

/** The uses on a line, without those that the trip's own gear answers. */
const doubtfulUsesIn = onEachLine(({ line, lineIndex }, { analysis }): UseOfKind[] => {
  const found: UseOfKind[] = [];
  const speaker = speakerOf(analysis, line, lineIndex);
  takeNames(line, (kind, text, written) => {
    const name = text.normalize("NFC");
    if ((speaker.isUntold && kind !== "zone") || isPlainlyHeld(kind, name, speaker.dayGear)) return;
    const { quoted, word, start, stop } = written;
    const place = { lineIndex, start, stop };
    const { owner, isEvent } = speaker;
    found.push({ kind, use: { name, quoted, place, line, word, owner, isEvent } });
  });
  return found;
});

/** What a trip's gear holds of the kinds that its events use most. */
const HELD: Readonly<Partial<Record<SlotRow["of"], (gear: Gear) => ReadonlyMap<string, unknown>>>> = {
  rig: (gear) => gear.rigs,
  lure: (gear) => gear.lures,
  ball: (gear) => gear.balls,
  cable: (gear) => gear.cables,
};

/** True for a known species, and where an event of a trip uses gear that the books hold on its day: nearly always. */
function isPlainlyHeld(kind: SlotRow["of"], name: string, dayGear: Gear | undefined): boolean {
  if (kind === "species") return findSpecies(name) !== undefined;
  return dayGear !== undefined && HELD[kind]?.(dayGear).has(name) === true;
}

/** Whose a line is, and whose gear its names are looked up in. */
interface Speaker {
  readonly owner: Owner | undefined;
  readonly isEvent: boolean;
  /** No book says anything of its boat. */
  readonly isUntold: boolean;
  /** On a trip's events, the gear of that day. */
  readonly dayGear: Gear | undefined;
}

function speakerOf(analysis: JournalAnalysis, line: ReadLine, lineIndex: number): Speaker {
  const isEvent = rowOf(line)?.place === "event";
  const owner = isEvent ? ownerOf(analysis, lineIndex) : ownerNear(analysis, lineIndex);
  const isUntold = owner === undefined ? isEvent : !owner.isDescribed;
  const dayGear = isEvent && owner?.trip !== undefined ? owner.gear : undefined;
  return { owner, isEvent, isUntold, dayGear };
}

/** Where a name stands. */
type WrittenName = Pick<NameUse, "quoted" | "word"> & Pick<Place, "start" | "stop">;

/** Gives each name that a line uses, those of its slots first, without making anything of the many that are no names. */
function takeNames(
  line: ReadLine,
  take: (kind: SlotRow["of"], text: string, written: WrittenName) => void,
): void {
  const row = rowOf(line);
  const slots = row?.slots ?? [];
  for (let index = NAMES_GEAR.has(line.verb) ? 1 : 0; index < line.slots.length; index++) {
    const kind = slots[Math.min(index, slots.length - 1)]?.of;
    const slot = line.slots[index];
    if (kind === undefined || slot === undefined) continue;
    const { text, quoted, start, stop } = slot;
    take(kind, text, { quoted, start, stop, word: undefined });
  }
  for (const { word, value, valueStart, stop } of line.items) {
    if (value.kind !== "name") continue;
    const type = row?.words.get(word)?.type;
    if (type?.kind === "name")
      take(type.of, value.text, { quoted: value.quoted, start: valueStart, stop, word });
  }
}
