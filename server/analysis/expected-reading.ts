/** What the model expected of a reading, whether they agree, and which single change would explain it if not. */

import { DEVIATIONS_80 } from "../physics/band.ts";
import { type CalibrationReading, expectedOf } from "../physics/calibration-reading.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import type { Downrigger } from "../physics/downrigger.ts";
import { changedFlow, deepSpeedMS } from "../physics/flow-profile.ts";
import type { RigReading } from "./calibration-readings.ts";
import { createDepthMemo, solveTask } from "./depth-memo.ts";

/** A depth that was expected where one was measured, with its 80 % range, m. The range is solved when it is looked at. */
export interface ExpectedReading {
  readonly reading: RigReading;
  readonly depthM: number;
  readonly lowM: number;
  readonly highM: number;
  readonly measuredM: number;
  /**
   * How far the measured depth is off, as a share of the 80 % range's half and the instrument's own error together:
   * beyond 1 it lies outside.
   */
  readonly off: number;
  /** As much at most: as a share of the instrument's own error alone, which takes no range. */
  readonly offAtMost: number;
}

/** More than the readings of a long file; those of a whole workspace, looked at once each, are not kept. */
const MOST_KEPT = 500;
let memo = createDepthMemo();

/** Compares a measured depth with the one computed from the book as it stands; undefined for distances behind. */
export function expectedReading(reading: RigReading): ExpectedReading | undefined {
  const { as, measuredM, sdM } = reading.reading;
  if (as !== "probe-depth" && as !== "ball-depth") return undefined;
  if (memo.answers.size >= MOST_KEPT) memo = createDepthMemo();
  const answer = solveTask(reading.task, memo);
  const place = answer.ok ? (as === "probe-depth" ? answer.probe : answer.ball) : undefined;
  if (place === undefined) return undefined;
  const { depthM } = place;
  const apartM = Math.abs(measuredM - depthM);
  const ownM = DEVIATIONS_80 * Math.hypot(sdM, DEFAULTS.modelDepthShare.value * depthM);
  return {
    reading,
    depthM,
    measuredM,
    offAtMost: apartM / ownM,
    get lowM() {
      return place.lowM;
    },
    get highM() {
      return place.highM;
    },
    get off() {
      const sideM = measuredM < depthM ? depthM - place.lowM : place.highM - depthM;
      return apartM / Math.hypot(sideM, ownM);
    },
  };
}

/** Single changes that would each explain a reading; those that would have to be absurd are left out. */
export interface Explanations {
  /** Cable that would be out in place of what the counter says, m. */
  readonly counterM: number | undefined;
  /** Speed at the cable, m/s. */
  readonly speedMS: number | undefined;
  /** Times the drag reckoned with. */
  readonly dragTimes: number | undefined;
}

/** Farther than this from what is written nothing explains (judgement). */
const MOST_COUNTER_SHARE = 0.3;
const SPEED_TIMES = [0.4, 2] as const;
const DRAG_TIMES = [0.25, 4] as const;

/** Explanations of the latest measured depth, by the answer for the setting that it was measured at. */
const explained = new WeakMap<object, { readonly reading: CalibrationReading; readonly why: Explanations }>();

/** What would explain a reading, each change by itself; kept with the answer for its setting. */
export function explain(of: RigReading): Explanations {
  const { as, measuredM } = of.reading;
  const answer = solveTask(of.task, memo);
  const known = explained.get(answer);
  if (known?.reading.measuredM === measuredM && known.reading.as === as) return known.why;
  const why = sought(of);
  explained.set(answer, { reading: of.reading, why });
  return why;
}

function sought({ task, reading, counterM }: RigReading): Explanations {
  const rig = task.downrigger;
  const deepMS = deepSpeedMS(rig.flow);
  const isOut = (outM: number): boolean => Math.abs(outM - counterM) <= MOST_COUNTER_SHARE * counterM;
  const least = counterM * (1 - MOST_COUNTER_SHARE);
  const most = counterM * (1 + MOST_COUNTER_SHARE);
  const outM = solveFor(reading, (value) => ({ ...rig, outM: value }), least, most);
  const [slow, fast] = SPEED_TIMES;
  const [slick, rough] = DRAG_TIMES;
  return {
    counterM: outM !== undefined && isOut(outM) ? outM : undefined,
    speedMS: solveFor(
      reading,
      (speedMS) => ({ ...rig, flow: changedFlow(rig.flow, (ms) => (ms * speedMS) / deepMS) }),
      deepMS * slow,
      Math.max(deepMS * fast, 0.5),
    ),
    dragTimes: solveFor(
      reading,
      (times) => ({ ...rig, cable: { ...rig.cable, dragMultiplier: rig.cable.dragMultiplier * times } }),
      slick,
      rough,
    ),
  };
}

/** The value between two at which the model gives what was measured, by bisection; none where it never does. */
function solveFor(
  { as, measuredM }: CalibrationReading,
  rigAt: (value: number) => Downrigger,
  from: number,
  to: number,
): number | undefined {
  const excess = (value: number): number => (expectedOf(rigAt(value), as) ?? Number.NaN) - measuredM;
  let [low, high] = [from, to];
  const atLow = excess(low);
  if (!(atLow * excess(high) < 0)) return undefined;
  for (let round = 0; round < 30 && high - low > 1e-4 * high; round++) {
    const middle = (low + high) / 2;
    if (excess(middle) * atLow > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
