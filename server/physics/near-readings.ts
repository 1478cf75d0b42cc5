/**
 * What is about expected of readings of one setting: the rig is solved once, at the first of them, with how its answer
 * leans on drag, cable, speed and the rods' pull; the others are reckoned from there.
 */

import type { CalibrationReading, MeasuredAs } from "./calibration-reading.ts";
import { readOff } from "./calibration-reading.ts";
import type { Downrigger } from "./downrigger.ts";
import { cableOutM } from "./downrigger-cable.ts";
import { fasterRig, harderRods, longerRig } from "./downrigger-parameters.ts";
import { type FlowProfile, speedAtDepthMS, uniformFlow } from "./flow-profile.ts";
import { type Exactness, type SettledDownrigger, solveSettled } from "./settled-downrigger.ts";

/** What a reading is about expected to show, m. */
export interface RoughExpectation {
  readonly expectedM: number;
  /** It is off by less than that, m. */
  readonly withinM: number;
  /** Change with ln drag, and with each m of cable, of speed (m/s) and of the rods' pull (N). */
  readonly perLnDrag: number;
  readonly perCable: number;
  readonly perSpeed: number;
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
    return { ...atSpeed(slopes, as, byMS / speedMS), expectedM: centreM + slopes.perSpeed * byMS, withinM };
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

/** The slopes at a speed greater by a share. */
function atSpeed(
  { perLnDrag, perCable, perSpeed, perPull }: Slopes,
  as: MeasuredAs,
  byShare: number,
): Slopes {
  const isDepth = as.endsWith("depth");
  const power = isDepth ? POWER.depth : POWER.behind;
  const straight = isDepth ? 1 : 0;
  const times = (1 + byShare) ** power;
  return {
    perLnDrag: perLnDrag * times,
    perCable: straight + (perCable - straight) * times,
    perSpeed: (perSpeed * times) / (1 + byShare),
    perPull,
  };
}

type Slopes = Omit<RoughExpectation, "expectedM" | "withinM">;

/** Slopes by what is read, each solved when first asked for. */
function keptSlopes(rig: Downrigger, centre: SettledDownrigger): (as: MeasuredAs) => Slopes | undefined {
  const near = (moved: Downrigger) => {
    const solved = solveSettled(moved, centre, LOOSE);
    return solved.ok ? solved.answer : undefined;
  };
  let answers: ReturnType<typeof near>[] | undefined;
  return (as) => {
    const { cable } = rig;
    answers ??= [
      near({ ...rig, cable: { ...cable, dragMultiplier: cable.dragMultiplier * Math.exp(LN_DRAG_STEP) } }),
      near(longerRig(rig, CABLE_STEP_M / rig.counterScale)),
      near(fasterRig(rig, SPEED_STEP_MS)),
      isPulled(rig) ? near(harderRods(rig, PULL_STEP_N)) : centre.answer,
    ];
    const from = readOff(centre.answer, as) ?? Number.NaN;
    const [perLnDrag, perCable, perSpeed, perPull] = answers.map(
      (answer, i) =>
        ((answer === undefined ? Number.NaN : (readOff(answer, as) ?? Number.NaN)) - from) / (STEPS[i] ?? 1),
    );
    const slopes = { perLnDrag, perCable, perSpeed, perPull } as Slopes;
    return Object.values(slopes).every(Number.isFinite) ? slopes : undefined;
  };
}

const STEPS = [LN_DRAG_STEP, CABLE_STEP_M, SPEED_STEP_MS, PULL_STEP_N];

function isPulled(rig: Downrigger): boolean {
  return rig.rods.some((rod) => (rod.rodLine?.tipTensionN ?? 0) > 0);
}

function speedsAt(flow: FlowProfile, depthM: number): number[] {
  return [0, 0.5, 1].map((share) => speedAtDepthMS(flow, share * depthM));
}

function weighted(speeds: readonly number[]): number {
  return WEIGHTS.reduce((sum, weight, i) => sum + weight * (speeds[i] ?? 0), 0);
}
