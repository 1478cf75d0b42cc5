/** A trip as the model sees it: its day, boat, gear and events with their instants, in the order of the file. */
import type { FactLine, PropertyLine } from "../../grammar/journal.ts";
import type { Parse } from "../../grammar/parse.ts";
import { resolveGear } from "./gear.ts";
import { type BookFile, type FileGear, fileGear } from "./gear-lines.ts";
import type { Gear, Rig } from "./gear-types.ts";
import { type Instant, resolveInstant } from "./local-time.ts";
import { slotName } from "./quantities.ts";

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
  readonly date: string;
  readonly boat: string;
  readonly properties: readonly { lineIndex: number; line: PropertyLine }[];
  readonly events: readonly TripEvent[];
  readonly gear: Gear;
  readonly zone: string | undefined;
}

/** Written instead of a rig when nobody saw which rod it was. */
export const UNKNOWN_RIG = "unknown";

/** Written instead of a rig for every rig in the water. */
export const ALL_RIGS = "all";

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

const GEAR_VERBS = new Set([
  "boat",
  "cable",
  "ball",
  "lure",
  "rig",
  "nickname",
  "band",
  "limit",
  "upkeep",
  "spot",
  "calibrate",
]);

/** Resolves gear for a boat and a day; the caller may keep the answers. */
export type GearResolver = (boat: string, date: string) => Gear;

/** Answers kept by the gear of the files they came from, one level for each file. */
interface KnownGear {
  readonly answers: Map<string, Gear>;
  readonly next: WeakMap<FileGear, KnownGear>;
}

const knownGear: KnownGear = { answers: new Map(), next: new WeakMap() };

/** Where answers from these files are kept; a keystroke in a trip leaves its books' gear, and so the place, the same. */
function knownFrom(files: readonly BookFile[]): Map<string, Gear> {
  let known = knownGear;
  for (const gear of files.map(fileGear)) {
    const next = known.next.get(gear) ?? { answers: new Map(), next: new WeakMap() };
    known.next.set(gear, next);
    known = next;
  }
  return known.answers;
}

/** A resolver over files ordered nearest first, that answers each boat and day once for as long as their gear lasts. */
export function gearResolver(files: readonly BookFile[]): GearResolver {
  const known = knownFrom(files);
  return (boat, date) => {
    const key = `${date} ${boat}`;
    const gear = known.get(key) ?? resolveGear(files, boat, date);
    known.set(key, gear);
    return gear;
  };
}

/** Every trip of a file, in order. Lines before the first opener belong to none. */
export function tripsOf(uri: string, parse: Parse, gearOf: GearResolver): Trip[] {
  const trips: Trip[] = [];
  let open:
    | {
        opener: FactLine;
        openerIndex: number;
        properties: Trip["properties"][number][];
        lines: [number, FactLine][];
      }
    | undefined;
  const close = (): void => {
    if (open !== undefined) trips.push(finishTrip(uri, open, gearOf));
  };
  parse.journal.lines.forEach((line, lineIndex) => {
    if (line.kind === "fact" && line.verb === "trip") {
      close();
      open = { opener: line, openerIndex: lineIndex, properties: [], lines: [] };
    } else if (open !== undefined && line.kind === "property" && line.block === "trip") {
      open.properties.push({ lineIndex, line });
    } else if (open !== undefined && line.kind === "fact" && !GEAR_VERBS.has(line.verb)) {
      open.lines.push([lineIndex, line]);
    }
  });
  close();
  return trips;
}

function finishTrip(
  uri: string,
  open: {
    opener: FactLine;
    openerIndex: number;
    properties: Trip["properties"];
    lines: readonly [number, FactLine][];
  },
  gearOf: GearResolver,
): Trip {
  const date = slotName(open.opener) ?? "";
  const boat = slotName(open.opener, 1) ?? "";
  const gear = gearOf(boat, date);
  const zoneLine = open.properties.find((property) => property.line.verb === "zone");
  const zone = (zoneLine === undefined ? undefined : slotName(zoneLine.line)) ?? gear.zone;
  const events = open.lines.map(([lineIndex, line]) => ({
    lineIndex,
    line,
    instant: instantOf(line, date, zone),
    rig: RIG_VERBS.has(line.verb) ? slotName(line) : undefined,
  }));
  return {
    uri,
    openerIndex: open.openerIndex,
    opener: open.opener,
    date,
    boat,
    properties: open.properties,
    events,
    gear,
    zone,
  };
}

function instantOf(line: FactLine, tripDate: string, zone: string | undefined): Instant | null {
  if (line.clock === null) return null;
  const instant = resolveInstant(line.date ?? tripDate, line.clock, line.offset, zone);
  return Number.isFinite(instant.utcMs) ? instant : null;
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

/** Rigs stacked on a cable, directly or on another stacked one, itself left out. */
export function stackedOn(gear: Gear, cableRig: string): Rig[] {
  return [...gear.rigs.values()].filter(
    (rig) => rig.name !== cableRig && cableRigOf(gear, rig.name)?.name === cableRig,
  );
}

/** The properties of a trip under one word. */
export function propertiesOf(trip: Trip, verb: string): PropertyLine[] {
  return trip.properties.filter((property) => property.line.verb === verb).map((property) => property.line);
}
