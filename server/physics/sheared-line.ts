import type { LineState } from "./climb-line.ts";
import { climbNodes, startAt } from "./climb-nodes.ts";
import { findRoot, type Miss, type Root } from "./find-root.ts";
import { type FlowProfile, speedAtDepthMS, uniformFlow } from "./flow-profile.ts";
import { type Refusal, refuse } from "./refusal.ts";
import { bracketRoots, layersOf, scanDepths } from "./shear-scan.ts";
import { type DropRange, hasStrongLayer, mostChangeM, speedRange, strongLayers } from "./shear-strength.ts";
import {
  movedLine,
  placeAtTop,
  type SolvedLine,
  type SolvedNode,
  solveChecked,
  type TowedLine,
  type TowPoint,
  totalLengthM,
} from "./towed-line.ts";
import type { Water } from "./water.ts";

/** How exactly shots far from the answer, and those that only look for it, are solved. */
const ROUGH_TOLERANCE = 1e-5;

/** A line in a stream that changes with depth, and the state that every shot at it reuses. */
interface Shots {
  readonly line: TowedLine;
  readonly water: Water;
  readonly flow: FlowProfile;
  readonly top: TowPoint;
  readonly lengthM: number;
  readonly tolerance: number;
  readonly state: LineState;
  /** Why the last shot had no answer. */
  why: string;
  /** The depth of the lower end in the last exact shot, and its nodes, so that what a search ends with is its answer. */
  shotZM: number;
  nodes: readonly SolvedNode[];
}

/**
 * A line in a speed that changes with depth. Forces then depend on the depth of the lower end, the one unknown:
 * the line is climbed from a tried depth, and g = where its top comes out minus where it should be. Since no line
 * drops more than its length, g has a zero within one length of the top. Where a layer is thin and strong there
 * may be several: g is scanned across it, every zero is solved, and the deepest is answered with the others
 * beside it. The numbers must have been checked.
 */
export function solveSheared(
  line: TowedLine,
  water: Water,
  flow: FlowProfile,
  top: TowPoint,
  tolerance: number,
): SolvedLine | Refusal {
  const shots = shotsAt(line, water, flow, top, tolerance);
  const { lengthM } = shots;
  if (lengthM === 0) return recorded(shots, { at: top.zM, slope: 1 });
  const roots = equilibria(shots);
  if (roots.length === 0) return refuse(shots.why || "no steady shape was found in this profile");
  const solved: SolvedLine[] = [];
  for (const root of roots) {
    const one = recorded(shots, root);
    if (!one.ok) return one;
    solved.push(one);
  }
  const deepest = solved.pop();
  if (deepest === undefined) return refuse("no steady shape was found in this profile");
  return solved.length === 0 ? deepest : { ...deepest, alternatives: solved };
}

/** Climbs toward a shape beside a neighbour's; two do as a rule. */
const MOST_CLIMBS = 5;

/**
 * The shape of a line near a depth of its lower end that a neighbouring problem had, without a look for others: climbed
 * from there, then from where that says the lower end should be. Moved to its top such a climb is nearer than it was
 * started, by as much as its miss stands for its place.
 */
export function solveShearedNear(
  line: TowedLine,
  water: Water,
  flow: FlowProfile,
  top: TowPoint,
  endZM: number,
  tolerance: number,
): SolvedLine | Refusal {
  const shots = shotsAt(line, water, flow, top, tolerance);
  const { lengthM, state } = shots;
  let [at, slope, before, beforeM] = [endZM, 1, Number.NaN, Number.NaN];
  for (let count = 0; count < MOST_CLIMBS; count++) {
    const placed = climbed(shots, at);
    if (!placed.ok) break;
    const missM = state.zM - top.zM;
    if (at !== before && count > 0) slope = (missM - beforeM) / (at - before);
    const leftM = count === 0 ? missM : missM * (1 - slope);
    if (Math.abs(leftM) <= tolerance * lengthM) return placed;
    [before, beforeM] = [at, missM];
    at -= missM / slope;
    if (!(Math.abs(at - top.zM) <= lengthM)) break;
  }
  return solveSheared(line, water, flow, top, tolerance);
}

/** How firm a shape in a sheared stream is. */
export interface Firmness {
  readonly conditioning: number;
  /** Depths of the lower end in the other steady shapes, m, shallowest first. */
  readonly otherEndsZM: readonly number[];
}

/**
 * How firm a shape already found is, from its lower end's depth and what its top then missed its place by, m: the
 * conditioning, and the depths of the lower end in the other shapes where some layer is strong enough for several.
 * Rough climbs do for both.
 */
export function firmness(
  line: TowedLine,
  water: Water,
  flow: FlowProfile,
  top: TowPoint,
  endZM: number,
  missM: number,
): Firmness {
  const shots = shotsAt(line, water, flow, top, ROUGH_TOLERANCE);
  const { lengthM } = shots;
  const stepM = SLOPE_STEP_SHARE * lengthM;
  const ahead = shoot(shots, endZM + stepM, ROUGH_TOLERANCE);
  const slope = ahead === undefined || stepM === 0 ? 1 : (ahead - missM) / stepM;
  const conditioning = 1 / Math.max(Math.abs(slope), 1e-9);
  if (!hasStrongLayer(flow, mostChangeM(flow, lengthM, endZM - top.zM)))
    return { conditioning, otherEndsZM: [] };
  if (!hasSeveral(shots)) return { conditioning, otherEndsZM: [] };
  const ends = equilibria(shots).map((root) => root.at);
  return { conditioning, otherEndsZM: ends.filter((at) => Math.abs(at - endZM) > 1e-4 * lengthM) };
}

/** Whether some layer of a stream is so strong for a line that it could have several steady shapes. */
export function mayHangOtherwise(line: TowedLine, water: Water, flow: FlowProfile): boolean {
  return hasSeveral(shotsAt(line, water, flow, ORIGIN, ROUGH_TOLERANCE));
}

function hasSeveral(shots: Shots): boolean {
  if (!hasStrongLayer(shots.flow, 2 * shots.lengthM)) return false;
  return strongLayers(shots.flow, dropRange(shots)).length > 0;
}

function shotsAt(line: TowedLine, water: Water, flow: FlowProfile, top: TowPoint, tolerance: number): Shots {
  const lengthM = totalLengthM(line.segments);
  const state = { xM: 0, zM: 0, forceXN: 0, forceZN: 0, leastZM: 0 };
  return { line, water, flow, top, lengthM, tolerance, state, why: "", shotZM: Number.NaN, nodes: [] };
}

/** Step for a slope between rough climbs, as a share of the line: their error is a thousandth of it. */
const SLOPE_STEP_SHARE = 2e-3;

/**
 * The line climbed once from a depth of its lower end, then moved so that its top fits: the answer when the depth
 * it ends up at is the one it was climbed from. For a caller that settles the depth along with its own unknowns.
 */
export function solveFromEnd(
  line: TowedLine,
  water: Water,
  flow: FlowProfile,
  top: TowPoint,
  endZM: number,
  tolerance: number,
): SolvedLine | Refusal {
  return climbed(shotsAt(line, water, flow, top, tolerance), endZM);
}

/** How far the top comes out below its place when the lower end is at a depth; `undefined` without an answer. */
function shoot(shots: Shots, endZM: number, tolerance: number): number | undefined {
  const { line, water, flow, top, state } = shots;
  // A line with branches is climbed anew for its answer, which needs theirs.
  const nodes: SolvedNode[] | undefined =
    tolerance === shots.tolerance && line.branches === undefined ? [] : undefined;
  startAt(state, endZM);
  const why = climbNodes(state, line, water, flow, tolerance, nodes, (index, zM) =>
    branchAt(shots, index, zM, tolerance),
  );
  shots.shotZM = nodes === undefined || why !== undefined ? Number.NaN : endZM;
  shots.nodes = nodes ?? [];
  if (why === undefined) return state.zM - top.zM;
  shots.why = why;
  return undefined;
}

function branchAt(shots: Shots, index: number, zM: number, tolerance: number): SolvedLine | Refusal {
  const { line, water, flow, state } = shots;
  const branch = line.branches?.[index];
  if (branch === undefined) return refuse("there is no such branch");
  return solveChecked(branch.line, water, flow, { xM: state.xM, zM }, tolerance);
}

/** The whole answer for one depth of the lower end: the last climb, with its nodes kept, where that was there. */
function recorded(shots: Shots, root: Root): SolvedLine | Refusal {
  const { line, state, top } = shots;
  const placed =
    shots.shotZM === root.at ? placeAtTop(line, state, shots.nodes, [], top) : climbed(shots, root.at);
  return placed.ok ? { ...placed, conditioning: 1 / Math.max(Math.abs(root.slope), 1e-9) } : placed;
}

function climbed(shots: Shots, endZM: number): SolvedLine | Refusal {
  const { line, water, flow, top, tolerance, state } = shots;
  const nodes: SolvedNode[] = [];
  const branches: SolvedLine[] = [];
  shots.shotZM = Number.NaN;
  startAt(state, endZM);
  const why = climbNodes(state, line, water, flow, tolerance, nodes, (index, zM) => {
    const branch = branchAt(shots, index, zM, tolerance);
    if (branch.ok) branches[index] = branch;
    return branch;
  });
  if (why !== undefined) return refuse(why);
  // A branch on the top pulls on nothing below it, so the climb has not asked for it.
  for (const [index, branch] of (line.branches ?? []).entries()) {
    if (branch.node !== 0) continue;
    const solved = branchAt(shots, index, state.zM, tolerance);
    if (!solved.ok) return solved;
    branches[index] = solved;
  }
  const atOrigin = branches.map((branch, index) => {
    const node = nodes[line.segments.length - (line.branches?.[index]?.node ?? 0)];
    return node === undefined ? branch : movedLine(branch, -node.xM, -node.zM);
  });
  return placeAtTop(line, state, nodes, atOrigin, top);
}

/** All depths of the lower end at which the top is where it should be, shallowest first. */
function equilibria(shots: Shots): Root[] {
  const { flow, top, lengthM } = shots;
  const [lowM, highM] = [top.zM - lengthM, top.zM + lengthM];
  const within = withinM(shots);
  const miss = missOf(shots);
  const drops = dropRange(shots);
  const strong = strongLayers(flow, drops);
  if (strong.length === 0) {
    const start = startM(shots, drops);
    const root = findRoot(miss, start, lowM, highM, lengthM, within, 1, shots.tolerance < ROUGH_TOLERANCE);
    if (root !== undefined) return [root];
  }
  const depths = scanDepths(strong.length === 0 ? layersOf(flow) : strong, lowM, highM);
  const roots: Root[] = [];
  for (const [from, to, isRising, guess] of bracketRoots(depths, (at) => miss(at, true), lowM, highM)) {
    const signed: Miss = isRising ? miss : (at, isRough) => negated(miss(at, isRough));
    const root = findRoot(signed, guess, from, to, lengthM, within, 1);
    if (root !== undefined) roots.push(isRising ? root : { at: root.at, slope: -root.slope });
  }
  return roots;
}

function missOf(shots: Shots): Miss {
  const { tolerance } = shots;
  return (at, isRough) => shoot(shots, at, isRough ? Math.max(tolerance, ROUGH_TOLERANCE) : tolerance);
}

/** How near the top must come to its place, m. */
function withinM({ tolerance, lengthM }: Shots): number {
  return Math.max(0.1 * tolerance, 1e-10) * lengthM;
}

function negated(value: number | undefined): number | undefined {
  return value === undefined ? undefined : -value;
}

function dropRange(shots: Shots): DropRange {
  const { slowMS, fastMS } = speedRange(shots.flow);
  return { slowMS, fastMS, slowM: uniformDropM(shots, slowMS), fastM: uniformDropM(shots, fastMS) };
}

function uniformDropM(shots: Shots, speedMS: number): number | undefined {
  const { line, water, state } = shots;
  const flow = uniformFlow(speedMS);
  shots.shotZM = Number.NaN;
  startAt(state, 0);
  const why = climbNodes(state, line, water, flow, 1e-4, undefined, (index) => {
    const branch = line.branches?.[index];
    return branch === undefined ? undefined : solveChecked(branch.line, water, flow, ORIGIN, 1e-4);
  });
  return why === undefined ? -state.zM : undefined;
}

const ORIGIN: TowPoint = { xM: 0, zM: 0 };

/** A first depth: the drop between those of the extreme speeds, by the speed half-way down. */
function startM({ flow, top, lengthM }: Shots, drops: DropRange): number {
  const { slowM = 0.8 * lengthM, fastM = 0.8 * lengthM, slowMS, fastMS } = drops;
  const speedMS = speedAtDepthMS(flow, top.zM + 0.25 * (slowM + fastM));
  const share = fastMS > slowMS ? (speedMS - slowMS) / (fastMS - slowMS) : 0;
  return top.zM + slowM + share * (fastM - slowM);
}
