/** The depth of the water under the boat: the sounder's reading, with its face's depth below the water line added. */
import { measureOf } from "../model/quantities.ts";
import type { Trip, TripEvent } from "../model/trip.ts";

/** A depth of the bottom in use. */
export interface BottomReading {
  /** Depth of the water, m: the reading plus the sounder's depth below the water line. */
  readonly waterM: number;
  /** The reading itself, m. */
  readonly shownM: number;
  readonly event: TripEvent;
  readonly ageMs: number;
}

/** The last bottom read at or before a minute, while it is held and the boat has not run elsewhere. */
export function bottomAt(trip: Trip, timeMs: number, heldMs: number): BottomReading | undefined {
  const ranMs = lastRun(trip, timeMs);
  let best: BottomReading | undefined;
  for (const { readMs, ...reading } of bottomReadings(trip)) {
    const ageMs = timeMs - readMs;
    if (ageMs < 0 || ageMs > heldMs || readMs < ranMs) continue;
    if (best === undefined || ageMs < best.ageMs) best = { ...reading, ageMs };
  }
  return best;
}

/** As near as two readings of one minute's work may lie apart (judgement). */
const NEAR_MS = 5 * 60_000;

/** The sounder's reading nearest a minute, before it or after, within five minutes. */
export function bottomNear(trip: Trip, timeMs: number): BottomReading | undefined {
  let best: BottomReading | undefined;
  for (const { readMs, ...reading } of bottomReadings(trip)) {
    const ageMs = Math.abs(timeMs - readMs);
    if (ageMs <= NEAR_MS && (best === undefined || ageMs < best.ageMs)) best = { ...reading, ageMs };
  }
  return best;
}

function bottomReadings(trip: Trip): (Omit<BottomReading, "ageMs"> & { readMs: number })[] {
  return trip.events.flatMap((event) => {
    const { verb } = event.line;
    if ((verb !== "sonar" && verb !== "touch") || event.instant === null) return [];
    const shownM = measureOf(event.line, "bottom", "length", trip.gear.defaults);
    if (shownM === undefined) return [];
    const below = verb === "sonar" ? trip.gear.sounderBelowM : 0;
    return [{ waterM: shownM + below, shownM, event, readMs: event.instant.utcMs }];
  });
}

function lastRun(trip: Trip, timeMs: number): number {
  const runs = trip.events.flatMap(({ line, instant }) =>
    line.verb === "run" && instant !== null && instant.utcMs <= timeMs ? [instant.utcMs] : [],
  );
  return Math.max(Number.NEGATIVE_INFINITY, ...runs);
}
