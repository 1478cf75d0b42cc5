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

/** The last bottom read at or before a minute, while it is held; else the next one as near ahead. */
export function bottomAt(trip: Trip, timeMs: number, heldMs: number): BottomReading | undefined {
  let best: BottomReading | undefined;
  for (const event of trip.events) {
    const { verb } = event.line;
    if ((verb !== "sonar" && verb !== "touch") || event.instant === null) continue;
    const shownM = measureOf(event.line, "bottom", "length", trip.gear.defaults);
    if (shownM === undefined || event.instant.utcMs > timeMs) continue;
    const ageMs = timeMs - event.instant.utcMs;
    if (ageMs > heldMs || (best !== undefined && best.ageMs <= ageMs)) continue;
    const below = verb === "sonar" ? trip.gear.sounderBelowM : 0;
    best = { waterM: shownM + below, shownM, event, ageMs };
  }
  return best;
}
