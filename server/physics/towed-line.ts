import { checkTowedLine } from "./check-towed-line.ts";
import type { LineProperties, LineState } from "./climb-line.ts";
import { angleDeg, climbNodes, tensionOf } from "./climb-nodes.ts";
import { SOLVER_TOLERANCE } from "./exactness.ts";
import type { FlowProfile } from "./flow-profile.ts";
import { type Refusal, refuse } from "./refusal.ts";
import { solveSheared } from "./sheared-line.ts";
import type { Water } from "./water.ts";

/** A stretch of one kind of line. */
export interface LineSegment extends LineProperties {
  /** Length, m; zero or more. */
  readonly lengthM: number;
}

/** Something small fixed to the line: a ball, a weight, a diver, a lure, a pull from outside. */
export interface PointBody {
  /** The node it hangs on: 1 is the lower end of the first segment from the top. */
  readonly node: number;
  /** Weight in the water plus any steady downward pull, N; negative lifts. */
  readonly weightN: number;
  /** Drag area, m2: drag coefficient times frontal area. */
  readonly dragAreaM2: number;
  /** Area of the downward lift of a diver or plug, m2; negative lifts up. */
  readonly liftAreaM2: number;
  /** A steady pull astern that does not depend on speed, N. */
  readonly forceXN: number;
  /** A sphere adds its own drag, which depends on the Reynolds number. */
  readonly sphere?: { readonly diameterM: number; readonly multiplier: number };
}

/** A second line clipped to a node of the first: a lure line on its release. */
interface LineBranch {
  readonly node: number;
  readonly line: TowedLine;
}

/** A line from its top down: segments, bodies at their lower ends, branches clipped to them. */
export interface TowedLine {
  readonly segments: readonly LineSegment[];
  readonly bodies: readonly PointBody[];
  readonly branches?: readonly LineBranch[];
}

/** Where a line starts: m astern of the frame's origin, m below the surface. */
export interface TowPoint {
  readonly xM: number;
  readonly zM: number;
}

/** One node of a solved line. */
export interface SolvedNode {
  /** Metres of line from the top. */
  readonly alongM: number;
  readonly xM: number;
  readonly zM: number;
  /** Tension just above the node, N; at the top it is zero, for want of a line above. */
  readonly tensionAboveN: number;
  /** Tension just below the node, N; zero at the lower end. */
  readonly tensionBelowN: number;
  /** How the line runs just above the node, degrees from the vertical, positive astern; null where nothing pulls on it. */
  readonly angleAboveDeg: number | null;
}

/** A solved line. Angles are from the vertical, positive astern. */
export interface SolvedLine {
  readonly ok: true;
  /** Depth of the lower end, m. */
  readonly depthM: number;
  /** Distance of the lower end astern of the line's own top, m. */
  readonly behindM: number;
  readonly topTensionN: number;
  readonly topAngleDeg: number;
  /** The pull of the whole line on its top, N: astern and down. */
  readonly topForceXN: number;
  readonly topForceZN: number;
  /** The least depth that the line reaches anywhere, m; below zero it would be out of the water. */
  readonly leastDepthM: number;
  readonly nodes: readonly SolvedNode[];
  /** In the order of `branches`, in the same frame. */
  readonly branches: readonly SolvedLine[];
  /**
   * How many times over an error of the model shows in the depth, in a speed that changes with depth: 1 / |dg/dz|,
   * where g is how far the top misses its place when the lower end is held at z. Above about 3 the depth is shaky.
   */
  readonly conditioning?: number;
  /** The other steady shapes of the same line, shallowest first, where there are several; this one is the deepest. */
  readonly alternatives?: readonly SolvedLine[];
}

/**
 * The steady shape of a line towed in one plane, with its tensions. Refuses, with a plain reason, anything that
 * is not a finite number, is out of range, or has no answer (a slack line). Of several steady shapes in a sheared
 * stream the deepest is answered, with the others as `alternatives`. Whether the line rises above the water is left to the caller: `leastDepthM` tells.
 */
export function solveTowedLine(
  line: TowedLine,
  water: Water,
  flow: FlowProfile,
  top: TowPoint = { xM: 0, zM: 0 },
  tolerance = SOLVER_TOLERANCE,
): SolvedLine | Refusal {
  const why = checkTowedLine(line, water, flow, top);
  if (why !== undefined) return refuse(why);
  return solveChecked(line, water, flow, top, tolerance);
}

/** The same for a line that has been checked already; used again and again while a pull is being settled. */
export function solveChecked(
  line: TowedLine,
  water: Water,
  flow: FlowProfile,
  top: TowPoint,
  tolerance: number,
): SolvedLine | Refusal {
  return flow.type === "uniform"
    ? solveUniform(line, water, flow, top, tolerance)
    : solveSheared(line, water, flow, top, tolerance);
}

/** In a uniform speed forces do not depend on depth: one climb from anywhere, moved so that the top fits. */
function solveUniform(
  line: TowedLine,
  water: Water,
  flow: FlowProfile,
  top: TowPoint,
  tolerance: number,
): SolvedLine | Refusal {
  const branches: SolvedLine[] = [];
  for (const branch of line.branches ?? []) {
    const solved = solveChecked(branch.line, water, flow, ORIGIN, tolerance);
    if (!solved.ok) return solved;
    branches.push(solved);
  }
  const state: LineState = { xM: 0, zM: 0, forceXN: 0, forceZN: 0, leastZM: 0 };
  const nodes: SolvedNode[] = [];
  const why = climbNodes(state, line, water, flow, tolerance, nodes, (index) => branches[index]);
  return why === undefined ? placeAtTop(line, state, nodes, branches, top) : refuse(why);
}

const ORIGIN: TowPoint = { xM: 0, zM: 0 };

/** Total length of some segments, m. */
export function totalLengthM(segments: readonly LineSegment[]): number {
  let sum = 0;
  for (const segment of segments) sum += segment.lengthM;
  return sum;
}

/** The line as solved, from a climb that began at its lower end, moved so that its top is where it should be. */
export function placeAtTop(
  line: TowedLine,
  state: LineState,
  fromLowerEnd: readonly SolvedNode[],
  fromOrigin: readonly SolvedLine[],
  top: TowPoint,
): SolvedLine {
  const shiftXM = top.xM - state.xM;
  const shiftZM = top.zM - state.zM;
  const nodes = fromLowerEnd.map((node) => movedNode(node, shiftXM, shiftZM)).reverse();
  const branches = fromOrigin.map((branch, i) => {
    const at = nodes[line.branches?.[i]?.node ?? 0];
    return at === undefined ? branch : movedLine(branch, at.xM, at.zM);
  });
  const leastDepthM = branches.reduce((least, b) => Math.min(least, b.leastDepthM), state.leastZM + shiftZM);
  return {
    ok: true,
    depthM: nodes.at(-1)?.zM ?? shiftZM,
    // Not -x, which would show a line straight down as -0.
    behindM: 0 - state.xM,
    topTensionN: tensionOf(state),
    topAngleDeg: angleDeg(state),
    topForceXN: state.forceXN,
    topForceZN: state.forceZN,
    leastDepthM,
    nodes,
    branches,
  };
}

function movedNode(node: SolvedNode, xM: number, zM: number): SolvedNode {
  return { ...node, xM: node.xM + xM, zM: node.zM + zM };
}

/** A solved line moved as a whole, with what is clipped to it; `behindM` stays, being counted from its own top. */
export function movedLine(line: SolvedLine, xM: number, zM: number): SolvedLine {
  return {
    ...line,
    depthM: line.depthM + zM,
    leastDepthM: line.leastDepthM + zM,
    nodes: line.nodes.map((node) => movedNode(node, xM, zM)),
    branches: line.branches.map((branch) => movedLine(branch, xM, zM)),
    ...(line.alternatives === undefined
      ? {}
      : { alternatives: line.alternatives.map((one) => movedLine(one, xM, zM)) }),
  };
}
