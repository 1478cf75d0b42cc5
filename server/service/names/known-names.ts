/** The names that gear lines define for one boat, and which of them a written one means on a day. */
import type { GearLine } from "../../model/gear-lines.ts";
import { matchName } from "../../model/match-name.ts";
import type { NamedKind } from "../../model/named-places.ts";
import { slotName } from "../../model/quantities.ts";

/** What the lines of a verb define. */
const KINDS: ReadonlyMap<string, NamedKind> = new Map([
  ["cable", "cable"],
  ["line", "cable"],
  ["ball", "ball"],
  ["lure", "lure"],
  ["rig", "rig"],
  ["nickname", "species"],
  ["limit", "group"],
  ["upkeep", "upkeep"],
  ["spot", "spot"],
]);

/** Kinds whose names are found with other capitals too, where only one can be meant. */
export const CAPITALS_FORGIVEN: ReadonlySet<NamedKind> = new Set(["rig", "cable", "ball", "lure"]);

type Lines = ReadonlyMap<string, readonly GearLine[]>;

const NO_LINES: Lines = new Map();

/** Gear lines by kind and by the name they define. */
export class KnownNames {
  readonly #byKind = new Map<NamedKind, Map<string, GearLine[]>>();

  constructor(lines: readonly GearLine[]) {
    for (const line of lines) {
      const kind = KINDS.get(line.line.verb);
      if (kind === undefined) continue;
      const names = this.#byKind.get(kind) ?? new Map<string, GearLine[]>();
      this.#byKind.set(kind, names);
      const name = slotName(line.line) ?? "";
      names.set(name, [...(names.get(name) ?? []), line]);
    }
  }

  /** The lines that define a name, of whatever day. */
  definitions(kind: NamedKind, name: string): readonly GearLine[] {
    return this.#byKind.get(kind)?.get(name) ?? [];
  }

  /** The lines that define a name or, where capitals are forgiven, one that differs in them. */
  alike(kind: NamedKind, name: string): GearLine[] {
    if (!CAPITALS_FORGIVEN.has(kind)) return [...this.definitions(kind, name)];
    const lowered = name.toLowerCase();
    const names = [...(this.#byKind.get(kind) ?? NO_LINES)];
    return names.flatMap(([other, lines]) => (other.toLowerCase() === lowered ? lines : []));
  }

  /**
   * The defined name that a written one means: first of those that hold on the day, then of all. Undefined where
   * nothing of the kind is called so.
   */
  meant(kind: NamedKind, written: string, date: string | undefined): string | undefined {
    const names: Lines = this.#byKind.get(kind) ?? NO_LINES;
    if (date !== undefined) {
      const onDay = this.#meantOnDay(names, kind, written, date);
      if (onDay !== undefined) return onDay;
    }
    const name = CAPITALS_FORGIVEN.has(kind) ? matchName(names, written) : written;
    return names.has(name) ? name : undefined;
  }

  #meantOnDay(names: Lines, kind: NamedKind, written: string, date: string): string | undefined {
    if (holdsOn(names.get(written), date)) return written;
    if (!CAPITALS_FORGIVEN.has(kind)) return undefined;
    const lowered = written.toLowerCase();
    const alike = [...names].filter(
      ([name, lines]) => name.toLowerCase() === lowered && holdsOn(lines, date),
    );
    return alike.length === 1 ? alike[0]?.[0] : undefined;
  }
}

function holdsOn(lines: readonly GearLine[] | undefined, date: string): boolean {
  return lines?.some(({ line }) => (line.date ?? "") <= date) === true;
}
