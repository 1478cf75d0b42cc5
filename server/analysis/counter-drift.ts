/** Whether the readings of one trip share an error of a rig's counter. */
import { findUnit, toSi } from "../../grammar/units.ts";
import { lengthUnit } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";
import type { CalibrationFit } from "../physics/calibrate.ts";
import { readingsKey } from "../physics/calibration-reading.ts";
import type { CalibrationValues } from "../physics/calibration-values.ts";
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
    const { gear } = day.trip;
    if (!tellsCounter(group.readings) || !mayDrift(gear, group.readings, leastShare)) return [];
    return driftTold(gear, calibrateRig(group), leastShare) ?? [];
  });
}

/** The drift that a fit finds, where it is large and sure enough to be told. */
export function driftTold(
  gear: Gear,
  calibration: RigCalibration,
  leastShare: number,
): CounterDrift | undefined {
  const { fit, lacks, readings } = calibration;
  if (!fit.ok || lacks?.counter !== false) return undefined;
  const drift = driftOf(gear, readings, fit);
  const byM = Math.abs(drift.cableM - drift.bookM);
  return byM > SURE * drift.sdM && byM > leastShare * drift.counterM ? { ...drift, calibration } : undefined;
}

/** A drift by a rough fit of less than this share of what is told is none (judgement; a test compares with true fits). */
const QUIET = 0.7;
/** The share where a rough fit ends as far from where it began as it may, as ln drag; what is expected bends with the drag. */
const QUIET_AFAR = 0.4;
const FAR_LN_DRAG = 0.35;
const NEAR_LN_DRAG = 0.15;
/** Rough fits, each around what the one before found. */
const MOST_FITS = 3;
/** A reading that counts less than this is so far off that only the true fit can tell. */
const LEAST_WEIGHT = 0.4;

/** What rough fits told of a boat's readings, by rig, whose calibration they are held against, and by their values. */
const toldOf = new WeakMap<Gear, Map<string, boolean>>();
/** Of one boat: the versions of a trip under edit come back to few. */
const MOST_TOLD = 200;

/** False where rough fits are enough to see that no drift would be told; looked at once for the very same readings. */
export function mayDrift(gear: Gear, readings: RigCalibration["readings"], leastShare: number): boolean {
  const told = toldOf.get(gear) ?? new Map<string, boolean>();
  toldOf.set(gear, told);
  const key = `${readings[0].rig.name} ${leastShare} ${readingsKey(readings.map((one) => one.reading))}`;
  const known = told.get(key);
  if (known !== undefined) return known;
  if (told.size >= MOST_TOLD) told.clear();
  const may = isLeftOpen(gear, readings, leastShare);
  told.set(key, may);
  return may;
}

function isLeftOpen(gear: Gear, readings: RigCalibration["readings"], leastShare: number): boolean {
  const isQuiet = (fit: CalibrationFit, share: number): boolean => {
    const { cableM, bookM, sdM, counterM } = driftOf(gear, readings, fit);
    const sureM = Math.max(SURE * sdM, leastShare * counterM);
    return (
      fit.readings.every(({ weight }) => weight >= LEAST_WEIGHT) && Math.abs(cableM - bookM) < share * sureM
    );
  };
  let around: CalibrationValues | undefined;
  for (let round = 0; round < MOST_FITS; round++) {
    const fit = roughFit(readings, around);
    if (fit === undefined) return true;
    const movedBy = Math.abs(fit.values.lnDrag - (around ?? fit.prior.values).lnDrag);
    if (movedBy <= FAR_LN_DRAG && isQuiet(fit, movedBy <= NEAR_LN_DRAG ? QUIET : QUIET_AFAR)) return false;
    if (movedBy <= NEAR_LN_DRAG) return true;
    around = stepped(fit.values);
  }
  return true;
}

/**
 * Values that rough fits begin anew from, in steps: far smaller than what may lie between where a fit begins and ends, and
 * such that one digit typed leaves them, and what is expected around them, as they were.
 */
function stepped({ lnDrag, counterScale, counterOffsetM }: CalibrationValues): CalibrationValues {
  const toStep = (value: number, step: number): number => Math.round(value / step) * step;
  return {
    lnDrag: toStep(lnDrag, 0.1),
    counterScale: toStep(counterScale, 0.04),
    counterOffsetM: toStep(counterOffsetM, 1),
  };
}

function tellsCounter(readings: readonly RigReading[]): boolean {
  if (readings.length < 2) return false;
  const lengths = readings.map((one) => one.counterM);
  const [least, most] = [Math.min(...lengths), Math.max(...lengths)];
  const isApart = most - least >= APART_M && most >= APART_SHARE * least;
  return isApart || readings.some((one) => one.reading.as === "ball-depth" && one.speed.value <= SLOW_MS);
}

function driftOf(
  gear: Gear,
  readings: RigCalibration["readings"],
  fit: CalibrationFit,
): Omit<CounterDrift, "calibration"> {
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
