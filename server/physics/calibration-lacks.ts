import type { CalibrationFit } from "./calibrate.ts";
import { type CalibrationReading, predict } from "./calibration-reading.ts";
import { DEFAULTS } from "./defaults.ts";
import { atSpeed, type Downrigger } from "./downrigger.ts";
import { inverse, varianceOf } from "./symmetric-matrix.ts";

/** What a fit's readings leave open. */
export interface CalibrationLacks {
  /** The readings hardly tell how the cable drags: they are short or slow. */
  readonly drag: boolean;
  /** The readings hardly tell anything of the counter. */
  readonly counter: boolean;
  /** The counter is known at the lengths read, but its scale and its offset not one from the other. */
  readonly scaleFromOffset: boolean;
  /** Drag and counter explain each other. */
  readonly dragFromCounter: boolean;
}

/** A reading that would tell more, as the captain would take it. */
export interface ReadingToTake {
  readonly kind: "probe" | "touch";
  readonly outM: number;
  readonly speedMS: number;
  /** What it would leave of the standard deviation of a long, fast line's depth, as a share. */
  readonly leaves: number;
}

/** Something counts as told where the readings took half of its prior's variance off (judgement). */
const OPEN = 0.5;
/** Two parameters explain each other beyond this correlation (judgement). */
const TIED = 0.9;

/** What the readings of a fit cannot tell. */
export function calibrationLacks({ covariance, prior, ...fit }: CalibrationFit): CalibrationLacks {
  const at = (i: number): number => covariance[i] ?? 0;
  const drag = at(0) > OPEN * prior.lnDragSd ** 2;
  const [best, worst] = eigenvalues(
    at(4) / prior.counterScaleSd ** 2,
    at(5) / (prior.counterScaleSd * prior.counterOffsetSdM),
    at(8) / prior.counterOffsetSdM ** 2,
  );
  const dragScale = at(1) / (fit.lnDragSd * fit.counterScaleSd);
  return {
    drag,
    counter: best > OPEN,
    scaleFromOffset: best <= OPEN && worst > OPEN,
    dragFromCounter: !drag && Math.abs(dragScale) > TIED,
  };
}

/** The smaller and the larger eigenvalue of a symmetric matrix of two rows. */
function eigenvalues(first: number, cross: number, second: number): [number, number] {
  const middle = (first + second) / 2;
  const reach = Math.hypot((first - second) / 2, cross);
  return [middle - reach, middle + reach];
}

const FOOT_M = 0.3048;
const MPH_MS = 0.44704;

/** Readings to choose from: what can be done on any day of trolling, and touches of the bottom at a crawl. */
const CHOICES: readonly Omit<ReadingToTake, "leaves">[] = [
  ...[30, 60, 100, 150, 200].flatMap((ft) =>
    [2, 2.7].map((mph) => ({ kind: "probe" as const, outM: ft * FOOT_M, speedMS: mph * MPH_MS })),
  ),
  ...[40, 120].map((ft) => ({ kind: "touch" as const, outM: ft * FOOT_M, speedMS: 1 * MPH_MS })),
];

/** Depths that a calibration is wanted for: lengths and speeds of usual days. */
const WANTED: readonly (readonly [ft: number, mph: number])[] = [
  [50, 2.2],
  [100, 2.4],
  [180, 2.6],
];

/** The one reading more that would narrow the depths of usual days the most; none where no model answers. */
export function readingToTake(fit: CalibrationFit, rig: Downrigger): ReadingToTake | undefined {
  const information = inverse(fit.covariance, 3);
  if (information === undefined) return undefined;
  const wanted = WANTED.flatMap(([ft, mph]) => {
    const at = { kind: "probe" as const, outM: ft * FOOT_M, speedMS: mph * MPH_MS };
    return predict(readingOn(rig, at), fit.values)?.slopes.slice() ?? [];
  });
  const before = spreadAt(fit.covariance, wanted);
  let best: ReadingToTake | undefined;
  for (const choice of CHOICES) {
    const after = spreadAt(covarianceWith(information, readingOn(rig, choice), fit), wanted);
    const leaves = after / before;
    if (best === undefined || leaves < best.leaves) best = { ...choice, leaves };
  }
  return best;
}

function readingOn(rig: Downrigger, choice: Omit<ReadingToTake, "leaves">): CalibrationReading {
  const isTouch = choice.kind === "touch";
  const probeAboveBallM = rig.probeAboveBallM ?? DEFAULTS.probeAboveBallM.value;
  return {
    rig: atSpeed({ ...rig, outM: choice.outM, probeAboveBallM, rods: [] }, choice.speedMS),
    as: isTouch ? "ball-depth" : "probe-depth",
    measuredM: 0,
    sdM: isTouch ? DEFAULTS.touchDepthSdM.value : DEFAULTS.probeDepthSdM.value,
    speedSdMS: DEFAULTS.probeSpeedSdMS.value,
  };
}

function covarianceWith(
  information: readonly number[],
  reading: CalibrationReading,
  fit: CalibrationFit,
): readonly number[] {
  const seen = predict(reading, fit.values);
  if (seen === undefined) return fit.covariance;
  const more = information.map((value, i) => {
    const [row = 0, column = 0] = [seen.slopes[Math.floor(i / 3)], seen.slopes[i % 3]];
    return value + (row * column) / seen.sdM ** 2;
  });
  return inverse(more, 3) ?? fit.covariance;
}

/** Root mean square of the spreads that a covariance leaves to some depths, three slopes each. */
function spreadAt(covariance: readonly number[], slopes: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i + 2 < slopes.length; i += 3) sum += varianceOf(covariance, slopes.slice(i, i + 3));
  return Math.sqrt(sum / Math.max(1, slopes.length / 3));
}
