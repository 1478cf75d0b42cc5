/**
 * What is about expected of readings of one setting: the rig is solved once, at the first of them, with how its answer
 * leans on drag, cable, speed and the rods' pull; the others are reckoned from there.
 */

import type { CalibrationReading, MeasuredAs } from "./calibration-reading.ts";
import { readOff } from "./calibration-reading.ts";
import type { Downrigger, SolvedDownrigger } from "./downrigger.ts";
import { once } from "./downrigger-band.ts";
import { cableOutM } from "./downrigger-cable.ts";
import { fasterRig, harderRods, longerRig } from "./downrigger-parameters.ts";
import { type FlowProfile, speedAtDepthMS, uniformFlow } from "./flow-profile.ts";
import { type Exactness, type SettledDownrigger, solveSettled } from "./settled-downrigger.ts";

/** What a reading is about expected to show, m. */
export interface RoughExpectation {
  readonly expectedM: number;
  /** It is off by less than that, m. */
  readonly withinM: number;
  /** Change with ln drag and with each m/s of speed. */
  readonly perLnDrag: number;
  readonly perSpeed: number;
  /**
   * Change with each m of cable and with each N of the rods' pull: solved when it is looked at, no number where the model has
   * no answer.
   */
  readonly perCable: number;
  readonly perPull: number;
}

/**
 * Answers for readings on a rig that differs from the first in stream and temperature only; undefined where these are too
 * different, or the model has no answer.
 */
export type NearReadings = (reading: Pick<CalibrationReading, "rig" | "as">) => RoughExpectation | undefined;

const LOOSE: Exactness = { tolerance: 1e-4, share: 2e-4 };
/** Steps as large as such things are off. */
const LN_DRAG_STEP = 0.2;
const CABLE_STEP_M = 1;
const SPEED_STEP_MS = 0.1;
const PULL_STEP_N = 4;

/** How much the stream counts at the top, half-way down and at the ball: together the whole. */
const WEIGHTS = [0.1, 0.45, 0.45] as const;
/** A stream of another form may count otherwise, by this share of what it differs. */
const FORM = 0.15;
/** Farther from the first reading than this share of its speed nothing is reckoned. */
const FARTHEST = 0.12;
/**
 * What drag takes off a depth grows with the fourth power of the speed while the cable leans little, a distance behind with
 * the second: its angle grows with the second.
 */
const POWER = { depth: 4, behind: 2 } as const;
/** Change of ln drag for each °C, at most. */
const LN_DRAG_PER_C = 0.004;
/** What loose solving is off by, m. */
const SOLVED_M = 0.02;

/** Solves a rig loosely, in a stream that is the same at every depth, and answers for the readings near it. */
export function nearReadings(first: Downrigger): NearReadings {
  const speedMS = weighted(speedsAt(first.flow, cableOutM(first)));
  const rig = { ...first, flow: uniformFlow(speedMS) };
  const centre = solveSettled(rig, undefined, LOOSE);
  if (!centre.ok || centre.answer.surfaced) return () => undefined;
  const depthM = centre.answer.ball.depthM;
  const slopesOf = keptSlopes(rig, centre);
  return keptAnswers(({ rig: other, as }) => {
    const centreM = readOff(centre.answer, as);
    if (centreM === undefined) return undefined;
    const slopes = slopesOf(as);
    const apart = speedsAt(other.flow, depthM).map((speed) => speed - speedMS);
    const byMS = weighted(apart);
    const formMS = Math.max(...apart.map((one) => Math.abs(one - byMS)));
    const mostMS = Math.max(...apart.map(Math.abs));
    if (slopes === undefined || !(mostMS <= FARTHEST * speedMS)) return undefined;
    const bend = (Math.abs(byMS) * (Math.abs(byMS) + SPEED_STEP_MS)) / speedMS;
    const warmerC = Math.abs(other.waterTemperatureC - rig.waterTemperatureC);
    const withinM =
      SOLVED_M +
      Math.abs(slopes.perSpeed) * (FORM * formMS + bend) +
      Math.abs(slopes.perLnDrag) * LN_DRAG_PER_C * warmerC;
    return roughAt(slopes, as, byMS / speedMS, { expectedM: centreM + slopes.perSpeed * byMS, withinM });
  });
}

/** What hangs on a reading's rig and on what was read there is reckoned once for each. */
function keptAnswers(answer: NearReadings): NearReadings {
  const ofRigs = new WeakMap<Downrigger, Map<MeasuredAs, RoughExpectation | undefined>>();
  return (reading) => {
    const { rig, as } = reading;
    const answers = ofRigs.get(rig) ?? new Map<MeasuredAs, RoughExpectation | undefined>();
    if (answers.has(as)) return answers.get(as);
    const found = answer(reading);
    ofRigs.set(rig, answers.set(as, found));
    return found;
  };
}

/** What is expected, with the slopes at a speed greater by a share. */
function roughAt(
  slopes: Slopes,
  as: MeasuredAs,
  byShare: number,
  expected: Pick<RoughExpectation, "expectedM" | "withinM">,
): RoughExpectation {
  const isDepth = as.endsWith("depth");
  const power = isDepth ? POWER.depth : POWER.behind;
  const straight = isDepth ? 1 : 0;
  const times = (1 + byShare) ** power;
  return {
    ...expected,
    perLnDrag: slopes.perLnDrag * times,
    perSpeed: (slopes.perSpeed * times) / (1 + byShare),
    get perCable() {
      return straight + (slopes.perCable - straight) * times;
    },
    get perPull() {
      return slopes.perPull;
    },
  };
}

type Slopes = Omit<RoughExpectation, "expectedM" | "withinM">;

/** Slopes by what is read, each solved when it is first asked for; undefined where the model has no answer. */
function keptSlopes(rig: Downrigger, centre: SettledDownrigger): (as: MeasuredAs) => Slopes | undefined {
  const { cable } = rig;
  const near = (moved: () => Downrigger) =>
    once(() => {
      const solved = solveSettled(moved(), centre, LOOSE);
      return solved.ok ? solved.answer : undefined;
    });
  const rougher = near(() => ({
    ...rig,
    cable: { ...cable, dragMultiplier: cable.dragMultiplier * Math.exp(LN_DRAG_STEP) },
  }));
  const longer = near(() => longerRig(rig, CABLE_STEP_M / rig.counterScale));
  const faster = near(() => fasterRig(rig, SPEED_STEP_MS));
  const pulled = isPulled(rig) ? near(() => harderRods(rig, PULL_STEP_N)) : () => centre.answer;
  return (as) => {
    const from = readOff(centre.answer, as) ?? Number.NaN;
    const slope = (answer: SolvedDownrigger | undefined, step: number): number =>
      ((answer === undefined ? Number.NaN : (readOff(answer, as) ?? Number.NaN)) - from) / step;
    const perLnDrag = slope(rougher(), LN_DRAG_STEP);
    const perSpeed = slope(faster(), SPEED_STEP_MS);
    if (!Number.isFinite(perLnDrag) || !Number.isFinite(perSpeed)) return undefined;
    return {
      perLnDrag,
      perSpeed,
      get perCable() {
        return slope(longer(), CABLE_STEP_M);
      },
      get perPull() {
        return slope(pulled(), PULL_STEP_N);
      },
    };
  };
}

function isPulled(rig: Downrigger): boolean {
  return rig.rods.some((rod) => (rod.rodLine?.tipTensionN ?? 0) > 0);
}

function speedsAt(flow: FlowProfile, depthM: number): number[] {
  return [0, 0.5, 1].map((share) => speedAtDepthMS(flow, share * depthM));
}

function weighted(speeds: readonly number[]): number {
  return WEIGHTS.reduce((sum, weight, i) => sum + weight * (speeds[i] ?? 0), 0);
}
