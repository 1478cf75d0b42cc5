import { checkTowedLine, LINE_LIMITS } from "./check-towed-line.ts";
import { climbLineTo, type LineState } from "./climb-line.ts";
import { type BranchAt, climbNodes } from "./climb-nodes.ts";
import { SOLVER_TOLERANCE } from "./exactness.ts";
import { findRoot } from "./find-root.ts";
import { type FlowProfile, speedAtDepthMS } from "./flow-profile.ts";
import { climbFreeEnd, FREE_START_SHARE, startsFree } from "./free-end.ts";
import { type Refusal, refuse, whyNotInRange } from "./refusal.ts";
import {
  type LineSegment,
  type SolvedLine,
  type SolvedNode,
  solveChecked,
  type TowedLine,
  type TowPoint,
  totalLengthM,
} from "./towed-line.ts";
import type { Water } from "./water.ts";

/** The depth wanted, and the node that is to be there: 1 is the lower end of the top segment, the last the end. */
interface DepthTarget {
  readonly node: number;
  readonly depthM: number;
}

/** How much of the top segment to let out. */
export interface LineOut {
  readonly ok: true;
  /** Length of the top segment, m; the other segments are as stated. */
  readonly lengthM: number;
  /** The nodes from the lower end up to node 1, counted in the same frame as the line's top. */
  readonly nodesFromEnd: readonly SolvedNode[];
}

/** Why there is no such length, with the deepest that can be had where the target is out of reach. */
export interface OutOfReach extends Refusal {
  readonly deepestM?: number;
}

/**
 * How much of the top segment to let out so that a node comes to a depth. Climbed from the lower end until the top's
 * depth is reached: one climb where the lower end is the target, in shear too, since every depth is known on the
 * way. The length stated for the top segment is not looked at; `mostM` bounds it.
 */
export function lineOutForDepth(
  line: TowedLine,
  water: Water,
  flow: FlowProfile,
  target: DepthTarget,
  top: TowPoint = { xM: 0, zM: 0 },
  mostM: number = LINE_LIMITS.lengthM,
  tolerance = SOLVER_TOLERANCE,
): LineOut | OutOfReach {
  const nodes = line.segments.length;
  const why =
    checkTowedLine(line, water, flow, top) ??
    whyNotInRange("the depth to reach", target.depthM, 0, 1e4, "m") ??
    whyNotInRange("the most line to let out", mostM, 0, LINE_LIMITS.lengthM, "m") ??
    (Number.isInteger(target.node) && target.node >= 1 && target.node <= nodes
      ? undefined
      : `the place to bring to a depth is at node ${target.node}, and the line has nodes 1 to ${nodes}`);
  if (why !== undefined) return refuse(why);
  return lineOutChecked(line, water, flow, target, top, mostM, tolerance);
}

/** The same for what has been checked already. */
export function lineOutChecked(
  line: TowedLine,
  water: Water,
  flow: FlowProfile,
  target: DepthTarget,
  top: TowPoint,
  mostM: number,
  tolerance: number,
): LineOut | OutOfReach {
  const first = line.segments[0];
  if (first === undefined) return refuse("the line has no segment");
  const branchAt: BranchAt = (index, zM) => {
    const branch = line.branches?.[index];
    return branch && solveChecked(branch.line, water, flow, { xM: 0, zM }, tolerance);
  };
  const state: LineState = { xM: 0, zM: 0, forceXN: 0, forceZN: 0, leastZM: 0 };
  // The steps below are bounded against the length of line in the water, of which this is the least.
  const lower = { ...line, segments: [{ ...first, lengthM: 0 }, ...line.segments.slice(1)] };
  const lowerM = totalLengthM(lower.segments);
  const scaleM = Math.max(lowerM + Math.max(0, target.depthM - top.zM), 1e-3);
  const endZM = endDepthM(lower, water, flow, target, tolerance, branchAt, state);
  if (typeof endZM === "string") return refuse(endZM);
  const nodes: SolvedNode[] = [];
  start(state, endZM);
  const why = climbNodes(state, lower, water, flow, tolerance, nodes, branchAt, 1);
  if (why !== undefined) return refuse(why);
  if (state.zM < top.zM - 1e-9 * scaleM || state.leastZM < top.zM - 1e-9 * scaleM)
    return refuse("what hangs below the top stretch of line goes deeper than that by itself");
  const lengthM = state.zM <= top.zM ? 0 : climbTop(state, first, mostM, water, flow, scaleM, tolerance, top);
  if (typeof lengthM === "string") return refuse(lengthM);
  if (lengthM === undefined)
    return outOfReach(line, first, water, flow, target, top, mostM, tolerance, state);
  const shiftXM = top.xM - state.xM;
  const nodesFromEnd = nodes.map((node) => ({
    ...node,
    alongM: node.alongM + lengthM,
    xM: node.xM + shiftXM,
  }));
  return { ok: true, lengthM, nodesFromEnd };
}

function start(state: LineState, endZM: number): void {
  state.xM = 0;
  state.zM = endZM;
  state.forceXN = 0;
  state.forceZN = 0;
  state.leastZM = endZM;
}

/** The depth of the lower end with the target at its depth, or why there is none. */
function endDepthM(
  line: TowedLine,
  water: Water,
  flow: FlowProfile,
  { node, depthM }: DepthTarget,
  tolerance: number,
  branchAt: BranchAt,
  state: LineState,
): number | string {
  if (node === line.segments.length) return depthM;
  let why: string | undefined;
  const missAt = (endZM: number, within: number): number | undefined => {
    start(state, endZM);
    why = climbNodes(state, line, water, flow, within, undefined, branchAt, node);
    return why === undefined ? state.zM - depthM : undefined;
  };
  if (flow.type === "uniform") {
    const miss = missAt(depthM, tolerance);
    return miss === undefined ? (why ?? "") : depthM - miss;
  }
  const belowM = totalLengthM(line.segments.slice(node));
  if (belowM === 0) return depthM;
  const root = findRoot(
    (endZM, isRough) => missAt(endZM, isRough ? Math.max(tolerance, 1e-5) : tolerance),
    depthM + 0.95 * belowM,
    depthM - belowM,
    depthM + belowM,
    belowM,
    Math.max(0.1 * tolerance, 1e-10) * belowM,
  );
  return root?.at ?? why ?? "the line's lower part could not be settled";
}

/** Climbs the top segment up to the top's depth; answers its length, `undefined` out of reach, or why it cannot. */
function climbTop(
  state: LineState,
  segment: LineSegment,
  mostM: number,
  water: Water,
  flow: FlowProfile,
  scaleM: number,
  tolerance: number,
  top: TowPoint,
): number | undefined | string {
  const speedMS = speedAtDepthMS(flow, state.zM);
  let freeM = 0;
  if (startsFree(state, segment, scaleM, water, speedMS)) {
    freeM = Math.min(mostM, FREE_START_SHARE * (state.zM - top.zM));
    if (freeM === 0) return undefined;
    const why = climbFreeEnd(state, segment, freeM, water, speedMS);
    if (why !== undefined) return why;
  }
  const restM = climbLineTo(top.zM, state, segment, mostM - freeM, water, flow, scaleM, tolerance);
  return typeof restM === "number" ? restM + freeM : restM;
}

/** In a uniform stream the climb itself has shown how far up it comes; else the line is solved at its longest. */
function outOfReach(
  line: TowedLine,
  first: LineSegment,
  water: Water,
  flow: FlowProfile,
  target: DepthTarget,
  top: TowPoint,
  mostM: number,
  tolerance: number,
  state: LineState,
): OutOfReach {
  const why = "not reachable at this speed";
  if (flow.type === "uniform") {
    const deepestM = target.depthM - (state.leastZM - top.zM);
    return { ...refuse(`${why}: the deepest with ${mostM} m out is ${deepestM.toFixed(1)} m`), deepestM };
  }
  const longest = { ...line, segments: [{ ...first, lengthM: mostM }, ...line.segments.slice(1)] };
  const solved: SolvedLine | Refusal = solveChecked(longest, water, flow, top, tolerance);
  const deepestM = solved.ok ? solved.nodes[target.node]?.zM : undefined;
  if (deepestM === undefined) return refuse(why);
  return { ...refuse(`${why}: the deepest with ${mostM} m out is ${deepestM.toFixed(1)} m`), deepestM };
}
