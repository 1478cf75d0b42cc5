import type { Downrigger } from "./downrigger.ts";
import { type Exactness, JOURNAL } from "./exactness.ts";
import { entriesIn, type HangingRig, hangingRig, hangOnce } from "./hanging-rig.ts";
import { inverted } from "./inverted-matrix.ts";
import { spanM } from "./settle-rig.ts";
import { hangLures, type SettledDownrigger } from "./settled-downrigger.ts";
import { waterAt } from "./water.ts";

/** A rig beside another: its depths in the order of `depthsIn`, m, and the point that it settles at. */
export interface Neighbour {
  readonly depths: readonly number[];
  readonly point: Float64Array;
}

/** Where a rig beside a settled one hangs; `guess` is where its point may be, if not where the settled one is. */
export type SolveNeighbour = (
  rig: Downrigger,
  exactness: Exactness,
  guess?: Float64Array,
) => Neighbour | undefined;

/** How a settled rig answers to being taken to be elsewhere than it is. Each is by rows, with a column for each entry. */
interface Response {
  /** What the entries have to be changed by for each m that a climb misses each of them by. */
  readonly steps: Float64Array;
  /** What that changes of each depth, m for each m. */
  readonly depths: Float64Array;
}

/** An entry is moved by this share of the cable to see what answers: far more than climbs are off. */
const MOVED_SHARE = 1e-2;
/**
 * What may be left to be told by how the settled rig answers, and how far it may be told from, as shares of the cable: a
 * neighbour answers otherwise by some fifth, and by some hundredths of how far it is off.
 */
const LEFT_SHARE = 1e-3;
const STEP_SHARE = 1e-2;
/** Where the rods pull otherwise, all that answers to places does so too; so only that much of it may be left. */
const PULLED_OTHERWISE = 0.2;
/** A rig that answers by more than this share of a miss answers otherwise as soon as it is moved. */
const MOST_ANSWER = 0.25;
const MOST_CLIMBS = 4;

/** A lure's line is that many times shorter than its cable or more, so its steps may be off by as much more of its own length. */
export const LURE_TIMES = 5;

/**
 * Solves rigs that differ a little from a settled one by a climb or two each: how far a climb ends from where it was
 * taken to is little, and how the settled rig answers to being taken elsewhere, which is looked up once, tells the rest.
 * Undefined where it doesn't; then a rig has to be settled by itself.
 */
export function neighboursOf(centre: SettledDownrigger, depths: readonly number[]): SolveNeighbour {
  const middle = centre.settled.point;
  const n = middle.length;
  const water = waterAt(centre.rig.waterTemperatureC, centre.rig.salinityPsu);
  let response: Response | undefined;
  return (rig, { tolerance }, guess = middle) => {
    const isAlike =
      rig.flow.type === centre.rig.flow.type &&
      rig.waterTemperatureC === centre.rig.waterTemperatureC &&
      rig.salinityPsu === centre.rig.salinityPsu;
    if (!water.ok || !isAlike) return undefined;
    const hung = hangLures(rig, water, centre, LURE_TIMES * tolerance);
    if (!hung.ok) return undefined;
    response ??= responseOf(
      hangingRig(centre.rig, water, centre.lures, [], JOURNAL.tolerance),
      middle,
      depths,
    );
    if (response === undefined) return undefined;
    const hanging = hangingRig(rig, water, hung.lures, [], tolerance);
    if (entriesIn(hanging) !== n) return undefined;
    const share = isPulledAlike(rig, centre.rig) ? LEFT_SHARE : LEFT_SHARE * PULLED_OTHERWISE;
    const leftM = share * spanM(hanging);
    const stepM = STEP_SHARE * spanM(hanging);
    const point = guess.slice();
    const image = new Float64Array(n);
    for (let climb = 0; climb < MOST_CLIMBS; climb++) {
      if (!hangOnce(hanging, point, image)) return undefined;
      for (let i = 0; i < n; i++) image[i] = at(image, i) - at(point, i);
      const step = product(response.steps, image);
      const left = product(response.depths, step);
      for (let i = 0; i < n; i++) point[i] = at(point, i) + at(step, i);
      if (!left.every(Number.isFinite)) return undefined;
      if (isWithin(step, stepM) && isWithin(left, leftM)) return { depths: depthsIn(hanging, left), point };
    }
    return undefined;
  };
}

/** Moves each entry of a settled point by itself; none where the rig has no entries. */
function responseOf(
  hanging: HangingRig,
  settled: Float64Array,
  settledDepths: readonly number[],
): Response | undefined {
  const n = settled.length;
  const moveM = MOVED_SHARE * spanM(hanging);
  const [point, image] = [settled.slice(), new Float64Array(n)];
  const miss = new Float64Array(n * n);
  const depths = new Float64Array(settledDepths.length * n);
  for (let j = 0; j < n; j++) {
    point[j] = at(settled, j) + moveM;
    if (!hangOnce(hanging, point, image)) return undefined;
    point[j] = at(settled, j);
    for (let i = 0; i < n; i++) miss[i * n + j] = (i === j ? 1 : 0) - (at(image, i) - at(settled, i)) / moveM;
    for (const [i, depthM] of depthsIn(hanging).entries())
      depths[i * n + j] = (depthM - (settledDepths[i] ?? 0)) / moveM;
  }
  const steps = inverted(miss, n);
  if (steps === undefined) return undefined;
  const isFirm = steps.every((step, i) => Math.abs(step - (i % (n + 1) === 0 ? 1 : 0)) <= MOST_ANSWER);
  return isFirm ? { steps, depths } : undefined;
}

function isWithin(vector: Float64Array, most: number): boolean {
  return vector.every((entry) => Math.abs(entry) <= most);
}

function isPulledAlike(one: Downrigger, other: Downrigger): boolean {
  return one.rods.every((rod, i) => rod.rodLine?.tipTensionN === other.rods[i]?.rodLine?.tipTensionN);
}

/** The depths of the ball, the probe (0 without one), then each rod's release and lure, with what is left of each added. */
function depthsIn({ rig, cable, climbed, lures }: HangingRig, left?: Float64Array): number[] {
  const hasProbe = rig.probeAboveBallM !== undefined && cable.probeNode > 0;
  const depths = [climbed.zM[cable.segments.length] ?? 0, hasProbe ? (climbed.zM[cable.probeNode] ?? 0) : 0];
  for (let i = 0; i < rig.rods.length; i++) {
    const releaseM = climbed.zM[cable.releaseNodes[i] ?? 0] ?? 0;
    depths.push(releaseM, releaseM + (lures[i]?.depthM ?? 0));
  }
  return left === undefined || left.length === 0 ? depths : depths.map((depthM, i) => depthM + at(left, i));
}

/** A matrix by rows, with a column for each entry of a vector, times that. */
function product(matrix: Float64Array, vector: Float64Array): Float64Array {
  const n = vector.length;
  const rows = n === 0 ? 0 : matrix.length / n;
  const sums = new Float64Array(rows);
  for (let i = 0; i < rows; i++)
    for (let j = 0; j < n; j++) sums[i] = at(sums, i) + at(matrix, i * n + j) * at(vector, j);
  return sums;
}

function at(values: Float64Array, index: number): number {
  return values[index] ?? Number.NaN;
}

/** Where a point lies that was moved as far the other way. */
export function mirrored(middle: Float64Array, point: Float64Array): Float64Array {
  return middle.map((m, i) => 2 * m - at(point, i));
}
