/** Stretches of a day on one course: from a turn, or the first line, to the next. */
import type { Trip, TripEvent } from "../model/trip.ts";
import { angleBetween } from "../physics/current.ts";
import { type Bearing, courseOf } from "./bearings.ts";

const ENDS_LEG = new Set(["turn", "run", "drift", "return"]);
/** True for verbs that end a leg and begin the next. */
export function endsLeg(verb: string): boolean {
  return ENDS_LEG.has(verb);
}

/** A leg that begins so is no troll. */
const NO_TROLL = new Set(["run", "drift", "return"]);
/** Two courses that differ by more are not of one leg, degrees (judgement). */
const TURNED_DEG = 45;

/** True when two courses are too different to be one leg. */
export function isTurned(oneDeg: number, otherDeg: number): boolean {
  return angleBetween(oneDeg, otherDeg) > TURNED_DEG;
}

const known = new WeakMap<Trip, readonly (readonly TripEvent[])[]>();

/** Lines with a minute in the order of time, split where the boat turned, ran or stopped, or where a course read shows that it had. */
export function legsOf(trip: Trip): readonly (readonly TripEvent[])[] {
  const legs = known.get(trip) ?? splitLegs(trip);
  known.set(trip, legs);
  return legs;
}

function splitLegs(trip: Trip): TripEvent[][] {
  const timed = trip.events.filter((event) => event.instant !== null).sort((a, b) => msOf(a) - msOf(b));
  const legs: TripEvent[][] = [[]];
  let courseDeg: number | undefined;
  for (const event of timed) {
    const course = courseOf(trip, event);
    const isCut =
      endsLeg(event.line.verb) ||
      (course !== undefined && courseDeg !== undefined && isTurned(course.deg, courseDeg));
    if (isCut) {
      legs.push([]);
      courseDeg = undefined;
    }
    courseDeg = course?.deg ?? courseDeg;
    legs.at(-1)?.push(event);
  }
  return legs.filter((leg) => leg.length > 0);
}

/** True for a leg on which the boat ran, drifted or was back. */
export function isNoTroll([first]: readonly TripEvent[]): boolean {
  return first !== undefined && NO_TROLL.has(first.line.verb);
}

/** The leg of a minute: the last one that had begun, else the first. */
export function legAt(trip: Trip, timeMs: number): readonly TripEvent[] | undefined {
  const legs = legsOf(trip);
  return legs.findLast(([first]) => first !== undefined && msOf(first) <= timeMs) ?? legs[0];
}

/** The course at a minute: the one written nearest to it on its leg; undefined on a run or a drift, or where none is. */
export function courseAt(trip: Trip, timeMs: number): Bearing | undefined {
  const leg = legAt(trip, timeMs);
  if (leg === undefined || isNoTroll(leg)) return undefined;
  let best: { readonly course: Bearing; readonly apartMs: number } | undefined;
  for (const event of leg) {
    const course = courseOf(trip, event);
    const apartMs = Math.abs(msOf(event) - timeMs);
    if (course !== undefined && (best === undefined || apartMs < best.apartMs)) best = { course, apartMs };
  }
  return best?.course;
}

const msOf = ({ instant }: TripEvent): number => instant?.utcMs ?? 0;
