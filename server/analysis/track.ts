/** Where the boat went: positions, legs between turns, distance run and speed made good. */
import type { Trip, TripEvent } from "../model/trip.ts";
import { type Bearing, courseOf } from "./bearings.ts";
import { wayBetween } from "./geodesic.ts";
import { isNoTroll, isTurned, legsOf } from "./legs.ts";
import { type Fix, fixesOf } from "./positions.ts";
import { jumpsIn } from "./stray-positions.ts";

/** One leg: from a turn or the first line to the next. */
export interface Leg {
  readonly fromMs: number;
  readonly toMs: number;
  /** The mean course read on it, else the one of the turn that began it. */
  readonly course: Bearing | undefined;
  readonly events: readonly TripEvent[];
  readonly fixes: readonly Fix[];
  /** From the first to the last position on it, m; undefined with fewer than two, or where one can't be. */
  readonly madeGoodM: number | undefined;
  readonly madeGoodDeg: number | undefined;
  /** Speed made good between those, m/s. */
  readonly madeGoodMS: number | undefined;
}

/** The boat's way through a day. */
export interface Track {
  /** Positions in the order of time; those that no boat gets to are left out. */
  readonly fixes: readonly Fix[];
  readonly legs: readonly Leg[];
  /** Along the straight lines between positions, so at least that much, m; undefined with fewer than two. */
  readonly distanceM: number | undefined;
}

/** The track of a day. */
export function trackOf(trip: Trip): Track {
  const all = fixesOf(trip);
  const jumps = jumpsIn(trip, all);
  const strays = new Set(jumps.flatMap(({ fix, isStray }) => (isStray ? [fix.event] : [])));
  const arrivals = new Set(jumps.map(({ fix }) => fix.event));
  const fixes = all.filter(({ event }) => !strays.has(event));
  const legs = legsOf(trip)
    .flatMap((events) => splitByPositions(trip, events, fixes))
    .flatMap((events) => legOf(trip, events, fixes, arrivals) ?? []);
  return { fixes, legs, distanceM: fixes.length < 2 ? undefined : along(fixes, arrivals) };
}

/** A way that no boat makes adds nothing. */
function along(fixes: readonly Fix[], arrivals: ReadonlySet<TripEvent>): number {
  return fixes.slice(1).reduce((sum, fix, i) => {
    const before = fixes[i];
    if (before === undefined || arrivals.has(fix.event)) return sum;
    return sum + (wayBetween(before.place, fix.place)?.distanceM ?? 0);
  }, 0);
}

/** Nearer than that, written minutes of a degree don't tell a turn, m (judgement). */
const TELLS_TURN_M = 500;

/** A leg without a course is split at the positions where the way bends by more than one leg's does. */
function splitByPositions(
  trip: Trip,
  events: readonly TripEvent[],
  fixes: readonly Fix[],
): (readonly TripEvent[])[] {
  const on = fixes.filter(({ event }) => events.includes(event));
  if (on.length < 3 || isNoTroll(events) || events.some((event) => courseOf(trip, event) !== undefined))
    return [events];
  const legs: TripEvent[][] = [[]];
  let wayDeg: number | undefined;
  let from = on[0];
  for (const event of events) {
    const at = on.findIndex((fix) => fix.event === event);
    const next = on[at + 1];
    const way = at < 0 || next === undefined ? undefined : wayBetween((on[at] as Fix).place, next.place);
    const isFar = way !== undefined && way.distanceM >= TELLS_TURN_M;
    legs.at(-1)?.push(event);
    if (!isFar) continue;
    if (wayDeg !== undefined && isTurned(way.bearingDeg, wayDeg) && from !== on[at]) {
      legs.push([event]);
      from = on[at];
    }
    wayDeg = way.bearingDeg;
  }
  return legs;
}

/** A leg is worth telling where a course or two positions are known. */
function legOf(
  trip: Trip,
  events: readonly TripEvent[],
  all: readonly Fix[],
  arrivals: ReadonlySet<TripEvent>,
): Leg | undefined {
  const [first] = events;
  const courses = events.flatMap((event) => courseOf(trip, event) ?? []);
  const read = events.flatMap((event) => (event.line.verb === "gps" ? (courseOf(trip, event) ?? []) : []));
  const fixes = all.filter(({ event }) => events.includes(event));
  if (first === undefined || (isNoTroll(events) && read.length === 0)) return undefined;
  if (courses.length === 0 && fixes.length < 2) return undefined;
  const isBroken = fixes.slice(1).some(({ event }) => arrivals.has(event));
  return {
    fromMs: first.instant?.utcMs ?? 0,
    toMs: (events.at(-1) ?? first).instant?.utcMs ?? 0,
    course: meanBearing(read) ?? courses[0],
    events,
    fixes,
    ...madeGood(isBroken ? [] : fixes),
  };
}

function madeGood(fixes: readonly Fix[]): Pick<Leg, "madeGoodM" | "madeGoodDeg" | "madeGoodMS"> {
  const [first, last] = [fixes[0], fixes.at(-1)];
  const way =
    first === undefined || last === undefined || first === last
      ? undefined
      : wayBetween(first.place, last.place);
  const seconds = ((last?.timeMs ?? 0) - (first?.timeMs ?? 0)) / 1000;
  return {
    madeGoodM: way?.distanceM,
    madeGoodDeg: way?.bearingDeg,
    madeGoodMS: way === undefined || seconds <= 0 ? undefined : way.distanceM / seconds,
  };
}

function meanBearing(bearings: readonly Bearing[]): Bearing | undefined {
  const [first] = bearings;
  if (first === undefined || bearings.some((one) => one.isMagnetic !== first.isMagnetic)) return first;
  const [x, y] = bearings.reduce(
    ([north, east], { deg }) => [
      north + Math.cos((deg * Math.PI) / 180),
      east + Math.sin((deg * Math.PI) / 180),
    ],
    [0, 0],
  );
  return { deg: ((Math.atan2(y, x) * 180) / Math.PI + 360) % 360, isMagnetic: first.isMagnetic };
}
