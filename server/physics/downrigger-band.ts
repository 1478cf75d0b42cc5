import { type Band, DEVIATIONS_80, type Share, type Uncertain } from "./band.ts";
import { whyNoDownrigger } from "./check-downrigger.ts";
import { climbLure, unhungLure } from "./climb-rig.ts";
import { type DepthsByLength, depthsByLength } from "./depths-by-length.ts";
import type { Downrigger, Place, SolvedDownrigger } from "./downrigger.ts";
import { cableOutM } from "./downrigger-cable.ts";
import { fasterRig, longerRig, type RigParameter } from "./downrigger-parameters.ts";
import { type Exactness, SIDE, SLOPE } from "./exactness.ts";
import { bandsOrSamples } from "./lopsided-bands.ts";
import { type LureForces, lureLineOf } from "./lure.ts";
import { type Refusal, refuse } from "./refusal.ts";
import { LURE_TIMES, mirrored, neighboursOf } from "./rig-neighbours.ts";
import { type SettledDownrigger, solveSettled } from "./settled-downrigger.ts";
import { waterAt } from "./water.ts";

export {
  type DownriggerSpreads,
  defaultSpreads,
  type RigParameter,
  rigParameters,
} from "./downrigger-parameters.ts";

/** A depth with the 80 % band around it and what would change it, m. */
export interface BandedPlace extends Place {
  readonly lowM: number;
  readonly highM: number;
  /** Change of depth for each m/s more speed, in m per m/s: negative where more speed lifts. */
  readonly depthPerSpeed: number;
  /** Change of depth for each m more on the counter. */
  readonly depthPerOut: number;
  /** What each uncertain input alone would move: `less` shallower, `more` deeper, m. */
  readonly shares: readonly Share[];
}

/** One rod's release, and its lure with a band. */
interface BandedRod {
  readonly id: string;
  readonly release: Place;
  readonly lure: BandedPlace;
}

/** A solved downrigger with bands on the ball, the probe and each lure. */
export interface BandedDownrigger {
  readonly ok: true;
  readonly solved: SolvedDownrigger;
  readonly ball: BandedPlace;
  /** Left out where there is no probe or it is still above the water. */
  readonly probe?: BandedPlace;
  /** In the order given. */
  readonly rods: readonly BandedRod[];
}

/** Steps of the two slopes: small against a day's trolling, large against how exactly they are solved. */
const SPEED_STEP_MS = 0.02;
const OUT_STEP_M = 0.5;

/**
 * Where everything on a downrigger is, with an 80 % band on each depth from the parameters given (independent of
 * each other; `rigParameters` makes the usual list), and the slopes for "ten feet more" and "a little faster".
 * Refuses what `solveDownrigger` refuses. A band's shallow end never rises above the surface. A band that comes out
 * lopsided is a quadratic's instead. Bands and slopes take five times as long as the depths: each is solved when it is
 * first looked at, and parameters that come as a function are made only then; most answers are kept without.
 */
export function solveDownriggerBand(
  rig: Downrigger,
  parameters: readonly RigParameter[] | (() => readonly RigParameter[]),
): BandedDownrigger | Refusal {
  const why = whyNoDownrigger(rig);
  if (why !== undefined) return refuse(why);
  const centre = solveSettled(rig);
  if (!centre.ok) return centre;
  const values = depthsOf(centre.answer);
  const solve = neighboursOf(centre, values);
  const near: SolveNear = (other, exactness, guess) =>
    withProbe(solve(other, exactness, guess) ?? settledNear(other, centre, exactness), values);
  const bare = withoutProbe(rig);
  const depthsNear = (other: Downrigger, exactness: Exactness) => near(other, exactness)?.depths;
  const made = once(() => (typeof parameters === "function" ? parameters() : parameters));
  const byLength = once(() => lengthFamily(rig, bare, made(), values, (other) => depthsNear(other, SIDE)));
  const byStep = (): number[] => slopes(values, depthsNear(longerRig(bare, OUT_STEP_M), SLOPE), OUT_STEP_M);
  const bands = (): readonly Band[] => {
    const inputs = made().map((parameter) => sidesOf(parameter, bare, centre, values, near, byLength));
    return bandsOrSamples(values, inputs, (moves) => depthsNear(movedBy(bare, made(), moves), SIDE));
  };
  return bandedAnswer(centre.answer, {
    bands: once(bands),
    bySpeed: once(() => slopes(values, depthsNear(fasterRig(bare, SPEED_STEP_MS), SLOPE), SPEED_STEP_MS)),
    byOut: once(() => {
      const along = byLength()?.slopes;
      return along === undefined ? byStep() : along.map((slope) => slope * rig.counterScale);
    }),
  });
}

/**
 * The rig without its probe, which takes no part in how it hangs: cutting the cable there is a third of a climb, and so
 * near the ball it moves as that does (`withProbe`).
 */
function withoutProbe(rig: Downrigger): Downrigger {
  const { probeAboveBallM: _, ...bare } = rig;
  return bare;
}

/** The probe as far above its ball as in the middle, and never above the water. */
function withProbe(near: Near | undefined, [ballM = 0, probeM = 0]: readonly number[]): Near | undefined {
  if (near === undefined || probeM === 0) return near;
  const [nearBallM = 0, , ...others] = near.depths;
  return { ...near, depths: [nearBallM, Math.max(0, nearBallM - (ballM - probeM)), ...others] };
}

/** The depths of a rig beside the one in the middle; `point` is none where it had to be settled by itself. */
interface Near {
  readonly depths: readonly number[];
  readonly point?: Float64Array;
}
type SolveNear = (rig: Downrigger, exactness: Exactness, guess?: Float64Array) => Near | undefined;

/** An uncertain input of the rig: its second side starts where the first one, mirrored, would put it. */
function sidesOf(
  parameter: RigParameter,
  bare: Downrigger,
  centre: SettledDownrigger,
  values: readonly number[],
  near: SolveNear,
  byLength: () => DepthsByLength | undefined,
): Uncertain {
  const { key, moved: move, mirrors, lengthOnly, luresOnly } = parameter;
  let guess: Float64Array | undefined;
  return {
    key,
    at: (deviations) => {
      // A side that mirrors the other is left to `bandsOf`, which then takes it to be as far.
      if (mirrors && deviations < 0) return undefined;
      const moved = move(bare, deviations);
      const along = lengthOnly ? byLength() : undefined;
      if (along !== undefined) return along.at(cableOutM(moved));
      if (luresOnly) return withLuresOf(moved, values, centre);
      const solved = near(moved, SIDE, guess);
      guess = solved?.point === undefined ? undefined : mirrored(centre.settled.point, solved.point);
      return solved?.depths;
    },
  };
}

/** What is solved when it is first asked for, by depth in the order of `depthsOf`. */
interface Later {
  readonly bands: () => readonly Band[];
  readonly bySpeed: () => readonly number[];
  readonly byOut: () => readonly number[];
}

/** A value worked out when it is first asked for, and kept. */
export function once<T>(work: () => T): () => T {
  let kept: { readonly value: T } | undefined;
  return () => {
    kept ??= { value: work() };
    return kept.value;
  };
}

/** Depths against cable out, from two solves; not where a release or the probe would come out of the water. */
function lengthFamily(
  rig: Downrigger,
  bare: Downrigger,
  parameters: readonly RigParameter[],
  values: readonly number[],
  near: (other: Downrigger) => readonly number[] | undefined,
): DepthsByLength | undefined {
  const lengthsM = parameters
    .filter((parameter) => parameter.lengthOnly)
    .flatMap(({ moved }) => [DEVIATIONS_80, -DEVIATIONS_80].map((d) => cableOutM(moved(rig, d))));
  const highestM = Math.max(0, rig.probeAboveBallM ?? 0, ...rig.rods.map((rod) => rod.releaseAboveBallM));
  if (lengthsM.length === 0 || Math.min(...lengthsM) <= highestM + HIGHEST_SLACK_M) return undefined;
  return depthsByLength(cableOutM(rig), values, lengthsM, (lengthM) =>
    near({ ...bare, outM: (lengthM - rig.counterOffsetM) / rig.counterScale }),
  );
}

/** Cable to be left above the highest thing on it, m, for depth to change evenly with the length. */
const HIGHEST_SLACK_M = 1;
/** The rig with every parameter moved by so many of its standard deviations. */
function movedBy(
  rig: Downrigger,
  parameters: readonly RigParameter[],
  deviations: readonly number[],
): Downrigger {
  return parameters.reduce((moved, { moved: move }, i) => {
    const by = deviations[i] ?? 0;
    return by === 0 ? moved : move(moved, by);
  }, rig);
}

/** The depths that carry a band: the ball's, the probe's (0 without one), then each rod's release and lure. */
function depthsOf(answer: SolvedDownrigger): number[] {
  const depths = [answer.ball.depthM, answer.probe?.depthM ?? 0];
  for (const rod of answer.rods) depths.push(rod.release.depthM, rod.lure.depthM);
  return depths;
}

/** The same where a look at its neighbour does not tell: settled by itself from there. */
function settledNear(rig: Downrigger, centre: SettledDownrigger, exactness: Exactness): Near | undefined {
  const solved = solveSettled(rig, centre, exactness);
  return solved.ok ? { depths: depthsOf(solved.answer) } : undefined;
}

/** The same depths with only the lures hanging differently from their releases. */
function withLuresOf(
  rig: Downrigger,
  values: readonly number[],
  centre: SettledDownrigger,
): number[] | undefined {
  const water = waterAt(rig.waterTemperatureC, rig.salinityPsu);
  if (!water.ok) return undefined;
  const depths = values.slice();
  for (const [i, rod] of rig.rods.entries()) {
    if (isSameLure(rod.lure, centre.rig.rods[i]?.lure)) continue;
    const lure = unhungLure();
    const endZM = centre.lures[i]?.endZM ?? 0;
    const why = climbLure(lure, lureLineOf(rod, water), water, rig.flow, endZM, LURE_TIMES * SIDE.tolerance);
    if (why !== undefined) return undefined;
    depths[3 + 2 * i] = (values[2 + 2 * i] ?? 0) + lure.depthM;
  }
  return depths;
}

function isSameLure(one: LureForces, other: LureForces | undefined): boolean {
  return (
    one.weightN === other?.weightN &&
    one.dragAreaM2 === other.dragAreaM2 &&
    one.liftAreaM2 === other.liftAreaM2
  );
}

/** The slope of each depth over a step ahead; none where the step has no answer. */
function slopes(values: readonly number[], ahead: readonly number[] | undefined, step: number): number[] {
  return ahead === undefined ? [] : ahead.map((depth, i) => (depth - (values[i] ?? 0)) / step);
}

function bandedAnswer(solved: SolvedDownrigger, { bands, bySpeed, byOut }: Later): BandedDownrigger {
  const banded = (place: Place, index: number): BandedPlace => ({
    ...place,
    get lowM() {
      return Math.min(place.depthM, Math.max(0, bands()[index]?.low ?? place.depthM));
    },
    get highM() {
      return bands()[index]?.high ?? place.depthM;
    },
    get depthPerSpeed() {
      return bySpeed()[index] ?? 0;
    },
    get depthPerOut() {
      return byOut()[index] ?? 0;
    },
    get shares() {
      return bands()[index]?.shares ?? [];
    },
  });
  return {
    ok: true,
    solved,
    ball: banded(solved.ball, 0),
    ...(solved.probe === undefined ? {} : { probe: banded(solved.probe, 1) }),
    rods: solved.rods.map((rod, i) => ({
      id: rod.id,
      release: rod.release,
      lure: banded(rod.lure, 3 + 2 * i),
    })),
  };
}
