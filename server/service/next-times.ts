/** The times a new line of a trip may start with: from the last line's time and its step, and from the clock if asked. */
import { CompletionItemKind } from "vscode-languageserver-types";
import { localClock, localDate, resolveInstant } from "../model/local-time.ts";
import { meantMs } from "../model/time-order.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import type { Offer } from "./offers.ts";

const MINUTE_MS = 60_000;
/** A step longer than this is a pause, and says nothing of the next line (judgement). */
const LONGEST_STEP_MS = 60 * MINUTE_MS;
/** A line typed longer than this after the last one is not typed on the water (judgement). */
const LONGEST_PAUSE_MS = 12 * 60 * MINUTE_MS;

/** Stamps for a line, the likeliest first. `nowMs` is the clock, UTC ms, where the caller has one. */
export function nextTimes(trip: Trip, lineIndex: number, nowMs?: number): Offer[] {
  const [lastMs, beforeMs] = timesAbove(trip, lineIndex);
  const candidates: [number | undefined, string][] = [[nowOf(trip, lastMs, nowMs), "the time now"]];
  if (lastMs !== undefined) {
    const stepMs = beforeMs === undefined ? 0 : lastMs - beforeMs;
    if (stepMs > MINUTE_MS && stepMs <= LONGEST_STEP_MS)
      candidates.push([lastMs + stepMs, "as long after the last line as that was after the one before"]);
    candidates.push([lastMs + MINUTE_MS, "a minute after the last line"]);
    candidates.push([lastMs, "the minute of the last line"]);
  }
  return candidates.flatMap(([timeMs, detail]) => {
    const stamp = timeMs === undefined ? undefined : stampOf(trip, timeMs);
    return stamp === undefined
      ? []
      : [{ label: stamp, kind: CompletionItemKind.Value, detail, insert: `${stamp} ` }];
  });
}

/** The last time above a line, and the last one before that. */
function timesAbove(trip: Trip, lineIndex: number): number[] {
  const times: number[] = [];
  for (let at = lastAbove(trip.events, lineIndex); at >= 0 && times.length < 2; at--) {
    const event = trip.events[at];
    const timeMs = event === undefined ? null : meantMs(trip, event);
    if (timeMs !== null && timeMs !== times[0]) times.push(timeMs);
  }
  return times;
}

function lastAbove(events: readonly TripEvent[], lineIndex: number): number {
  let [low, high] = [0, events.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((events[middle]?.lineIndex ?? 0) < lineIndex) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** The clock, while the trip is under way. */
function nowOf(trip: Trip, lastMs: number | undefined, nowMs: number | undefined): number | undefined {
  if (nowMs === undefined) return undefined;
  const minuteMs = Math.floor(nowMs / MINUTE_MS) * MINUTE_MS;
  const isUnderWay =
    lastMs === undefined
      ? localDate(minuteMs, trip.zone) === trip.date
      : minuteMs >= lastMs && minuteMs - lastMs <= LONGEST_PAUSE_MS;
  return isUnderWay ? minuteMs : undefined;
}

/** A time as it is written on a line of the trip; undefined where that would mean another. */
function stampOf(trip: Trip, timeMs: number): string | undefined {
  const minuteMs = Math.floor(timeMs / MINUTE_MS) * MINUTE_MS;
  const [date, clock] = [localDate(minuteMs, trip.zone), localClock(minuteMs, trip.zone)];
  const { utcMs, problem } = resolveInstant(date, clock, null, trip.zone);
  if (utcMs !== minuteMs || problem !== null) return undefined;
  return date === trip.date ? clock : `${date} ${clock}`;
}
