import { type CalibrationReading, isAnswered, predict, whyNoReading } from "./calibration-reading.ts";
import { type CalibrationValues, startValues } from "./calibration-values.ts";
import { DEFAULTS } from "./defaults.ts";
import { type Reason, type Refusal, refuse } from "./refusal.ts";
import {
  type Expectation,
  type FitParameter,
  type FitReading,
  type FittedReading,
  robustFit,
} from "./robust-fit.ts";
import type { Matrix } from "./symmetric-matrix.ts";

/** What is held of a cable and its counter before any reading. */
export interface CalibrationPrior {
  readonly values: CalibrationValues;
  readonly lnDragSd: number;
  readonly counterScaleSd: number;
  readonly counterOffsetSdM: number;
}

/** A reading that could not be used, and why. */
export interface LeftOut extends Refusal {
  readonly index: number;
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
  readonly leftOut: readonly LeftOut[];
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

/** A reading as the fit of drag, scale and offset sees it. */
export interface CounterReadingModel {
  readonly measuredM: number;
  /** Why it cannot be used at all. */
  readonly why: Reason | undefined;
  readonly predict: (values: CalibrationValues) => Expectation | undefined;
}

/**
 * Fits a cable's drag and its counter to readings: the most probable values under the prior (`robustFit`). Refuses
 * when no reading can be used.
 */
export function fitCalibration(
  readings: readonly CalibrationReading[],
  prior: CalibrationPrior = defaultPrior(),
): CalibrationFit | Refusal {
  const models = readings.map(
    (reading): CounterReadingModel => ({
      measuredM: reading.measuredM,
      why: whyNoReading(reading) ?? (isAnswered(reading, prior.values) ? undefined : NO_ANSWER),
      predict: (values) => predict(reading, values),
    }),
  );
  return fitDragAndCounter(models, prior);
}

/** Why a reading that the model has no answer for is left out. */
export const NO_ANSWER = "the model has no answer for it, as with a probe above the water";
const UNSETTLED = "the readings do not settle on one answer";

/** The same for readings of any line that has a drag, a counter's scale and an offset. */
export function fitDragAndCounter(
  models: readonly CounterReadingModel[],
  prior: CalibrationPrior,
): CalibrationFit | Refusal {
  const { leftOut, used } = sortedOut(models);
  if (used.length === 0) return leftOut[0] ?? refuse("there is no reading to go by");
  const readings = used.map(
    ({ index, model }): FitReading => ({
      index,
      measuredM: model.measuredM,
      expect: (values) => model.predict(valuesOf(values)),
    }),
  );
  const fit = robustFit(readings, parametersOf(prior));
  if (fit === undefined) return refuse(UNSETTLED);
  const sd = (i: number): number => Math.sqrt(fit.covariance[i] ?? Number.NaN);
  return {
    ok: true,
    values: valuesOf(fit.values),
    covariance: fit.covariance,
    lnDragSd: sd(0),
    counterScaleSd: sd(4),
    counterOffsetSdM: sd(8),
    readings: fit.readings,
    leftOut,
    prior,
  };
}

/** Readings that can be used, with their places in the list, and those that cannot. */
export function sortedOut<Model extends { readonly why: Reason | undefined }>(
  models: readonly Model[],
): { readonly leftOut: LeftOut[]; readonly used: { readonly index: number; readonly model: Model }[] } {
  const leftOut: LeftOut[] = [];
  const used: { index: number; model: Model }[] = [];
  models.forEach((model, index) => {
    if (model.why === undefined) used.push({ index, model });
    else leftOut.push({ index, ...refuse(model.why) });
  });
  return { leftOut, used };
}

function valuesOf([lnDrag = 0, counterScale = 1, counterOffsetM = 0]: readonly number[]): CalibrationValues {
  return { lnDrag, counterScale, counterOffsetM };
}

/** Bounds and steps: a cable of a tenth or ten times the drag is none. */
function parametersOf({
  values,
  lnDragSd,
  counterScaleSd,
  counterOffsetSdM,
}: CalibrationPrior): FitParameter[] {
  return [
    { mean: values.lnDrag, sd: lnDragSd, low: -2.3, high: 2.3, longestStep: 0.7 },
    { mean: values.counterScale, sd: counterScaleSd, low: 0.3, high: 3, longestStep: 0.1 },
    { mean: values.counterOffsetM, sd: counterOffsetSdM, low: -30, high: 30, longestStep: 3 },
  ];
}
