import {
  type CalibrationReading,
  isAnswered,
  type Prediction,
  predict,
  whyNoReading,
} from "./calibration-reading.ts";
import { type CalibrationValues, startValues } from "./calibration-values.ts";
import { DEFAULTS } from "./defaults.ts";
import { type Refusal, refuse } from "./refusal.ts";
import { cholesky, inverse, type Matrix, solveFactored } from "./symmetric-matrix.ts";

/** What is held of a cable and its counter before any reading. */
export interface CalibrationPrior {
  readonly values: CalibrationValues;
  readonly lnDragSd: number;
  readonly counterScaleSd: number;
  readonly counterOffsetSdM: number;
}

/** One reading beside what the fit expects of it. */
export interface FittedReading {
  /** Its place in the list that was given. */
  readonly index: number;
  readonly expectedM: number;
  /** Measured less expected, m. */
  readonly residualM: number;
  /** Standard deviation of that where all is well, m. */
  readonly sdM: number;
  /** How much it counted: 1 for an ordinary reading, less the farther off it is. */
  readonly weight: number;
  readonly slopes: readonly [number, number, number];
}

/** A fitted cable and counter. */
export interface CalibrationFit {
  readonly ok: true;
  readonly values: CalibrationValues;
  /** Covariance of ln drag, scale and offset (m), by rows. */
  readonly covariance: Matrix;
  readonly lnDragSd: number;
  readonly counterScaleSd: number;
  readonly counterOffsetSdM: number;
  readonly readings: readonly FittedReading[];
  /** Readings that could not be used, with plain reasons. */
  readonly leftOut: readonly { readonly index: number; readonly why: string }[];
  readonly prior: CalibrationPrior;
}

/** The prior of a rig that was never probed, from the table of defaults. */
export function defaultPrior(): CalibrationPrior {
  return {
    values: startValues(),
    lnDragSd: Math.hypot(DEFAULTS.sharedDrag.sd, DEFAULTS.cableDragMultiplier.sd),
    counterScaleSd: DEFAULTS.counterScale.sd,
    counterOffsetSdM: DEFAULTS.counterOffsetM.sd,
  };
}

/**
 * Residuals beyond this many of their standard deviations count less and less, so that a snagged or waving reading
 * pulls no harder than one at this distance. Source: Huber 1964, Ann. Math. Statist. 35:73; the limit is judgement.
 */
const HUBER = 2;
const MOST_ROUNDS = 40;
/** Steps below this share of the prior's standard deviations end the fit. */
const SETTLED = 1e-3;

/**
 * Fits a cable's drag and its counter to readings: the most probable values under the prior, by damped Gauss-Newton
 * steps with weights that keep far-off readings from ruling. The covariance is that of the linear model at the end.
 * Refuses when no reading can be used.
 */
export function fitCalibration(
  readings: readonly CalibrationReading[],
  prior: CalibrationPrior = defaultPrior(),
): CalibrationFit | Refusal {
  const leftOut: { index: number; why: string }[] = [];
  const used: UsedReading[] = [];
  readings.forEach((reading, index) => {
    const why = whyNoReading(reading) ?? (isAnswered(reading, prior.values) ? undefined : NO_ANSWER);
    if (why === undefined) used.push({ index, reading });
    else leftOut.push({ index, why });
  });
  if (used.length === 0) return refuse(leftOut[0]?.why ?? "there is no reading to go by");
  const end = climb(used, prior);
  if (end === undefined) return refuse("the readings do not settle on one answer");
  const covariance = inverse(end.information, 3);
  if (covariance === undefined) return refuse("the readings do not settle on one answer");
  return {
    ok: true,
    values: end.values,
    covariance,
    lnDragSd: Math.sqrt(covariance[0] ?? Number.NaN),
    counterScaleSd: Math.sqrt(covariance[4] ?? Number.NaN),
    counterOffsetSdM: Math.sqrt(covariance[8] ?? Number.NaN),
    readings: end.fitted,
    leftOut,
    prior,
  };
}

const NO_ANSWER = "the model has no answer for it, as with a probe above the water";

interface UsedReading {
  readonly index: number;
  readonly reading: CalibrationReading;
}

/** The linear model around a set of values. */
interface Linear {
  readonly values: CalibrationValues;
  readonly fitted: readonly FittedReading[];
  readonly information: number[];
  readonly gradient: number[];
  /** Minus the log of the posterior, but for a constant. */
  readonly cost: number;
}

function climb(used: readonly UsedReading[], prior: CalibrationPrior): Linear | undefined {
  let here = linearAt(used, prior, prior.values);
  let damping = 0;
  for (let round = 0; here !== undefined && round < MOST_ROUNDS; round++) {
    const step = stepFrom(here, prior, damping);
    if (step === undefined) return undefined;
    const next = linearAt(used, prior, moved(here.values, step));
    const isDown = next !== undefined && next.cost <= here.cost + 1e-9;
    if (isDown) here = next;
    damping = isDown ? damping / 10 : Math.max(0.1, damping * 10);
    if (isSmall(step, prior)) return here;
  }
  return here;
}

function linearAt(
  used: readonly UsedReading[],
  prior: CalibrationPrior,
  values: CalibrationValues,
): Linear | undefined {
  const precisions = precisionsOf(prior);
  const away = differences(values, prior.values);
  const information = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  const gradient = [0, 0, 0];
  let cost = 0;
  precisions.forEach((precision, i) => {
    information[4 * i] = precision;
    gradient[i] = -precision * (away[i] ?? 0);
    cost += 0.5 * precision * (away[i] ?? 0) ** 2;
  });
  const fitted: FittedReading[] = [];
  for (const { index, reading } of used) {
    const prediction = predict(reading, values);
    if (prediction === undefined) return undefined;
    const one = fittedReading(index, reading, prediction);
    fitted.push(one);
    addReading(one, information, gradient);
    cost += huberCost(one.residualM / one.sdM) + Math.log(one.sdM);
  }
  return { values, fitted, information, gradient, cost };
}

function fittedReading(index: number, reading: CalibrationReading, prediction: Prediction): FittedReading {
  const { expectedM, sdM, slopes } = prediction;
  const residualM = reading.measuredM - expectedM;
  const weight = Math.min(1, HUBER / Math.max(1e-12, Math.abs(residualM / sdM)));
  return { index, expectedM, residualM, sdM, weight, slopes };
}

function addReading(one: FittedReading, information: number[], gradient: number[]): void {
  const precision = one.weight / one.sdM ** 2;
  one.slopes.forEach((slope, i) => {
    gradient[i] = (gradient[i] ?? 0) + precision * slope * one.residualM;
    one.slopes.forEach((other, j) => {
      information[3 * i + j] = (information[3 * i + j] ?? 0) + precision * slope * other;
    });
  });
}

function huberCost(deviations: number): number {
  const size = Math.abs(deviations);
  return size <= HUBER ? 0.5 * size * size : HUBER * (size - 0.5 * HUBER);
}

/** Longest steps of one round: ln drag, scale, offset in m. */
const LONGEST = [0.7, 0.1, 3] as const;

function stepFrom(here: Linear, prior: CalibrationPrior, damping: number): number[] | undefined {
  const damped = here.information.slice();
  precisionsOf(prior).forEach((precision, i) => {
    damped[4 * i] = (damped[4 * i] ?? 0) + damping * precision;
  });
  const factor = cholesky(damped, 3);
  if (factor === undefined) return undefined;
  const step = solveFactored(factor, here.gradient);
  const tooLong = Math.max(1, ...step.map((part, i) => Math.abs(part) / (LONGEST[i] ?? 1)));
  return step.map((part) => part / tooLong);
}

function precisionsOf(prior: CalibrationPrior): [number, number, number] {
  return [prior.lnDragSd ** -2, prior.counterScaleSd ** -2, prior.counterOffsetSdM ** -2];
}

function differences(a: CalibrationValues, b: CalibrationValues): [number, number, number] {
  return [a.lnDrag - b.lnDrag, a.counterScale - b.counterScale, a.counterOffsetM - b.counterOffsetM];
}

function moved(
  values: CalibrationValues,
  [drag = 0, scale = 0, offset = 0]: readonly number[],
): CalibrationValues {
  return {
    lnDrag: Math.min(2.3, Math.max(-2.3, values.lnDrag + drag)),
    counterScale: Math.min(3, Math.max(0.3, values.counterScale + scale)),
    counterOffsetM: Math.min(30, Math.max(-30, values.counterOffsetM + offset)),
  };
}

function isSmall(step: readonly number[], prior: CalibrationPrior): boolean {
  return step.every((part, i) => Math.abs(part) * Math.sqrt(precisionsOf(prior)[i] ?? 0) < SETTLED);
}
