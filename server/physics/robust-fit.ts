/** The most probable values of a few parameters under readings and a prior, with far-off readings held back. */
import { cholesky, inverse, type Matrix, solveFactored } from "./symmetric-matrix.ts";

/** One parameter of a fit: what is held of it beforehand, how far it may go, and its longest step in one round. */
export interface FitParameter {
  readonly mean: number;
  readonly sd: number;
  readonly low: number;
  readonly high: number;
  readonly longestStep: number;
}

/** What a model says of a reading at some values of the parameters. */
export interface Expectation {
  readonly expectedM: number;
  /** Change with each parameter. */
  readonly slopes: readonly number[];
  /** Standard deviation of measured against expected where the parameters are right, m. */
  readonly sdM: number;
}

/** A reading as a fit takes it; `expect` is undefined where the model has no answer. */
export interface FitReading {
  /** Its place in the list that was given. */
  readonly index: number;
  readonly measuredM: number;
  readonly expect: (values: readonly number[]) => Expectation | undefined;
}

/** One reading beside what the fit expects of it. */
export interface FittedReading {
  readonly index: number;
  readonly expectedM: number;
  /** Measured less expected, m. */
  readonly residualM: number;
  /** Standard deviation of that where all is well, m. */
  readonly sdM: number;
  /** How much it counted: 1 for an ordinary reading, less the farther off it is. */
  readonly weight: number;
  readonly slopes: readonly number[];
}

/** Fitted values with their covariance, by rows, and what is left over of each reading. */
export interface RobustFit {
  readonly values: readonly number[];
  readonly covariance: Matrix;
  readonly readings: readonly FittedReading[];
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
 * Fits by damped Gauss-Newton steps with weights that keep far-off readings from ruling. The covariance is that of
 * the linear model at the end. Undefined where the readings do not settle on one answer.
 */
export function robustFit(
  readings: readonly FitReading[],
  parameters: readonly FitParameter[],
): RobustFit | undefined {
  let here = linearAt(
    readings,
    parameters,
    parameters.map((one) => one.mean),
  );
  let damping = 0;
  for (let round = 0; here !== undefined && round < MOST_ROUNDS; round++) {
    const step = stepFrom(here, parameters, damping);
    if (step === undefined) return undefined;
    const next = linearAt(readings, parameters, moved(here.values, step, parameters));
    const isDown = next !== undefined && next.cost <= here.cost + 1e-9;
    if (isDown) here = next;
    damping = isDown ? damping / 10 : Math.max(0.1, damping * 10);
    if (step.every((part, i) => Math.abs(part) < SETTLED * (parameters[i]?.sd ?? 0))) break;
  }
  const covariance = here === undefined ? undefined : inverse(here.information, parameters.length);
  if (here === undefined || covariance === undefined) return undefined;
  return { values: here.values, covariance, readings: here.fitted };
}

/** The linear model around a set of values. */
interface Linear {
  readonly values: readonly number[];
  readonly fitted: readonly FittedReading[];
  readonly information: number[];
  readonly gradient: number[];
  /** Minus the log of the posterior, but for a constant. */
  readonly cost: number;
}

function linearAt(
  readings: readonly FitReading[],
  parameters: readonly FitParameter[],
  values: readonly number[],
): Linear | undefined {
  const n = parameters.length;
  const information = new Array<number>(n * n).fill(0);
  const gradient = new Array<number>(n).fill(0);
  let cost = 0;
  parameters.forEach(({ mean, sd }, i) => {
    const away = (values[i] ?? 0) - mean;
    information[(n + 1) * i] = sd ** -2;
    gradient[i] = -away * sd ** -2;
    cost += 0.5 * (away / sd) ** 2;
  });
  const fitted: FittedReading[] = [];
  for (const { index, measuredM, expect } of readings) {
    const expectation = expect(values);
    if (expectation === undefined) return undefined;
    const { expectedM, sdM, slopes } = expectation;
    const residualM = measuredM - expectedM;
    const weight = Math.min(1, HUBER / Math.max(1e-12, Math.abs(residualM / sdM)));
    const one = { index, expectedM, residualM, sdM, weight, slopes };
    fitted.push(one);
    addReading(one, information, gradient);
    cost += huberCost(residualM / sdM) + Math.log(sdM);
  }
  return { values, fitted, information, gradient, cost };
}

function addReading(one: FittedReading, information: number[], gradient: number[]): void {
  const precision = one.weight / one.sdM ** 2;
  const n = gradient.length;
  one.slopes.forEach((slope, i) => {
    gradient[i] = (gradient[i] ?? 0) + precision * slope * one.residualM;
    one.slopes.forEach((other, j) => {
      information[n * i + j] = (information[n * i + j] ?? 0) + precision * slope * other;
    });
  });
}

function huberCost(deviations: number): number {
  const size = Math.abs(deviations);
  return size <= HUBER ? 0.5 * size * size : HUBER * (size - 0.5 * HUBER);
}

function stepFrom(here: Linear, parameters: readonly FitParameter[], damping: number): number[] | undefined {
  const n = parameters.length;
  const damped = here.information.slice();
  parameters.forEach(({ sd }, i) => {
    damped[(n + 1) * i] = (damped[(n + 1) * i] ?? 0) + damping * sd ** -2;
  });
  const factor = cholesky(damped, n);
  if (factor === undefined) return undefined;
  const step = solveFactored(factor, here.gradient);
  const tooLong = Math.max(1, ...step.map((part, i) => Math.abs(part) / (parameters[i]?.longestStep ?? 1)));
  return step.map((part) => part / tooLong);
}

function moved(
  values: readonly number[],
  step: readonly number[],
  parameters: readonly FitParameter[],
): number[] {
  return parameters.map(({ low, high }, i) =>
    Math.min(high, Math.max(low, (values[i] ?? 0) + (step[i] ?? 0))),
  );
}
