import type { Downrigger, RodOnCable, SolvedDownrigger } from "./downrigger.ts";
import { downriggerAnswer } from "./downrigger-answer.ts";
import { buildCable, type Cable, cableOutM, cableWith } from "./downrigger-cable.ts";
import { isSameFlow, speedAtDepthMS, uniformFlow } from "./flow-profile.ts";
import { solveLureLineIn, solveLureLineNear } from "./lure.ts";
import { type Refusal, refuse } from "./refusal.ts";
import type { Pull } from "./rod-line.ts";
import { rodPullIn } from "./rod-line-shear.ts";
import { type Settled, settle } from "./settle.ts";
import { type Firmness, firmness, solveFromEnd } from "./sheared-line.ts";
import { SOLVER_TOLERANCE, type SolvedLine, solveChecked, type TowPoint } from "./towed-line.ts";
import { type Water, waterAt } from "./water.ts";

/** A solved downrigger with what a neighbouring one can start from. */
export interface SettledDownrigger {
  readonly ok: true;
  readonly answer: SolvedDownrigger;
  readonly rig: Downrigger;
  readonly lures: readonly SolvedLine[];
  readonly settled: Settled;
}

/** How exactly to solve: each step of a line, and the releases' places as a share of the cable out. */
export interface Exactness {
  readonly tolerance: number;
  readonly share: number;
}

const EXACT: Exactness = { tolerance: SOLVER_TOLERANCE, share: 1e-7 };

/** How often the lures are hung anew on releases whose depth, and so whose speed, has moved. */
const MOST_HANGINGS = 6;

/** A release so near, as a share of the cable, to where its lure was hung for leaves the lure as it is. */
const NEAR_SHARE = 1e-4;

/** Before the lures hang at their depths nothing need be exact. */
const FIRST: Exactness = { tolerance: 1e-5, share: 1e-4 };

/**
 * Solves a rig that has been checked, from a solved neighbour when there is one: the lures it has in common
 * are taken over, and its rods' pulls are where the settling starts. A release above the water counts as at the
 * surface here, so that a band's short side still has an answer. In a sheared stream the lures' pulls follow
 * their releases' depths: cable and lures are solved in turn until both agree. Where a neighbour gives the start the
 * lures stay hung at its depths: by a release some feet higher a lure's own drop changes by a hundredth.
 */
export function solveSettled(
  rig: Downrigger,
  neighbour?: SettledDownrigger,
  exactness: Exactness = EXACT,
): SettledDownrigger | Refusal {
  const water = waterAt(rig.waterTemperatureC, rig.salinityPsu);
  if (!water.ok) return water;
  let lures = firstLures(rig, water, neighbour, exactness);
  if (!lures.ok) return lures;
  let start = neighbour?.settled;
  const isSheared = rig.flow.type !== "uniform";
  const closeM = Math.max(1000 * exactness.share, NEAR_SHARE) * Math.max(1, cableOutM(rig));
  for (let hanging = 1; ; hanging++) {
    const cable = buildCable(rig, lures.lines, water);
    const isFirst = isSheared && neighbour === undefined && hanging === 1 && rig.rods.length > 0;
    const exact = isFirst ? FIRST : exactness;
    const settled = settlePulls(rig, cable, water, start, exact, neighbour === undefined && !isFirst);
    if (!settled.ok) return settled;
    start = settled.settled;
    let isHung = true;
    if (isSheared && neighbour === undefined) {
      const hung = lures.depthsM;
      const depthsM = cable.releaseNodes.map((node) => settled.line.nodes[node]?.zM ?? 0);
      isHung = depthsM.every((depthM, i) => Math.abs(depthM - (hung[i] ?? 0)) <= closeM);
      isHung &&= !isFirst;
      if (!isHung) lures = luresAt(rig, depthsM, water, exactness.tolerance, lures.lines);
      if (!lures.ok) return lures;
    }
    if (!isHung && hanging < MOST_HANGINGS) continue;
    const answer = downriggerAnswer(rig, cable, settled.line, lures.lines, settled);
    return { ok: true, answer, rig, lures: lures.lines, settled: settled.settled };
  }
}

/** Lure lines, counted from their releases, and the depths of the releases they were solved for. */
interface Lures {
  readonly ok: true;
  readonly lines: readonly SolvedLine[];
  readonly depthsM: readonly number[];
}

function firstLures(
  rig: Downrigger,
  water: Water,
  neighbour: SettledDownrigger | undefined,
  exactness: Exactness,
): Lures | Refusal {
  const lines: SolvedLine[] = [];
  const depthsM = rig.rods.map(
    (rod, i) =>
      neighbour?.answer.rods[i]?.release.depthM ?? 0.9 * Math.max(0, cableOutM(rig) - rod.releaseAboveBallM),
  );
  const { tolerance } = exactness;
  for (const [i, rod] of rig.rods.entries()) {
    const near = neighbour?.lures[i];
    const at = depthsM[i] ?? 0;
    const lure =
      lureInCommon(rig, rod, i, neighbour) ??
      (near === undefined
        ? solveLureLineIn(rod, rig.flow, at, water, tolerance)
        : solveLureLineNear(rod, rig.flow, at, water, tolerance, near.depthM));
    if (!lure.ok) return lure;
    lines.push(lure);
  }
  return { ok: true, lines, depthsM };
}

function luresAt(
  rig: Downrigger,
  depthsM: readonly number[],
  water: Water,
  tolerance: number,
  before: readonly SolvedLine[],
): Lures | Refusal {
  const lines: SolvedLine[] = [];
  for (const [i, rod] of rig.rods.entries()) {
    const dropM = before[i]?.depthM ?? 0;
    const lure = solveLureLineNear(rod, rig.flow, depthsM[i] ?? 0, water, tolerance, dropM);
    if (!lure.ok) return lure;
    lines.push(lure);
  }
  return { ok: true, lines, depthsM };
}

/** The neighbour's solution for a lure line that hangs in the same water at the same speed. */
function lureInCommon(
  rig: Downrigger,
  rod: RodOnCable,
  index: number,
  neighbour: SettledDownrigger | undefined,
): SolvedLine | undefined {
  const other = neighbour?.rig;
  const same = other?.rods[index];
  if (other === undefined || same === undefined) return undefined;
  const sameWater =
    isSameFlow(other.flow, rig.flow) &&
    other.waterTemperatureC === rig.waterTemperatureC &&
    other.salinityPsu === rig.salinityPsu;
  const sameLine = same.lureLine === rod.lureLine && same.lure === rod.lure && same.setbackM === rod.setbackM;
  return sameWater && sameLine ? neighbour?.lures[index] : undefined;
}

interface SettledCable extends Partial<Firmness> {
  readonly ok: true;
  readonly line: SolvedLine;
  readonly settled: Settled;
}

/**
 * Solves the cable, going round until the releases are where the rods' pulls, which depend on it, put them; in a
 * sheared stream until the ball, too, is at the depth that the cable was climbed from. `isFirst` has the answer
 * looked at for other steady shapes, of which the deepest is taken.
 */
function settlePulls(
  rig: Downrigger,
  cable: Cable,
  water: Water,
  neighbour: Settled | undefined,
  exactness: Exactness,
  isFirst: boolean,
): SettledCable | Refusal {
  const { flow } = rig;
  const isSheared = flow.type !== "uniform";
  const pulls: Pull[] = rig.rods.map(() => ({ forceXN: 0, forceZN: 0 }));
  const pulling = rig.rods.some((rod) => (rod.rodLine?.tipTensionN ?? 0) > 0);
  const places = pulling ? 2 * rig.rods.length : 0;
  const entries = places + (isSheared ? 1 : 0);
  const { tolerance } = exactness;
  let last: SolvedLine | Refusal = refuse("the cable was never solved");
  const solvedLast = (): SolvedLine | Refusal => last;
  const solveInto = (out: Float64Array, endZM: number | undefined): boolean => {
    const line = cableWith(cable, pulls);
    last =
      endZM === undefined
        ? solveChecked(line, water, isSheared ? roughFlow(rig, cable) : flow, SURFACE, tolerance)
        : solveFromEnd(line, water, flow, SURFACE, endZM, tolerance);
    if (last.ok) readPlaces(cable, last, places, out);
    return last.ok;
  };
  const start = neighbour?.point.length === entries ? neighbour : { point: new Float64Array(entries) };
  if (start !== neighbour && entries > 0 && !solveInto(start.point, undefined)) return last;
  const scaleM = Math.max(cable.lengthM, 1);
  const from = (point: Float64Array, to: Float64Array): boolean => {
    pullAll(pulls, rig, point, water);
    return solveInto(to, isSheared ? point[places] : undefined);
  };
  const settled = settle(from, start, exactness.share * scaleM, 0.5 * scaleM);
  if (!last.ok) return last;
  if (!settled.reached) return refuse("the pull of the rods could not be settled");
  if (!isSheared || !isFirst) return { ok: true, line: last, settled };
  const { depthM } = last;
  const { conditioning, otherEndsZM } = firmness(cableWith(cable, pulls), water, flow, SURFACE, depthM);
  const deeperM = otherEndsZM.findLast((endZM) => endZM > depthM);
  const firm = { conditioning, otherEndsZM: deeperM === undefined ? otherEndsZM : [] };
  const here: SettledCable = { ok: true, line: last, settled, ...firm };
  if (deeperM === undefined) return here;
  // The pulls are those of the shape found, so the deeper one is settled anew before it is judged.
  const point = settled.point.slice();
  if (!solveInto(point, deeperM)) return here;
  const again = settle(from, { point }, exactness.share * scaleM, 0.5 * scaleM);
  const line = solvedLast();
  if (!again.reached || !line.ok || line.depthM < depthM) return here;
  const anew = firmness(cableWith(cable, pulls), water, flow, SURFACE, line.depthM);
  return { ok: true, line, settled: again, ...anew };
}

const SURFACE: TowPoint = { xM: 0, zM: 0 };

/** The speed half-way down the cable, at every depth: to start from. */
function roughFlow(rig: Downrigger, cable: Cable) {
  return uniformFlow(speedAtDepthMS(rig.flow, 0.5 * cable.lengthM));
}

/** Works out each rod's pull with the releases at the places given, x and z in turn. */
function pullAll(pulls: readonly Pull[], rig: Downrigger, places: Float64Array, water: Water): void {
  if (places.length < 2 * rig.rods.length) return;
  for (const [i, rod] of rig.rods.entries()) {
    const pull = pulls[i];
    if (pull === undefined || rod.rodLine === undefined) continue;
    const depthM = Math.max(0, places[2 * i + 1] ?? 0);
    rodPullIn(pull, rod.rodLine, places[2 * i] ?? 0, depthM, rig.flow, water);
  }
}

/** Writes each release's place astern and depth, in turn, then the ball's depth where it is sought too. */
function readPlaces(cable: Cable, line: SolvedLine, places: number, out: Float64Array): void {
  for (let i = 0; 2 * i < places; i++) {
    const node = line.nodes[cable.releaseNodes[i] ?? 0];
    out[2 * i] = node?.xM ?? 0;
    out[2 * i + 1] = node?.zM ?? 0;
  }
  if (out.length > places) out[places] = line.depthM;
}
