/** Where lines use names: rigs, cables, balls, lures, species and the like. Definitions are not uses. */
import { isRead } from "../../grammar/is-read.ts";
import type { ReadLine } from "../../grammar/journal.ts";
import type { NameKind, SlotRow } from "../../grammar/vocabulary.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import type { Place } from "./check.ts";
import { type Owner, ownerNear, ownerOf, ownersOf } from "./owners.ts";
import { rowOf } from "./sound-lines.ts";

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

/** Gear lines whose first slot is the very name they define. */
const DEFINING: ReadonlySet<string> = new Set([
  "boat",
  "cable",
  "line",
  "ball",
  "lure",
  "rig",
  "nickname",
  "limit",
  "upkeep",
  "spot",
]);

const usesOfAnalysis = new WeakMap<JournalAnalysis, UsesByKind>();

/** Every use of a kind of name, in order. Names on lines of a boat that no book describes are left out. */
export function nameUses(analysis: JournalAnalysis, kind: NameKind): readonly NameUse[] {
  let uses = usesOfAnalysis.get(analysis);
  if (uses === undefined) {
    uses = collect(analysis);
    usesOfAnalysis.set(analysis, uses);
  }
  return uses.get(kind) ?? [];
}

/** The uses under each opener, and those above the first, put together. */
function collect(analysis: JournalAnalysis): UsesByKind {
  const owners = ownersOf(analysis);
  const starts = [0, ...owners.map((owner) => owner.openerIndex)];
  const byKind = new Map<SlotRow["of"], NameUse[][]>();
  starts.forEach((start, n) => {
    const stretch = { start, stop: starts[n + 1] ?? analysis.parse.journal.lines.length };
    for (const [kind, uses] of usesUnder(analysis, owners[n - 1], stretch)) {
      const parts = byKind.get(kind);
      if (parts === undefined) byKind.set(kind, [uses]);
      else parts.push(uses);
    }
  });
  return new Map([...byKind].map(([kind, parts]) => [kind, parts.flat()]));
}

/** Line numbers, half-open. */
interface Stretch {
  readonly start: number;
  readonly stop: number;
}

type MutableUses = Map<SlotRow["of"], NameUse[]>;

const usesOfTrip = new WeakMap<Owner, MutableUses>();

/** The uses on the lines under an opener. A trip that stayed the very same has the very uses it had. */
function usesUnder(
  analysis: JournalAnalysis,
  owner: Owner | undefined,
  { start, stop }: Stretch,
): MutableUses {
  const known = owner?.trip === undefined ? undefined : usesOfTrip.get(owner);
  if (known !== undefined) return known;
  const byKind: MutableUses = new Map();
  const { journal, issues } = analysis.parse;
  for (let lineIndex = start; lineIndex < stop; lineIndex++) {
    const line = journal.lines[lineIndex];
    if (line === undefined || !isRead(line) || issues[lineIndex] !== null) continue;
    for (const { kind, use } of usesOn(analysis, line, lineIndex)) {
      const uses = byKind.get(kind);
      if (uses === undefined) byKind.set(kind, [use]);
      else uses.push(use);
    }
  }
  if (owner?.trip !== undefined) usesOfTrip.set(owner, byKind);
  return byKind;
}

function usesOn(
  analysis: JournalAnalysis,
  line: ReadLine,
  lineIndex: number,
): { kind: SlotRow["of"]; use: NameUse }[] {
  const isEvent = rowOf(line)?.place === "event";
  const owner = isEvent ? ownerOf(analysis, lineIndex) : ownerNear(analysis, lineIndex);
  const isUntold = owner === undefined ? isEvent : !owner.isDescribed;
  return writtenNames(line).flatMap(({ kind, text, quoted, start, stop, word }) => {
    if (isUntold && kind !== "zone") return [];
    // Written out: an object spread takes half as much memory again, and a long file has many uses.
    const name = text.normalize("NFC");
    return [{ kind, use: { name, quoted, place: { lineIndex, start, stop }, line, word, owner, isEvent } }];
  });
}

interface WrittenName {
  readonly kind: SlotRow["of"];
  readonly text: string;
  readonly quoted: boolean;
  readonly start: number;
  readonly stop: number;
  readonly word: string | undefined;
}

/** The names a line uses. */
function writtenNames(line: ReadLine): readonly WrittenName[] {
  return [...slotNames(line), ...itemNames(line)];
}

function slotNames(line: ReadLine): WrittenName[] {
  const slots = rowOf(line)?.slots ?? [];
  return line.slots.flatMap(({ text, quoted, start, stop }, index) => {
    const kind = slots[Math.min(index, slots.length - 1)]?.of;
    if (kind === undefined || (index === 0 && DEFINING.has(line.verb))) return [];
    return [{ kind, text, quoted, start, stop, word: undefined }];
  });
}

function itemNames(line: ReadLine): WrittenName[] {
  const row = rowOf(line);
  return line.items.flatMap(({ word, value, valueStart, stop }) => {
    const type = row?.words.get(word)?.type;
    if (value.kind !== "name" || type?.kind !== "name") return [];
    return [{ kind: type.of, text: value.text, quoted: value.quoted, start: valueStart, stop, word }];
  });
}
