import { type CalibrationValues, startValues, withValues } from "./calibration-values.ts";
import { whyNoDownrigger } from "./check-downrigger.ts";
import { DEFAULTS } from "./defaults.ts";
import type { Downrigger, SolvedDownrigger } from "./downrigger.ts";
import { cableOutM } from "./downrigger-cable.ts";
import { fasterRig, harderRods } from "./downrigger-parameters.ts";
import type { Reason } from "./refusal.ts";
import { rigKey } from "./rig-value.ts";
import { type Exactness, type SettledDownrigger, solveSettled } from "./settled-downrigger.ts";

/** What was measured: a depth at the probe or of the ball on the bottom, or a distance behind. */
export type MeasuredAs = "probe-depth" | "ball-depth" | "probe-behind" | "ball-behind";

/** One reading that tells of a cable and its counter. */
export interface CalibrationReading {
  /** The rig as it was set; its own drag, scale and offset do not count. */
  readonly rig: Downrigger;
  readonly as: MeasuredAs;
  readonly measuredM: number;
  /** The instrument's own error, m. */
  readonly sdM: number;
  readonly speedSdMS: number;
}

/** Readings as part of a key: the same for equal ones only. */
export function readingsKey(readings: readonly CalibrationReading[]): string {
  let key = "";
  for (const { rig, as, measuredM, sdM, speedSdMS } of readings)
    key += `${rigKey(rig)} ${as} ${measuredM} ${sdM} ${speedSdMS}\n`;
  return key;
}

/** What a model says of a reading: the value expected, how it answers to each parameter, and the spread around it. */
export interface Prediction {
  readonly expectedM: number;
  /** Change with ln drag, with the scale, with the offset. */
  readonly slopes: readonly [number, number, number];
  /** Change with the speed, m per m/s. */
  readonly perSpeed: number;
  /** Standard deviation of measured against expected where the calibration is right, m. */
  readonly sdM: number;
}

/** How exactly slopes are solved, and their steps. */
const SLOPE: Exactness = { tolerance: 1e-7, share: 1e-6 };
const LN_DRAG_STEP = 0.01;
const SCALE_STEP = 2e-3;
const OFFSET_STEP_M = 0.05;
const SPEED_STEP_MS = 0.02;
const PULL_STEP_N = 0.5;

/** Why a reading cannot be used, as a plain reason, or `undefined`. */
export function whyNoReading({ rig, as, measuredM, sdM, speedSdMS }: CalibrationReading): Reason | undefined {
  if (![measuredM, sdM, speedSdMS].every(Number.isFinite)) return "a number of the reading is missing";
  if (measuredM < 0) return "a depth or distance below zero can't be";
  if (sdM <= 0 || speedSdMS < 0) return "the reading states no error";
  if (as.startsWith("probe") && rig.probeAboveBallM === undefined) return "the rig has no probe";
  return whyNoDownrigger(withValues(rig, startValues()));
}

/** What is expected of a reading; undefined where the model has no answer, as with the probe above the water. */
export function predict(reading: CalibrationReading, values: CalibrationValues): Prediction | undefined {
  const { lnDrag, counterScale, counterOffsetM } = values;
  const rig = withValues(reading.rig, values);
  if (isInAir(reading, rig)) return undefined;
  const centre = solveSettled(rig, undefined, SLOPE);
  const expectedM = centre.ok ? readOff(centre.answer, reading.as) : undefined;
  if (!centre.ok || expectedM === undefined) return undefined;
  const slope = (moved: Downrigger, step: number): number =>
    ((solvedNear(moved, centre, reading.as) ?? expectedM) - expectedM) / step;
  const at = (changed: Partial<CalibrationValues>): Downrigger =>
    withValues(reading.rig, { ...values, ...changed });
  const slopes = [
    slope(at({ lnDrag: lnDrag + LN_DRAG_STEP }), LN_DRAG_STEP),
    slope(at({ counterScale: counterScale + SCALE_STEP }), SCALE_STEP),
    slope(at({ counterOffsetM: counterOffsetM + OFFSET_STEP_M }), OFFSET_STEP_M),
  ] as const;
  const perSpeed = slope(fasterRig(rig, SPEED_STEP_MS), SPEED_STEP_MS);
  const isPulled = rig.rods.some((rod) => (rod.rodLine?.tipTensionN ?? 0) > 0);
  const perPull = isPulled ? slope(harderRods(rig, PULL_STEP_N), PULL_STEP_N) : 0;
  const modelSdM = DEFAULTS.modelDepthShare.value * expectedM;
  const sdM = Math.hypot(reading.sdM, perSpeed * reading.speedSdMS, perPull * DEFAULTS.rodPullN.sd, modelSdM);
  return { expectedM, slopes, perSpeed, sdM };
}

/** Whether the model has an answer for a reading. */
export function isAnswered(reading: CalibrationReading, values: CalibrationValues): boolean {
  const rig = withValues(reading.rig, values);
  return !isInAir(reading, rig) && expectedOf(rig, reading.as) !== undefined;
}

function isInAir({ as }: CalibrationReading, rig: Downrigger): boolean {
  return as.startsWith("probe") && cableOutM(rig) <= (rig.probeAboveBallM ?? 0);
}

/** The value alone, without slopes. */
export function expectedOf(rig: Downrigger, as: MeasuredAs): number | undefined {
  const solved = solveSettled(rig, undefined, SLOPE);
  return solved.ok ? readOff(solved.answer, as) : undefined;
}

function solvedNear(rig: Downrigger, centre: SettledDownrigger, as: MeasuredAs): number | undefined {
  const solved = solveSettled(rig, centre, SLOPE);
  return solved.ok ? readOff(solved.answer, as) : undefined;
}

export function readOff({ ball, probe }: SolvedDownrigger, as: MeasuredAs): number | undefined {
  if (as === "ball-depth") return ball.depthM;
  if (as === "ball-behind") return ball.behindM;
  return as === "probe-depth" ? probe?.depthM : probe?.behindM;
}
