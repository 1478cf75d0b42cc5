/**
 * What is told from a day's speeds, courses and turns alone, kept from one version of a file to the next while these lines
 * stay the very same: typing a setting, a fish or a depth works none of it out anew.
 */
import type { FactLine } from "../../grammar/journal.ts";
import { hasWord } from "../model/quantities.ts";
import { speedReadings } from "../model/readings.ts";
import { isSameList } from "../model/same-list.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import { variationOf } from "./bearings.ts";
import { contradictionsOf } from "./contradictions.ts";
import type { CurrentLook } from "./current-looks.ts";
import { endsLeg } from "./legs.ts";
import type { ShearUsed } from "./shear-used.ts";
import type { SpeedUsed } from "./speed-used.ts";

/** What was told so far; filled in by those who tell it. */
export interface WayKept {
  looks: readonly CurrentLook[] | undefined;
  /** By minute. */
  readonly shears: Map<number, ShearUsed | undefined>;
  /** By minute, for the ages of readings and the water's profiles that they lean on besides. */
  speeds:
    | { readonly madeOf: readonly unknown[]; readonly at: Map<number, SpeedUsed | undefined> }
    | undefined;
}

interface Kept {
  readonly madeOf: readonly unknown[];
  readonly way: WayKept;
}

const SPEED_VERBS = new Set(["probe", "surface", "gps"]);

const ofTrips = new WeakMap<Trip, WayKept>();
/** By the first of the lines that it is told from. */
const ofLines = new WeakMap<FactLine, Kept>();

/** What is kept for a trip; that of the version before where nothing it is told from changed. */
export function wayOf(trip: Trip): WayKept {
  const known = ofTrips.get(trip) ?? sameOrNew(trip);
  ofTrips.set(trip, known);
  return known;
}

function sameOrNew(trip: Trip): WayKept {
  const lines = trip.events.filter(isOfWay);
  const [first] = lines;
  if (first === undefined) return newWay();
  const madeOf = sourcesOf(trip, lines);
  const known = ofLines.get(first.line);
  if (known !== undefined && isSameList(known.madeOf, madeOf)) return known.way;
  const way = newWay();
  ofLines.set(first.line, { madeOf, way });
  return way;
}

function isOfWay({ line: { verb } }: TripEvent): boolean {
  return SPEED_VERBS.has(verb) || endsLeg(verb);
}

function newWay(): WayKept {
  return { looks: undefined, shears: new Map(), speeds: undefined };
}

/** Readings stand for their minutes, which other lines may put right. */
function sourcesOf(trip: Trip, lines: readonly TripEvent[]): unknown[] {
  const isMagnetic = lines.some(({ line }) => hasWord(line, "magnetic"));
  return [
    trip.gear,
    isMagnetic ? variationOf(trip)?.deg : undefined,
    beginsWithCut(trip),
    lines.length,
    ...lines,
    ...speedReadings(trip),
    ...contradictionsOf(trip).flatMap(({ of, first, second }) => [of, first, second]),
  ];
}

/** Whether anything happened on the first leg before the boat turned or ran. */
function beginsWithCut({ events }: Trip): boolean {
  let earliest: TripEvent | undefined;
  for (const event of events) {
    if (event.instant === null) continue;
    if (earliest === undefined || event.instant.utcMs < (earliest.instant?.utcMs ?? 0)) earliest = event;
  }
  return earliest !== undefined && endsLeg(earliest.line.verb);
}
