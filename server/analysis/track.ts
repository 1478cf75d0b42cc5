/** Where the boat went: positions, legs between turns, distance run and speed made good. */
import type { Place } from "../model/gear-types.ts";
import { nameOf, positionOf } from "../model/quantities.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import { type Bearing, bearingOf } from "./bearings.ts";
import { isTurned } from "./current-looks.ts";
import { wayBetween } from "./geodesic.ts";

/** A position with its minute. */
export interface Fix {
  readonly event: TripEvent;
  readonly timeMs: number;
  readonly place: Place;
}

/** One leg: from a turn or the first line to the next. */
export interface Leg {
  readonly fromMs: number;
  readonly toMs: number;
  /** The mean course read on it, else the one of the turn that began it. */
  readonly course: Bearing | undefined;
  readonly fixes: readonly Fix[];
  /** From the first to the last position on it, m. */
  readonly madeGoodM: number | undefined;
  readonly madeGoodDeg: number | undefined;
  /** Speed made good between those, m/s. */
  readonly madeGoodMS: number | undefined;
}

/** The boat's way through a day. */
export interface Track {
  readonly fixes: readonly Fix[];
  readonly legs: readonly Leg[];
  /** Along the straight lines between positions, so at least that much, m; undefined with fewer than two. */
  readonly distanceM: number | undefined;
}

/** The positions of a day in the order of time. */
export function fixesOf(trip: Trip): Fix[] {
  return trip.events
    .flatMap((event) => {
      const place = placeOf(event);
      return place === undefined || event.instant === null
        ? []
        : [{ event, timeMs: event.instant.utcMs, place }];
    })
    .sort((a, b) => a.timeMs - b.timeMs);
}

/** A written position. The place a boat runs to is where it will be, not where it is. */
function placeOf({ line }: TripEvent): Place | undefined {
  return line.verb === "run" ? undefined : positionOf(line, "at");
}

/** Where the day was spent nearest to a minute: a position, else the spot run to. */
export function placeNear(trip: Trip, fixes: readonly Fix[], timeMs: number): Place | undefined {
  const nearest = fixes.reduce<Fix | undefined>(
    (best, fix) =>
      best === undefined || Math.abs(fix.timeMs - timeMs) < Math.abs(best.timeMs - timeMs) ? fix : best,
    undefined,
  );
  return nearest?.place ?? spotRunTo(trip);
}

function spotRunTo({ gear, events }: Trip): Place | undefined {
  for (const { line } of events) {
    if (line.verb !== "run") continue;
    const place = positionOf(line, "at") ?? gear.spots.get(nameOf(line, "to") ?? "");
    if (place !== undefined) return place;
  }
  return undefined;
}

/** The track of a day. */
export function trackOf(trip: Trip): Track {
  const fixes = fixesOf(trip);
  const legs = legEvents(trip).flatMap((events) => legOf(trip, events) ?? []);
  return { fixes, legs, distanceM: fixes.length < 2 ? undefined : along(fixes) };
}

function along(fixes: readonly Fix[]): number {
  return fixes
    .slice(1)
    .reduce((sum, fix, i) => sum + (wayBetween((fixes[i] as Fix).place, fix.place)?.distanceM ?? 0), 0);
}

const ENDS_LEG = new Set(["turn", "run", "drift", "return"]);

/** Lines with a minute, split where the boat turned, ran or stopped, or where a course read shows that it had. */
function legEvents(trip: Trip): TripEvent[][] {
  const timed = trip.events
    .filter((event) => event.instant !== null)
    .sort((a, b) => (a.instant?.utcMs ?? 0) - (b.instant?.utcMs ?? 0));
  const legs: TripEvent[][] = [[]];
  let courseDeg: number | undefined;
  for (const event of timed) {
    const course = courseOf(trip, event);
    const isCut =
      ENDS_LEG.has(event.line.verb) ||
      (course !== undefined && courseDeg !== undefined && isTurned(course.deg, courseDeg));
    if (isCut) {
      legs.push([]);
      courseDeg = undefined;
    }
    courseDeg = course?.deg ?? courseDeg;
    legs.at(-1)?.push(event);
  }
  return legs;
}

function courseOf({ gear }: Trip, { line }: TripEvent): Bearing | undefined {
  if (line.verb === "gps") return bearingOf(line, "course", gear);
  return line.verb === "turn" ? bearingOf(line, "to", gear) : undefined;
}

/** A leg is worth telling where a course or two positions are known. */
function legOf(trip: Trip, events: readonly TripEvent[]): Leg | undefined {
  const [first] = events;
  const isRun = first !== undefined && ["run", "drift", "return"].includes(first.line.verb);
  const courses = events.flatMap((event) => courseOf(trip, event) ?? []);
  const read = events.flatMap((event) => (event.line.verb === "gps" ? (courseOf(trip, event) ?? []) : []));
  const fixes = fixesOf({ ...trip, events });
  if (first === undefined || (isRun && read.length === 0) || (courses.length === 0 && fixes.length < 2))
    return undefined;
  const last = events.at(-1) ?? first;
  return {
    fromMs: first.instant?.utcMs ?? 0,
    toMs: last.instant?.utcMs ?? 0,
    course: meanBearing(read) ?? courses[0],
    fixes,
    ...madeGood(fixes),
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
