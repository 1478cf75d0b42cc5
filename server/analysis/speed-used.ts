/**
 * The speed through the water that a line's depth leans on. In order of trust: the probe at the ball, the speed on
 * top, the speed over ground; a reading loses trust with age, so a fresh one of a lesser kind may come first.
 */
import { hasWord } from "../model/quantities.ts";
import type { Reading, ReadingAges, ReadingSource, ReadValue } from "../model/readings.ts";
import { fromSource, speedReadings, valueAt } from "../model/readings.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import type { Trip } from "../model/trip.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import type { Layers } from "../physics/lake-layers.ts";
import { isContradicted } from "./contradictions.ts";
import type { ShearUsed } from "./shear-used.ts";

/** A speed and how well it is known, m/s. */
export interface SpeedUsed extends ReadValue {
  readonly sdMS: number;
  /** The speed on top, where this one is the probe's at a known depth and both may be used. */
  readonly onTop?: SpeedUsed;
  /** Set where it wasn't read: the current of other courses tells it, from the reading in `used`. */
  readonly byCurrent?: ShearUsed;
  /** The metalimnion of the minute, where there is a speed on top beside it and a profile shows one. */
  readonly layer?: Layers;
}

const SD_WHEN_READ_MS: Readonly<Record<ReadingSource, number>> = {
  probe: DEFAULTS.probeSpeedSdMS.value,
  surface: DEFAULTS.surfaceSpeedSdMS.value,
  gps: DEFAULTS.groundSpeedSdMS.value,
};
const SOURCES: readonly ReadingSource[] = ["probe", "surface", "gps"];

/** Speeds on top and at the probe that differ by more contradict each other: one is a slip (judgement, 2 mph). */
export const MOST_APART_MS = 2 * 0.44704;

/**
 * The speed readings a depth may lean on: those ahead and no faster than a troll, unless the line says `sure`. A speed on the
 * run, or a slip of the pen, is in the log but not in the lines' water; neither are two that contradict each other.
 */
export function trollingSpeeds(trip: Trip): readonly Reading[] {
  const known = speedsOfTrip.get(trip);
  if (known !== undefined) return known;
  const fastestMS = thresholdOf(trip.gear, THRESHOLDS.fastTroll);
  const speeds = speedReadings(trip)
    .filter(
      ({ value, event }) =>
        value >= 0 &&
        (value <= fastestMS || hasWord(event.line, "sure")) &&
        !isContradicted(trip, event, "speed"),
    )
    .map((reading) =>
      isContradicted(trip, reading.event, "depth") ? { ...reading, depthM: undefined } : reading,
    );
  speedsOfTrip.set(trip, speeds);
  return speeds;
}

const speedsOfTrip = new WeakMap<Trip, readonly Reading[]>();

/**
 * The best known speed at a minute; undefined when no reading may be used. Where the probe's, with its depth, and
 * the one on top through the water are both known and neither is worse than the speed over ground, it is the
 * probe's with the other beside it; not where they are farther apart than any current makes them.
 */
export function speedAt(
  readings: readonly Reading[],
  timeMs: number,
  ages: ReadingAges,
): SpeedUsed | undefined {
  let best: SpeedUsed | undefined;
  const known: Partial<Record<ReadingSource, SpeedUsed>> = {};
  for (const source of SOURCES) {
    const found = valueAt(fromSource(readings, source), timeMs, ages);
    if (found === undefined) continue;
    const sdMS = SD_WHEN_READ_MS[source] + DEFAULTS.speedSdGrowthMSPerS.value * (found.ageMs / 1000);
    const speed = { ...found, sdMS };
    known[source] = speed;
    if (best === undefined || sdMS < best.sdMS) best = speed;
  }
  const { probe, surface } = known;
  if (best?.source === "gps" || surface === undefined || probe?.depthM === undefined) return best;
  if (Math.abs(probe.value - surface.value) > MOST_APART_MS) return best;
  return { ...probe, onTop: surface };
}
