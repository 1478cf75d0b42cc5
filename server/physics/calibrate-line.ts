import {
  type CalibrationFit,
  type CalibrationPrior,
  type CounterReadingModel,
  fitDragAndCounter,
  NO_ANSWER,
} from "./calibrate.ts";
import type { CalibrationValues } from "./calibration-values.ts";
import { DEFAULTS } from "./defaults.ts";
import type { LongLine } from "./long-line.ts";
import {
  expectedOnLine,
  expectOnLine,
  type LineStep,
  type LongLineReading,
  openParameters,
  whyNoLineReading,
} from "./long-line-reading.ts";
import { type Refusal, refuse } from "./refusal.ts";

/** What a fit of a long line settles; the line's weight in the water goes into its drag. */
const FITTED = new Set(["drag-shared", "drag-main", "line-weight", "counter-scale", "line-out"]);
/** Where lengths are counted in colors, each count has an error of its own and there is no counter to fit. */
const FITTED_BY_COLORS = new Set(["drag-shared", "drag-main", "line-weight"]);

/** The inputs that a fit of a line settles. */
export function lineFitted(isByColors: boolean): ReadonlySet<string> {
  return isByColors ? FITTED_BY_COLORS : FITTED;
}

/** A counter that is not fitted is held this tightly: a scale, and m. */
export const HELD = { scaleSd: 1e-5, offsetSdM: 1e-4 } as const;

/** True where a fit left the counter as it was, since lengths are counted in colors. */
export function isCounterHeld({ prior }: CalibrationFit): boolean {
  return prior.counterScaleSd <= HELD.scaleSd;
}

/**
 * What is held of a long line before any reading. Depth answers to the ratio of weight to drag alone, nearly, so the
 * weight's spread is added to that of ln drag; its counter is held where lengths are counted in colors.
 */
export function linePrior({ line, spreads }: LongLineReading, isByColors: boolean): CalibrationPrior {
  const { counterScale, counterOffsetM, main } = line;
  return {
    values: { lnDrag: Math.log(main.dragMultiplier), counterScale, counterOffsetM },
    lnDragSd: Math.hypot(DEFAULTS.sharedDrag.sd, DEFAULTS.lineDragMultiplier.sd, spreads.weightShare),
    counterScaleSd: isByColors ? HELD.scaleSd : Math.max(HELD.scaleSd, spreads.counterScale),
    counterOffsetSdM: isByColors ? HELD.offsetSdM : Math.max(HELD.offsetSdM, spreads.outM),
  };
}

/** A line with its drag and counter as a fit has them. */
export function lineWithValues(line: LongLine, values: CalibrationValues): LongLine {
  const { counterScale, counterOffsetM, lnDrag } = values;
  return {
    ...line,
    counterScale,
    counterOffsetM,
    main: { ...line.main, dragMultiplier: Math.exp(lnDrag) },
  };
}

/** How a long line answers to what is fitted of it. */
export const LINE_STEPS: readonly LineStep[] = [
  {
    step: 0.01,
    moved: (line, by) => ({
      ...line,
      main: { ...line.main, dragMultiplier: line.main.dragMultiplier * Math.exp(by) },
    }),
  },
  { step: 2e-3, moved: (line, by) => ({ ...line, counterScale: line.counterScale + by }) },
  { step: 0.05, moved: (line, by) => ({ ...line, counterOffsetM: line.counterOffsetM + by }) },
];

/**
 * Fits a long line's drag multiplier, and the counter where lengths are read off one, to depths that were measured on
 * it: leadcore, copper, weighted wire, flat lines. Refuses when no reading can be used.
 */
export function fitLongLine(
  readings: readonly LongLineReading[],
  isByColors: boolean,
): CalibrationFit | Refusal {
  const [first] = readings;
  if (first === undefined) return refuse("there is no reading to go by");
  const prior = linePrior(first, isByColors);
  const models = readings.map((reading): CounterReadingModel => {
    const open = openParameters(reading, lineFitted(isByColors));
    const start = lineWithValues(reading.line, prior.values);
    const why =
      whyNoLineReading(reading) ?? (expectedOnLine(start, reading) === undefined ? NO_ANSWER : undefined);
    const predict: CounterReadingModel["predict"] = (values) =>
      expectOnLine(reading, lineWithValues(reading.line, values), LINE_STEPS, open);
    return { measuredM: reading.measuredM, why, predict };
  });
  return fitDragAndCounter(models, prior);
}
