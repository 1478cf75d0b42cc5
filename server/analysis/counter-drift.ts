/** Whether the readings of one trip share an error of a rig's counter. */
import { findUnit, toSi } from "../../grammar/units.ts";
import { lengthUnit } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";
import type { CalibrationFit } from "../physics/calibrate.ts";
import { cableByFit, cableByFitSd, calibrateRig, groupReadings, type RigCalibration } from "./calibration.ts";
import { calibrationReadings, type RigReading } from "./calibration-readings.ts";
import type { TripAnalysis } from "./journal-analysis.ts";
import { roughFit } from "./rough-drift.ts";

/** A counter that reads otherwise than the book says. Lengths in m. */
export interface CounterDrift {
  readonly calibration: RigCalibration;
  /** A round number on the counter, and the cable that is out then: by the readings, and by the book. */
  readonly counterM: number;
  readonly cableM: number;
  readonly sdM: number;
  readonly bookM: number;
  /** Shortest and longest cable read. */
  readonly fromM: number;
  readonly toM: number;
}

/** Lengths this far apart can tell a counter's scale (judgement). */
const APART_SHARE = 1.3;
const APART_M = 6;
/** A touch of the bottom at this speed, m/s, or slower hardly leans on the drag: 2 mph (judgement). */
const SLOW_MS = 0.9;
/**
 * So many standard deviations of the fit count as sure. Chance alone would leave three in a thousand beyond; with what
 * a fit leaves out, as what the ball truly weighs, it is about one trip in a hundred of honest boats (simulated:
 * `tests/reference/false-alarms.test.ts`).
 */
const SURE = 3;

/** The drifted counters of a trip; a drift is at least `leastShare` of the length. Quiet with one length only. */
export function counterDrifts(day: TripAnalysis, leastShare: number): CounterDrift[] {
  return groupReadings(calibrationReadings(day).used).flatMap((group) => {
    const { readings } = group;
    const { gear } = day.trip;
    if (!tellsCounter(readings) || isSurelyTrue(gear, readings, leastShare)) return [];
    const calibration = calibrateRig(group);
    const { fit, lacks } = calibration;
    if (!fit.ok || lacks?.counter !== false) return [];
    const drift = driftOf(gear, readings, fit);
    return shareOfSure(drift, leastShare) > 1 ? [{ ...drift, calibration }] : [];
  });
}

/** How far a counter is off, as a share of what it has to be off to be told of. */
function shareOfSure(
  { cableM, bookM, sdM, counterM }: Omit<CounterDrift, "calibration">,
  leastShare: number,
): number {
  return Math.abs(cableM - bookM) / Math.max(SURE * sdM, leastShare * counterM);
}

/**
 * A rough fit that finds a counter off by less than this share of what is told of: around the defaults, and again around
 * what the first found, which is nearer (`tests/analysis/rough-drift.test.ts`).
 */
const QUIET_AT_FIRST = 0.5;
const QUIET = 0.75;
/** A reading that counts less than this is so far off that only the true fit can tell. */
const LEAST_WEIGHT = 0.4;

/** True where rough fits are enough to see that nothing would be told. */
function isSurelyTrue(gear: Gear, readings: Readings, leastShare: number): boolean {
  const first = roughFit(readings);
  const isQuiet = (fit: CalibrationFit, share: number): boolean =>
    fit.readings.every(({ weight }) => weight >= LEAST_WEIGHT) &&
    shareOfSure(driftOf(gear, readings, fit), leastShare) < share;
  if (first === undefined) return false;
  if (isQuiet(first, QUIET_AT_FIRST)) return true;
  const second = roughFit(readings, first.values);
  return second !== undefined && isQuiet(second, QUIET);
}

type Readings = RigCalibration["readings"];

function tellsCounter(readings: readonly RigReading[]): boolean {
  if (readings.length < 2) return false;
  const lengths = readings.map((one) => one.counterM);
  const [least, most] = [Math.min(...lengths), Math.max(...lengths)];
  const isApart = most - least >= APART_M && most >= APART_SHARE * least;
  return isApart || readings.some((one) => one.reading.as === "ball-depth" && one.speed.value <= SLOW_MS);
}

function driftOf(gear: Gear, readings: Readings, fit: CalibrationFit): Omit<CounterDrift, "calibration"> {
  const counterM = roundLength(gear);
  const { counterScale, counterOffsetM } = readings[0].task.downrigger;
  const lengths = readings.map((one) => one.counterM);
  return {
    counterM,
    cableM: cableByFit(fit, counterM),
    sdM: Math.hypot(cableByFitSd(fit, counterM), bookSdM(readings[0], counterM)),
    bookM: counterScale * counterM + counterOffsetM,
    fromM: Math.min(...lengths),
    toM: Math.max(...lengths),
  };
}

/** A round number of the boat's unit to speak of a counter with: 100 ft, or 30 of a longer unit. */
export function roundLength(gear: Gear | undefined): number {
  const row = findUnit(lengthUnit(gear));
  if (row === undefined) return 30;
  return toSi(row.factor < 0.5 ? 100 : 30, row);
}

/** What the book itself leaves open; a rig without a calibration states nothing, so it is the plain counter's word. */
function bookSdM({ task: { calibration, spreads } }: RigReading, counterM: number): number {
  if (calibration?.counterScale === undefined) return 0;
  const { counterScale: k, counterOffsetM: b, calibration: tied } = spreads;
  const cross = (tied?.scaleWithOffset ?? 0) * k * b * counterM;
  return Math.sqrt(Math.max(0, (k * counterM) ** 2 + 2 * cross + b * b));
}
