/** A trip as the model sees it: its day, boat, gear and events with their instants, in the order of the file. */
import type { FactLine, Line, PropertyLine } from "../../grammar/journal.ts";
import { resolveGear } from "./gear.ts";
import { type BookFile, type FileGear, fileGear } from "./gear-lines.ts";
import type { Gear, Rig } from "./gear-types.ts";
import type { Instant } from "./local-time.ts";
import { NO_THRESHOLDS, type ThresholdWords } from "./thresholds.ts";

/** One line of a trip's day. */
export interface TripEvent {
  /** Line number in the file, from 0. */
  readonly lineIndex: number;
  readonly line: FactLine;
  /** Null for a line without a clock: some time in the trip. */
  readonly instant: Instant | null;
  /** The rig in its first slot; `all` stays `all`. */
  readonly rig: string | undefined;
}

/** One trip. */
export interface Trip {
  readonly uri: string;
  readonly openerIndex: number;
  readonly opener: FactLine;
  /** Every line from the opener to the next trip's, of whatever kind. */
  readonly lines: readonly Line[];
  readonly date: string;
  readonly boat: string;
  readonly properties: readonly { lineIndex: number; line: PropertyLine }[];
  readonly events: readonly TripEvent[];
  readonly gear: Gear;
  readonly zone: string | undefined;
  /** How many of its lines can't be read, or only in part. */
  readonly unreadLines: number;
  /** Boats or gear are described among its lines. */
  readonly holdsGear: boolean;
}

/** Written instead of a rig when nobody saw which rod it was. */
export const UNKNOWN_RIG = "unknown";

/** Written instead of a rig for every rig in the water. */
export const ALL_RIGS = "all";

const FISH_VERBS: ReadonlySet<string> = new Set(["strike", "miss", "catch", "lost"]);

/** What a word in a rig's place says by itself on a line of that verb, in any capitals; undefined where it is a name. */
export function rigWord(written: string, verb: string): typeof ALL_RIGS | typeof UNKNOWN_RIG | undefined {
  const word = written.toLowerCase();
  if (word === ALL_RIGS) return verb === "pull" ? ALL_RIGS : undefined;
  return word === UNKNOWN_RIG && FISH_VERBS.has(verb) ? UNKNOWN_RIG : undefined;
}

/** Verbs whose first slot is a rig. */
export const RIG_VERBS: ReadonlySet<string> = new Set([
  "set",
  "move",
  "again",
  "change",
  "check",
  "pull",
  "tangle",
  "broke",
  "strike",
  "miss",
  "catch",
  "lost",
  "probe",
  "touch",
]);

/** Resolves gear for a boat and a day; the caller may keep the answers. */
export type GearResolver = (boat: string, date: string) => Gear;

/** Answers kept by the gear of the files they came from, one level for each file. */
interface KnownGear {
  readonly answers: Map<string, Gear>;
  readonly next: WeakMap<FileGear, KnownGear>;
  /** The days on which some line of the files begins to hold, in order. */
  readonly changes: readonly string[];
}

/** One tree of answers for each choice of thresholds. */
const knownGear = new WeakMap<ThresholdWords, KnownGear>();

/** Where answers from these files are kept; a keystroke in a trip leaves its books' gear, and so the place, the same. */
function knownFrom(files: readonly BookFile[], chosen: ThresholdWords): KnownGear {
  let known = knownGear.get(chosen) ?? { answers: new Map(), next: new WeakMap(), changes: [] };
  knownGear.set(chosen, known);
  for (const gear of files.map(fileGear)) {
    const next = known.next.get(gear) ?? knownAfter(known, gear);
    known.next.set(gear, next);
    known = next;
  }
  return known;
}

function knownAfter({ changes }: KnownGear, gear: FileGear): KnownGear {
  const dates = [...gear.lines, ...gear.properties].flatMap(({ line }) => line.date ?? []);
  return { answers: new Map(), next: new WeakMap(), changes: [...new Set([...changes, ...dates])].sort() };
}

/**
 * A resolver over files ordered nearest first, that answers each boat once for as long as its gear lasts: the days
 * from one change of the books to the next have the very same gear.
 */
export function gearResolver(
  files: readonly BookFile[],
  chosen: ThresholdWords = NO_THRESHOLDS,
): GearResolver {
  const { answers, changes } = knownFrom(files, chosen);
  return (boat, date) => {
    const since = changes.findLast((change) => change <= date) ?? "";
    const key = `${since} ${boat}`;
    const gear = answers.get(key) ?? resolveGear(files, boat, date, chosen);
    answers.set(key, gear);
    return gear;
  };
}

/** The downrigger whose cable a rig's line is on: itself, or the rig it is stacked on. Undefined for other rigs. */
export function cableRigOf(gear: Gear, rigName: string): Rig | undefined {
  let rig = gear.rigs.get(rigName);
  for (let depth = 0; rig !== undefined && depth < 8; depth++) {
    if (rig.kind === "downrigger") return rig;
    if (rig.stackedOn === undefined) return undefined;
    rig = gear.rigs.get(rig.stackedOn);
  }
  return undefined;
}

const stackedIn = new WeakMap<Gear, Map<string, readonly Rig[]>>();

/** Rigs stacked on a cable, directly or on another stacked one, itself left out. Kept for as long as the gear is. */
export function stackedOn(gear: Gear, cableRig: string): readonly Rig[] {
  const known = stackedIn.get(gear) ?? new Map<string, readonly Rig[]>();
  stackedIn.set(gear, known);
  const stacked =
    known.get(cableRig) ??
    [...gear.rigs.values()].filter(
      (rig) => rig.name !== cableRig && cableRigOf(gear, rig.name)?.name === cableRig,
    );
  known.set(cableRig, stacked);
  return stacked;
}

/** The properties of a trip under one word. */
export function propertiesOf(trip: Trip, verb: string): PropertyLine[] {
  return trip.properties.filter((property) => property.line.verb === verb).map((property) => property.line);
}
