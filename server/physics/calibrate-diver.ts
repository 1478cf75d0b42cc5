import { type LeftOut, NO_ANSWER, sortedOut } from "./calibrate.ts";
import { DEFAULTS } from "./defaults.ts";
import type { LongLine } from "./long-line.ts";
import type { DiverSpread } from "./long-line-parameters.ts";
import {
  expectedOnLine,
  expectOnLine,
  type LineStep,
  type LongLineReading,
  openParameters,
  whyNoLineReading,
} from "./long-line-reading.ts";
import type { LureForces } from "./lure.ts";
import { type Refusal, refuse } from "./refusal.ts";
import { type FitParameter, type FittedReading, robustFit } from "./robust-fit.ts";

/** A diver's areas as readings tell them. */
export interface DiverFit {
  readonly ok: true;
  readonly liftAreaM2: number;
  readonly dragAreaM2: number;
  /** Standard deviations of the logarithms, and how these hang together, -1 to 1. */
  readonly spread: DiverSpread;
  /** How much of the prior's variance is left of the pull's size and of the ratio of drag to lift, 0 to 1. */
  readonly leftOfSize: number;
  readonly leftOfRatio: number;
  readonly readings: readonly FittedReading[];
  readonly leftOut: readonly LeftOut[];
}

/** What the fit settles; the drag of the diver's own line goes into the areas, for depths tell only their ratio. */
export const DIVER_FITTED: ReadonlySet<string> = new Set([
  "drag-shared",
  "drag-main",
  "line-weight",
  "joint-weight",
  "joint-drag",
  "joint-lift",
]);

/** Where a fit of a diver starts; never a depth by itself. */
export function startingDiver(): LureForces {
  const liftAreaM2 = DEFAULTS.diverLiftAreaM2.value;
  return { weightN: 0, liftAreaM2, dragAreaM2: liftAreaM2 * DEFAULTS.diverDragRatio.value };
}

/** Size of the pull and ratio of drag to lift, as logarithms: an ordinary hand's size, with a wide spread. */
function parameters(): FitParameter[] {
  const { diverLiftAreaM2: size, diverDragRatio: ratio } = DEFAULTS;
  const of = ({ value, sd }: typeof size): FitParameter => ({
    mean: Math.log(value),
    sd,
    low: Math.log(value) - 4 * sd,
    high: Math.log(value) + 4 * sd,
    longestStep: 0.7,
  });
  return [of(size), of(ratio)];
}

/** How a line answers to the size of its diver's pull, and to the ratio of drag to lift. */
export const DIVER_STEPS: readonly LineStep[] = [
  { step: 0.01, moved: (line, by) => scaledDiver(line, by, by) },
  { step: 0.01, moved: (line, by) => scaledDiver(line, 0, by) },
];

function scaledDiver(line: LongLine, lnLift: number, lnDrag: number): LongLine {
  const { joint } = line;
  if (joint === undefined) return line;
  const liftAreaM2 = joint.liftAreaM2 * Math.exp(lnLift);
  return { ...line, joint: { ...joint, liftAreaM2, dragAreaM2: joint.dragAreaM2 * Math.exp(lnDrag) } };
}

/**
 * Fits a diver's lift and drag areas to depths that were measured with it. One length tells one combination of the
 * two; lengths far apart tell both, whatever the speed, for all forces grow alike with it. Refuses when no reading can
 * be used.
 */
export function fitDiver(readings: readonly LongLineReading[]): DiverFit | Refusal {
  const prior = parameters();
  const models = readings.map((reading) => ({
    reading,
    open: openParameters(reading, DIVER_FITTED),
    why:
      whyNoLineReading(reading) ??
      (expectedOnLine(lineWithDiver(reading.line, startingDiver()), reading) === undefined
        ? NO_ANSWER
        : undefined),
  }));
  const { leftOut, used } = sortedOut(models);
  if (used.length === 0) return leftOut[0] ?? refuse("there is no reading to go by");
  const fit = robustFit(
    used.map(({ index, model: { reading, open } }) => ({
      index,
      measuredM: reading.measuredM,
      expect: (values) =>
        expectOnLine(reading, lineWithDiver(reading.line, forcesOf(values)), DIVER_STEPS, open),
    })),
    prior,
  );
  if (fit === undefined) return refuse("the readings do not settle on one answer");
  const { liftAreaM2, dragAreaM2 } = forcesOf(fit.values);
  const [size = 0, both = 0, , ratio = 0] = fit.covariance;
  const left = (variance: number, i: number): number => variance / (prior[i]?.sd ?? 1) ** 2;
  return {
    ok: true,
    liftAreaM2,
    dragAreaM2,
    spread: spreadOf(size, both, ratio),
    leftOfSize: left(size, 0),
    leftOfRatio: left(ratio, 1),
    readings: fit.readings,
    leftOut,
  };
}

function forcesOf([lnLift = 0, lnRatio = 0]: readonly number[]): LureForces {
  return { weightN: 0, liftAreaM2: Math.exp(lnLift), dragAreaM2: Math.exp(lnLift + lnRatio) };
}

/** A line with a diver of such forces. */
export function lineWithDiver(line: LongLine, joint: LureForces): LongLine {
  return { ...line, joint };
}

/** The spread of ln lift and ln drag from that of ln lift and ln(drag / lift). */
function spreadOf(size: number, both: number, ratio: number): DiverSpread {
  const lnLiftSd = Math.sqrt(size);
  const lnDragSd = Math.sqrt(Math.max(0, size + 2 * both + ratio));
  return { lnLiftSd, lnDragSd, link: (size + both) / Math.max(1e-12, lnLiftSd * lnDragSd) };
}
