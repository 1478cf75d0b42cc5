/** The one reading more that would tell the most of a line on no downrigger, as the captain would take it. */
import type { CalibrationFit } from "./calibrate.ts";
import { DIVER_FITTED, DIVER_STEPS, type DiverFit, lineWithDiver } from "./calibrate-diver.ts";
import { LINE_STEPS, lineFitted, lineWithValues } from "./calibrate-line.ts";
import type { ReadingToTake } from "./calibration-lacks.ts";
import { DEFAULTS } from "./defaults.ts";
import { uniformFlow } from "./flow-profile.ts";
import type { LongLine } from "./long-line.ts";
import { expectOnLine, type LineStep, type LongLineReading, openParameters } from "./long-line-reading.ts";
import { inverse, varianceOf } from "./symmetric-matrix.ts";

const FOOT_M = 0.3048;
const MPH_MS = 0.44704;

/** Lengths to choose from, whole colors of leadcore all of them, and speeds of any day. */
const LENGTHS_FT = [60, 120, 180, 240, 300] as const;
const SPEEDS_MPH = [1.5, 2.4] as const;
/** Divers are hardly let out farther (common practice). */
const MOST_OF_DIVER_M = 250 * FOOT_M;

/** Depths that a calibration is wanted for: lengths and speeds of usual days. */
const WANTED: readonly (readonly [ft: number, mph: number])[] = [
  [90, 2.2],
  [150, 2.4],
  [240, 2.6],
];

type Choice = Omit<ReadingToTake, "leaves">;

/** A fit as it answers to one reading more. */
interface Fitted {
  /** The line as the fit has it. */
  readonly line: LongLine;
  readonly covariance: readonly number[];
  readonly steps: readonly LineStep[];
  /** Inputs that the fit settles. */
  readonly settled: ReadonlySet<string>;
  /** No more is let out than this, m. */
  readonly mostM: number;
}

/**
 * For drag and counter of a line that holds so much, m; `last` is a reading on it as it is now. None where no model
 * answers.
 */
export function lineReadingToTake(
  fit: CalibrationFit,
  last: LongLineReading,
  { isByColors, holdsM }: { isByColors: boolean; holdsM: number | undefined },
): ReadingToTake | undefined {
  const line = lineWithValues(last.line, fit.values);
  const { covariance } = fit;
  return best(
    {
      line,
      covariance,
      steps: LINE_STEPS,
      settled: lineFitted(isByColors),
      mostM: holdsM ?? Number.POSITIVE_INFINITY,
    },
    last,
  );
}

/** For the areas of a diver. */
export function diverReadingToTake(fit: DiverFit, last: LongLineReading): ReadingToTake | undefined {
  const { lnLiftSd, lnDragSd, link } = fit.spread;
  const [lift, drag, both] = [lnLiftSd ** 2, lnDragSd ** 2, link * lnLiftSd * lnDragSd];
  // Size of the pull, and the ratio of drag to lift.
  const covariance = [lift, both - lift, both - lift, lift + drag - 2 * both];
  const line = lineWithDiver(last.line, {
    weightN: 0,
    liftAreaM2: fit.liftAreaM2,
    dragAreaM2: fit.dragAreaM2,
  });
  return best({ line, covariance, steps: DIVER_STEPS, settled: DIVER_FITTED, mostM: MOST_OF_DIVER_M }, last);
}

function best(fitted: Fitted, last: LongLineReading): ReadingToTake | undefined {
  const { covariance, steps } = fitted;
  const information = inverse(covariance, steps.length);
  if (information === undefined) return undefined;
  const wanted = WANTED.flatMap(([ft, mph]) => {
    const seen = seenOn(fitted, last, { kind: "touch", outM: ft * FOOT_M, speedMS: mph * MPH_MS });
    return seen === undefined ? [] : [seen.slopes];
  });
  const before = spreadAt(covariance, wanted);
  if (!(before > 0)) return undefined;
  let found: ReadingToTake | undefined;
  for (const choice of choicesFor(last, fitted.mostM)) {
    const seen = seenOn(fitted, last, choice);
    if (seen === undefined) continue;
    const more = information.map((value, i) => {
      const [row, column] = [Math.floor(i / steps.length), i % steps.length];
      return value + ((seen.slopes[row] ?? 0) * (seen.slopes[column] ?? 0)) / seen.sdM ** 2;
    });
    const after = inverse(more, steps.length);
    const leaves = after === undefined ? 1 : spreadAt(after, wanted) / before;
    if (found === undefined || leaves < found.leaves) found = { ...choice, leaves };
  }
  return found;
}

/** Touches, and probe readings where a probe is clipped on. */
function choicesFor({ probeAboveJointM }: LongLineReading, mostM: number): Choice[] {
  const kinds = probeAboveJointM === undefined ? (["touch"] as const) : (["touch", "probe"] as const);
  return LENGTHS_FT.filter((ft) => ft * FOOT_M <= mostM + 1e-6).flatMap((ft) =>
    SPEEDS_MPH.flatMap((mph) => kinds.map((kind) => ({ kind, outM: ft * FOOT_M, speedMS: mph * MPH_MS }))),
  );
}

/** What the model expects of a reading, with its slopes by what is fitted. */
function seenOn({ line, steps, settled }: Fitted, last: LongLineReading, { kind, outM, speedMS }: Choice) {
  const asked: LongLine = { ...line, outM, flow: uniformFlow(speedMS) };
  const isTouch = kind === "touch";
  const reading: LongLineReading = {
    ...last,
    line: asked,
    as: isTouch ? "ball-depth" : "probe-depth",
    measuredM: 0,
    sdM: isTouch ? DEFAULTS.touchDepthSdM.value : DEFAULTS.probeDepthSdM.value,
  };
  return expectOnLine(reading, asked, steps, openParameters(last, settled));
}

/** Root mean square of the spreads that a covariance leaves to some depths. */
function spreadAt(covariance: readonly number[], wanted: readonly (readonly number[])[]): number {
  const sum = wanted.reduce((total, slopes) => total + varianceOf(covariance, slopes), 0);
  return Math.sqrt(sum / Math.max(1, wanted.length));
}
