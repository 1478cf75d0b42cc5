/** The depth of the water under the boat: the sounder's reading, with its face's depth below the water line added. */
import { measureOf } from "../model/quantities.ts";
import { countUpTo } from "../model/sorted.ts";
import { meantMs } from "../model/time-order.ts";
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

type Bottom = Omit<BottomReading, "ageMs"> & { readonly readMs: number };

/** What a trip says of the bottom: readings and runs, each in the order of time. */
interface Bottoms {
  readonly readings: readonly Bottom[];
  readonly runsMs: readonly number[];
}

const bottomsOfTrip = new WeakMap<Trip, Bottoms>();

/** The last bottom read at or before a minute (one at or above the surface is none), while it is held and the boat has not run elsewhere. */
export function bottomAt(trip: Trip, timeMs: number, heldMs: number): BottomReading | undefined {
  const { readings, runsMs } = bottomsOf(trip);
  const last = readings[countUpTo(readings, timeMs, (one) => one.readMs) - 1];
  if (last === undefined || timeMs - last.readMs > heldMs) return undefined;
  const ranMs = runsMs[countUpTo(runsMs, timeMs, (ms) => ms) - 1] ?? Number.NEGATIVE_INFINITY;
  return last.readMs < ranMs ? undefined : aged(last, timeMs);
}

/** As near as two readings of one minute's work may lie apart (judgement). */
const NEAR_MS = 5 * 60_000;

/** The sounder's reading nearest a minute, before it or after, within five minutes. */
export function bottomNear(trip: Trip, timeMs: number): BottomReading | undefined {
  const { readings } = bottomsOf(trip);
  const after = countUpTo(readings, timeMs, (one) => one.readMs);
  const near = [readings[after - 1], readings[after]].flatMap((one) =>
    one === undefined ? [] : [aged(one, timeMs)],
  );
  const [nearest] = near.filter((one) => one.ageMs <= NEAR_MS).sort((a, b) => a.ageMs - b.ageMs);
  return nearest;
}

function aged({ readMs, ...reading }: Bottom, timeMs: number): BottomReading {
  return { ...reading, ageMs: Math.abs(timeMs - readMs) };
}

function bottomsOf(trip: Trip): Bottoms {
  const known = bottomsOfTrip.get(trip);
  if (known !== undefined) return known;
  const readings = trip.events.flatMap((event) => readingOf(trip, event));
  const runsMs = trip.events.flatMap((event) =>
    event.line.verb === "run" ? (meantMs(trip, event) ?? []) : [],
  );
  const bottoms = {
    readings: readings.sort((a, b) => a.readMs - b.readMs),
    runsMs: runsMs.sort((a, b) => a - b),
  };
  bottomsOfTrip.set(trip, bottoms);
  return bottoms;
}

function readingOf(trip: Trip, event: TripEvent): Bottom[] {
  const { verb } = event.line;
  if (verb !== "sonar" && verb !== "touch") return [];
  const readMs = meantMs(trip, event);
  if (readMs === null) return [];
  const shownM = measureOf(event.line, "bottom", "length", trip.gear.defaults);
  if (shownM === undefined) return [];
  const waterM = shownM + (verb === "sonar" ? trip.gear.sounderBelowM : 0);
  return shownM > 0 && waterM > 0 ? [{ waterM, shownM, event, readMs }] : [];
}
