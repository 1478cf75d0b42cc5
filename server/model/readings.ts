/**
 * Readings of a trip, by quantity, with their source and age. Between two readings of one instrument values are
 * interpolated when no minute between is stale; after the last they are held; before the first the next one serves, labeled; past a stated age none is used.
 */

import type { Gear } from "./gear-types.ts";
import { measureOf } from "./quantities.ts";
import { countUpTo } from "./sorted.ts";
import { meantMs } from "./time-order.ts";
import type { Trip, TripEvent } from "./trip.ts";

/** Where a reading came from; `probe` is on a rig. */
export type ReadingSource = "probe" | "surface" | "gps";

/** One reading. Speeds in m/s, temperatures in °C. */
export interface Reading {
  readonly source: ReadingSource;
  /** The probe's rig. */
  readonly rig: string | undefined;
  /** The minute it is meant for, UTC ms: put right where its half-day or date slipped. */
  readonly timeMs: number;
  readonly value: number;
  /** The depth it was read at, m, where its line states one: a probe's. */
  readonly depthM: number | undefined;
  readonly event: TripEvent;
}

/** A value at a minute and where it came from. */
export interface ReadValue {
  readonly value: number;
  readonly source: ReadingSource;
  readonly rig: string | undefined;
  /** The depth it stands for, m, where its readings state one. */
  readonly depthM: number | undefined;
  readonly how: "read" | "between" | "held" | "ahead";
  /** Distance in time to the nearest reading used, ms. */
  readonly ageMs: number;
  readonly used: readonly Reading[];
}

/** Ages that bound the use of a reading, ms. */
export interface ReadingAges {
  /** Older than this a value is called stale. */
  readonly staleAfterMs: number;
  /** Older than this it is not used. */
  readonly unusedAfterMs: number;
  /** A value before the first reading may lean on one this far ahead. */
  readonly aheadMs: number;
}

const MINUTE_MS = 60_000;

/** Judgement: 30, 120 and 60 minutes. */
export const READING_AGES: ReadingAges = {
  staleAfterMs: 30 * MINUTE_MS,
  unusedAfterMs: 120 * MINUTE_MS,
  aheadMs: 60 * MINUTE_MS,
};

/** True where a reading of one minute may serve at another. */
export function isInReach(readMs: number, timeMs: number, { unusedAfterMs, aheadMs }: ReadingAges): boolean {
  return readMs <= timeMs ? timeMs - readMs <= unusedAfterMs : readMs - timeMs <= aheadMs;
}

const speedsOfTrip = new WeakMap<Trip, readonly Reading[]>();
const temperaturesOfTrip = new WeakMap<Trip, readonly Reading[]>();

/** Speed readings: through the water at the probe and on top, and over ground. Kept with the trip. */
export function speedReadings(trip: Trip): readonly Reading[] {
  const known = speedsOfTrip.get(trip) ?? readingsOf(trip, "speed", "speed");
  speedsOfTrip.set(trip, known);
  return known;
}

/** Temperature readings at the probe and on top. Kept with the trip. */
export function temperatureReadings(trip: Trip): readonly Reading[] {
  const known = temperaturesOfTrip.get(trip) ?? readingsOf(trip, "temp", "temperature");
  temperaturesOfTrip.set(trip, known);
  return known;
}

const SOURCES: Readonly<Record<string, ReadingSource>> = { probe: "probe", surface: "surface", gps: "gps" };

function readingsOf(
  trip: Trip,
  word: keyof typeof readingsOfEvents,
  dimension: "speed" | "temperature",
): Reading[] {
  const readings: Reading[] = [];
  for (const event of trip.events) {
    const source = SOURCES[event.line.verb];
    if (source === undefined) continue;
    const timeMs = meantMs(trip, event);
    if (timeMs === null) continue;
    const reading = readingKept(event, source, word, dimension, { gear: trip.gear, timeMs });
    if (reading !== null) readings.push(reading);
  }
  return readings.sort((a, b) => a.timeMs - b.timeMs);
}

/** What a reading leans on besides its event: the boat's units, and the minute it is meant for. */
interface ReadingBase {
  readonly gear: Gear;
  readonly timeMs: number;
}
type KnownReading = ReadingBase & { readonly reading: Reading | null };

/** By what is read; the very same for the very same event, gear and minute. */
const readingsOfEvents = {
  speed: new WeakMap<TripEvent, KnownReading>(),
  temp: new WeakMap<TripEvent, KnownReading>(),
};

function readingKept(
  event: TripEvent,
  source: ReadingSource,
  word: keyof typeof readingsOfEvents,
  dimension: "speed" | "temperature",
  { gear, timeMs }: ReadingBase,
): Reading | null {
  const known = readingsOfEvents[word].get(event);
  if (known?.gear === gear && known.timeMs === timeMs) return known.reading;
  const value = measureOf(event.line, word, dimension, gear.defaults);
  const depthM = measureOf(event.line, "depth", "length", gear.defaults);
  const reading = value === undefined ? null : { source, rig: event.rig, timeMs, value, depthM, event };
  readingsOfEvents[word].set(event, { gear, timeMs, reading });
  return reading;
}

const bySource = new WeakMap<readonly Reading[], Map<ReadingSource, readonly Reading[]>>();

/** The readings of one source, in order; told apart once for a list. */
export function fromSource(readings: readonly Reading[], source: ReadingSource): readonly Reading[] {
  const known = bySource.get(readings) ?? new Map<ReadingSource, readonly Reading[]>();
  bySource.set(readings, known);
  const found = known.get(source) ?? readings.filter((reading) => reading.source === source);
  known.set(source, found);
  return found;
}

/** The value one instrument gives at a minute; undefined when no reading of it may be used. */
export function valueAt(
  readings: readonly Reading[],
  timeMs: number,
  ages: ReadingAges = READING_AGES,
): ReadValue | undefined {
  const after = countUpTo(readings, timeMs, (reading) => reading.timeMs);
  const before = readings[after - 1];
  const next = readings[after];
  const isClose = (reading: Reading | undefined, limitMs: number): reading is Reading =>
    reading !== undefined && Math.abs(timeMs - reading.timeMs) <= limitMs;
  const held = isClose(before, ages.unusedAfterMs) ? before : undefined;
  if (held !== undefined && held.timeMs === timeMs) return single(held, timeMs, "read");
  if (held !== undefined && next !== undefined && next.timeMs - held.timeMs <= 2 * ages.staleAfterMs) {
    return between(held, next, timeMs);
  }
  if (held !== undefined) return single(held, timeMs, "held");
  return isClose(next, ages.aheadMs) ? single(next, timeMs, "ahead") : undefined;
}

function single(reading: Reading, timeMs: number, how: ReadValue["how"]): ReadValue {
  const { value, source, rig, depthM } = reading;
  return { value, source, rig, depthM, how, ageMs: Math.abs(timeMs - reading.timeMs), used: [reading] };
}

function between(before: Reading, after: Reading, timeMs: number): ReadValue {
  const share = (timeMs - before.timeMs) / (after.timeMs - before.timeMs);
  return {
    value: before.value + share * (after.value - before.value),
    source: before.source,
    rig: before.rig,
    depthM:
      before.depthM === undefined || after.depthM === undefined
        ? (before.depthM ?? after.depthM)
        : before.depthM + share * (after.depthM - before.depthM),
    how: "between",
    ageMs: Math.min(timeMs - before.timeMs, after.timeMs - timeMs),
    used: [before, after],
  };
}
