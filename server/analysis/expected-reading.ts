/** What the model expected of a reading, whether they agree, and which single change would explain it if not. */

import { bandsOf, DEVIATIONS_80 } from "../physics/band.ts";
import { expectedOf, type MeasuredAs } from "../physics/calibration-reading.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import { type BandedPlace, once } from "../physics/downrigger-band.ts";
import { changedFlow, deepSpeedMS } from "../physics/flow-profile.ts";
import type { LongLine } from "../physics/long-line.ts";
import { longLineParameters } from "../physics/long-line-parameters.ts";
import { expectedOnLine, type LongLineReading } from "../physics/long-line-reading.ts";
import type { AnyReading, RigReading } from "./calibration-readings.ts";
import { createDepthMemo, solveTask } from "./depth-memo.ts";
import type { LineReading } from "./line-readings.ts";
import type { LongLineTask } from "./long-line-input.ts";

/** A depth that was expected where one was measured, with its 80 % range, m. The range is solved when it is looked at. */
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
  /** As much at most: as a share of the instrument's own error alone, which takes no range. */
  readonly offAtMost: number;
}

/** More than the readings of a long file; those of a whole workspace, looked at once each, are not kept. */
const MOST_KEPT = 500;
let memo = createDepthMemo();

/** Compares a measured depth with the one computed from the book as it stands; undefined for distances behind. */
export function expectedReading(reading: RigReading): ExpectedReading<RigReading> | undefined {
  const { as } = reading.reading;
  if (as !== "probe-depth" && as !== "ball-depth") return undefined;
  if (memo.answers.size >= MOST_KEPT) memo = createDepthMemo();
  const answer = solveTask(reading.task, memo);
  const place = answer.ok ? (as === "probe-depth" ? answer.probe : answer.ball) : undefined;
  if (place === undefined) return undefined;
  return beside(reading, place);
}

/** The same for a line that is on no downrigger; undefined also where the book has no depth for it. */
export function expectedLineReading(reading: LineReading): ExpectedReading<LineReading> | undefined {
  const { task, reading: asked } = reading;
  if (!task.ok || !asked.as.endsWith("depth")) return undefined;
  const place = placeOnLine(task, asked);
  return place === undefined ? undefined : beside(reading, place);
}

/** A computed depth with its 80 % range, m. */
type Range = Pick<BandedPlace, "depthM" | "lowM" | "highM">;

/** Depths on the lines of tasks that are kept, by what was measured. */
const placesOnLines = new WeakMap<LongLineTask, Map<LongLineReading["as"], Range | undefined>>();

function placeOnLine(task: LongLineTask, asked: LongLineReading): Range | undefined {
  const places = placesOnLines.get(task) ?? new Map<LongLineReading["as"], Range | undefined>();
  placesOnLines.set(task, places);
  if (!places.has(asked.as)) places.set(asked.as, solveOnLine(task, asked));
  return places.get(asked.as);
}

function solveOnLine({ line, spreads }: LongLineTask, asked: LongLineReading): Range | undefined {
  const depthM = expectedOnLine(line, asked);
  if (depthM === undefined) return undefined;
  const band = once(() => {
    const inputs = longLineParameters(spreads).map(({ key, moved }) => ({
      key,
      at: (deviations: number) => {
        const value = expectedOnLine(moved(line, deviations), asked);
        return value === undefined ? undefined : [value];
      },
    }));
    return bandsOf([depthM], inputs)[0];
  });
  return {
    depthM,
    get lowM() {
      return Math.max(0, band()?.low ?? depthM);
    },
    get highM() {
      return band()?.high ?? depthM;
    },
  };
}

function beside<Of extends AnyReading>(reading: Of, place: Range): ExpectedReading<Of> {
  const { depthM } = place;
  const { measuredM, sdM } = reading.reading;
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

/** The latest measured depth that was explained of an answer or a line's task, and what would explain it. */
interface Explained {
  readonly measuredM: number;
  readonly as: MeasuredAs;
  readonly why: Explanations;
}

const explained = new WeakMap<object, Explained>();

/** The explanations kept with what a depth was computed from, or those that are found. */
function keptWith(of: object, { reading }: AnyReading, find: () => Explanations): Explanations {
  const { measuredM, as } = reading;
  const known = explained.get(of);
  if (known?.measuredM === measuredM && known.as === as) return known.why;
  const why = find();
  explained.set(of, { measuredM, as, why });
  return why;
}

/** What would explain a reading, each change by itself; kept with the answer for its setting. */
export function explain(of: RigReading): Explanations {
  const { task, reading, counterM } = of;
  const rig = task.downrigger;
  const rough = (times: number): number => rig.cable.dragMultiplier * times;
  return keptWith(solveTask(task, memo), of, () =>
    sought(reading.measuredM, counterM, deepSpeedMS(rig.flow), {
      out: (outM) => expectedOf({ ...rig, outM }, reading.as),
      speedTimes: (times) =>
        expectedOf({ ...rig, flow: changedFlow(rig.flow, (ms) => ms * times) }, reading.as),
      dragTimes: (times) =>
        expectedOf({ ...rig, cable: { ...rig.cable, dragMultiplier: rough(times) } }, reading.as),
    }),
  );
}

/** The same for a line that is on no downrigger; kept with its task. */
export function explainLine(of: LineReading): Explanations {
  const { task, reading, counterM } = of;
  if (!task.ok) return { counterM: undefined, speedMS: undefined, dragTimes: undefined };
  const { line } = task;
  const at = (change: Partial<LongLine>) => expectedOnLine({ ...line, ...change }, reading);
  return keptWith(task, of, () =>
    sought(reading.measuredM, counterM, deepSpeedMS(line.flow), {
      out: (outM) => at({ outM }),
      speedTimes: (times) => at({ flow: changedFlow(line.flow, (ms) => ms * times) }),
      dragTimes: (times) => at({ main: { ...line.main, dragMultiplier: line.main.dragMultiplier * times } }),
    }),
  );
}

/** What the model gives with one thing changed. */
interface Changed {
  readonly out: (outM: number) => number | undefined;
  readonly speedTimes: (times: number) => number | undefined;
  readonly dragTimes: (times: number) => number | undefined;
}

function sought(measuredM: number, counterM: number, speedMS: number, changed: Changed): Explanations {
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
