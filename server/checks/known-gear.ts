/** What the files within reach define for a boat, on whatever day. */
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import { fileGear, type GearLine, kindDefined } from "../model/gear-lines.ts";
import { slotName } from "../model/quantities.ts";

/** Gear lines by kind, then by the name they define, nearest file first. */
type Definitions = ReadonlyMap<string, ReadonlyMap<string, readonly GearLine[]>>;

const EMPTY: ReadonlyMap<string, readonly GearLine[]> = new Map();

/** The gear lines that speak of one boat. */
export class KnownGear {
  readonly #own: Definitions;
  readonly #loose: Definitions;

  constructor(own: Definitions, loose: Definitions) {
    this.#own = own;
    this.#loose = loose;
  }

  /** Lines that define a name. */
  definitions(kind: string, name: string): readonly GearLine[] {
    const own = this.#own.get(kind)?.get(name) ?? [];
    const loose = this.#loose.get(kind)?.get(name) ?? [];
    return [...own, ...loose];
  }

  has(kind: string, name: string): boolean {
    return this.#own.get(kind)?.has(name) === true || this.#loose.get(kind)?.has(name) === true;
  }

  /** Names of one kind. */
  *names(kind: string): Generator<string> {
    yield* (this.#own.get(kind) ?? EMPTY).keys();
    yield* (this.#loose.get(kind) ?? EMPTY).keys();
  }
}

interface Known {
  readonly byBoat: ReadonlyMap<string | null, Definitions>;
  readonly gears: Map<string | undefined, KnownGear>;
}

const knownOfAnalysis = new WeakMap<JournalAnalysis, Known>();

/** The gear of a boat; of every boat in reach where none is given. */
export function knownGear(analysis: JournalAnalysis, boat: string | undefined): KnownGear {
  let known = knownOfAnalysis.get(analysis);
  if (known === undefined) {
    known = { byBoat: definitionsByBoat(analysis), gears: new Map() };
    knownOfAnalysis.set(analysis, known);
  }
  const gear = known.gears.get(boat) ?? gearOf(known.byBoat, boat);
  known.gears.set(boat, gear);
  return gear;
}

function gearOf(byBoat: Known["byBoat"], boat: string | undefined): KnownGear {
  const loose = byBoat.get(null) ?? new Map();
  if (boat !== undefined) return new KnownGear(byBoat.get(boat) ?? new Map(), loose);
  const all: MutableDefinitions = new Map();
  for (const definitions of byBoat.values()) {
    for (const names of definitions.values())
      for (const lines of names.values())
        lines.forEach((one) => {
          add(all, one);
        });
  }
  return new KnownGear(all, new Map());
}

type MutableDefinitions = Map<string, Map<string, GearLine[]>>;

function definitionsByBoat(analysis: JournalAnalysis): Map<string | null, Definitions> {
  const byBoat = new Map<string | null, MutableDefinitions>();
  for (const line of analysis.files.flatMap((file) => fileGear(file).lines)) {
    const definitions = byBoat.get(line.boat) ?? new Map();
    byBoat.set(line.boat, definitions);
    add(definitions, line);
  }
  return byBoat;
}

function add(definitions: MutableDefinitions, one: GearLine): void {
  const kind = kindDefined(one.line.verb) ?? one.line.verb;
  const names = definitions.get(kind) ?? new Map<string, GearLine[]>();
  definitions.set(kind, names);
  const name = slotName(one.line) ?? "";
  const lines = names.get(name);
  if (lines === undefined) names.set(name, [one]);
  else lines.push(one);
}
