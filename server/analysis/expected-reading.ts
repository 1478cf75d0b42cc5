/** What the model expected of a reading, whether they agree, and which single change would explain it if not. */

import { bandsOf, DEVIATIONS_80 } from "../physics/band.ts";
import { expectedOf } from "../physics/calibration-reading.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import { changedFlow, deepSpeedMS } from "../physics/flow-profile.ts";
import type { LongLine } from "../physics/long-line.ts";
import { longLineParameters } from "../physics/long-line-parameters.ts";
import { expectedOnLine } from "../physics/long-line-reading.ts";
import type { AnyReading, RigReading } from "./calibration-readings.ts";
import { createDepthMemo, solveTask } from "./depth-memo.ts";
import type { LineReading } from "./line-readings.ts";

/** A depth that was expected where one was measured, with its 80 % range, m. */
export interface ExpectedReading<Of extends AnyReading = AnyReading> {
  readonly reading: Of;
  readonly depthM: number;
  readonly lowM: number;
  readonly highM: number;
  readonly measuredM: number;
  /**
   * How far the measured depth is off, as a share of the 80 % range's half and the instrument's own error together:
   * beyond 1 it lies outside.
   */
  readonly off: number;
}

const memo = createDepthMemo();

/** Compares a measured depth with the one computed from the book as it stands; undefined for distances behind. */
export function expectedReading(reading: RigReading): ExpectedReading<RigReading> | undefined {
  const { as } = reading.reading;
  if (as !== "probe-depth" && as !== "ball-depth") return undefined;
  const answer = solveTask(reading.task, memo);
  const place = answer.ok ? (as === "probe-depth" ? answer.probe : answer.ball) : undefined;
  if (place === undefined) return undefined;
  return beside(reading, place);
}

/** The same for a line that is on no downrigger; undefined also where the book has no depth for it. */
export function expectedLineReading(reading: LineReading): ExpectedReading<LineReading> | undefined {
  const { task, reading: asked } = reading;
  if (!task.ok || !asked.as.endsWith("depth")) return undefined;
  const depthM = expectedOnLine(task.line, asked);
  if (depthM === undefined) return undefined;
  const inputs = longLineParameters(task.spreads).map(({ key, moved }) => ({
    key,
    at: (deviations: number) => {
      const value = expectedOnLine(moved(task.line, deviations), asked);
      return value === undefined ? undefined : [value];
    },
  }));
  const [band] = bandsOf([depthM], inputs);
  return beside(reading, { depthM, lowM: Math.max(0, band?.low ?? depthM), highM: band?.high ?? depthM });
}

function beside<Of extends AnyReading>(
  reading: Of,
  { depthM, lowM, highM }: { readonly depthM: number; readonly lowM: number; readonly highM: number },
): ExpectedReading<Of> {
  const { measuredM, sdM } = reading.reading;
  const side = measuredM < depthM ? depthM - lowM : highM - depthM;
  const own = DEVIATIONS_80 * Math.hypot(sdM, DEFAULTS.modelDepthShare.value * depthM);
  const off = Math.abs(measuredM - depthM) / Math.hypot(side, own);
  return { reading, depthM, lowM, highM, measuredM, off };
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

/** What would explain a reading, each change by itself. */
export function explain({ task: { downrigger: rig }, reading, counterM }: RigReading): Explanations {
  const rough = (times: number): number => rig.cable.dragMultiplier * times;
  return explained(reading.measuredM, counterM, deepSpeedMS(rig.flow), {
    out: (outM) => expectedOf({ ...rig, outM }, reading.as),
    speedTimes: (times) =>
      expectedOf({ ...rig, flow: changedFlow(rig.flow, (ms) => ms * times) }, reading.as),
    dragTimes: (times) =>
      expectedOf({ ...rig, cable: { ...rig.cable, dragMultiplier: rough(times) } }, reading.as),
  });
}

/** The same for a line that is on no downrigger. */
export function explainLine({ task, reading, counterM }: LineReading): Explanations {
  if (!task.ok) return { counterM: undefined, speedMS: undefined, dragTimes: undefined };
  const { line } = task;
  const at = (change: Partial<LongLine>) => expectedOnLine({ ...line, ...change }, reading);
  return explained(reading.measuredM, counterM, deepSpeedMS(line.flow), {
    out: (outM) => at({ outM }),
    speedTimes: (times) => at({ flow: changedFlow(line.flow, (ms) => ms * times) }),
    dragTimes: (times) => at({ main: { ...line.main, dragMultiplier: line.main.dragMultiplier * times } }),
  });
}

/** What the model gives with one thing changed. */
interface Changed {
  readonly out: (outM: number) => number | undefined;
  readonly speedTimes: (times: number) => number | undefined;
  readonly dragTimes: (times: number) => number | undefined;
}

function explained(measuredM: number, counterM: number, speedMS: number, changed: Changed): Explanations {
  const [slow, fast] = SPEED_TIMES;
  const [slick, rough] = DRAG_TIMES;
  const [least, most] = [counterM * (1 - MOST_COUNTER_SHARE), counterM * (1 + MOST_COUNTER_SHARE)];
  const speedTimes = solveFor(measuredM, changed.speedTimes, slow, Math.max(fast, 0.5 / speedMS));
  return {
    counterM: solveFor(measuredM, changed.out, least, most),
    speedMS: speedTimes === undefined ? undefined : speedTimes * speedMS,
    dragTimes: solveFor(measuredM, changed.dragTimes, slick, rough),
  };
}

/** The value between two at which the model gives what was measured, by bisection; none where it never does. */
function solveFor(
  measuredM: number,
  expectedAt: (value: number) => number | undefined,
  from: number,
  to: number,
): number | undefined {
  const excess = (value: number): number => (expectedAt(value) ?? Number.NaN) - measuredM;
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
