import { climbLine, type LineState } from "./climb-line.ts";
import { sphereDragAreaM2 } from "./drag.ts";
import { type FlowProfile, speedAtDepthMS } from "./flow-profile.ts";
import { climbFreeEnd, FREE_START_SHARE, startsFree } from "./free-end.ts";
import type { Refusal } from "./refusal.ts";
import {
  type LineSegment,
  type PointBody,
  type SolvedLine,
  type SolvedNode,
  type TowedLine,
  totalLengthM,
} from "./towed-line.ts";
import type { Water } from "./water.ts";

/** The branch of that index with its top at a depth, m. */
export type BranchAt = (index: number, depthM: number) => SolvedLine | Refusal | undefined;

/**
 * Climbs a whole line from its lower end at `state` (its depth set, its force zero) to its top, past its bodies
 * and branches, down to node `lastNode`. Adds its nodes to `nodes` where that is given, from the lower end up.
 * Answers a plain reason when it cannot.
 */
export function climbNodes(
  state: LineState,
  line: TowedLine,
  water: Water,
  flow: FlowProfile,
  tolerance: number,
  nodes: SolvedNode[] | undefined,
  branchAt: BranchAt,
  lastNode = 0,
): string | undefined {
  const lengthM = totalLengthM(line.segments);
  let alongM = lengthM;
  for (let node = line.segments.length; node >= lastNode; node--) {
    const tensionBelowN = tensionOf(state);
    if (node > 0) {
      const why = addForcesAt(state, node, line, branchAt, water, flow);
      if (why !== undefined) return why;
    }
    if (nodes !== undefined) {
      const tensionAboveN = node === 0 ? 0 : tensionOf(state);
      const angleAboveDeg = tensionAboveN === 0 ? null : angleDeg(state);
      nodes.push({ alongM, xM: state.xM, zM: state.zM, tensionAboveN, tensionBelowN, angleAboveDeg });
    }
    const segment = line.segments[node - 1];
    if (segment === undefined || node === lastNode) break;
    const why = climbSegment(state, segment, water, flow, lengthM || 1, tolerance);
    if (why !== undefined) return why;
    alongM = node === 1 ? 0 : alongM - segment.lengthM;
  }
  return undefined;
}

/** The tension at a point, N. */
export function tensionOf(state: LineState): number {
  return Math.sqrt(state.forceXN * state.forceXN + state.forceZN * state.forceZN);
}

/** Where the line leads at a point, degrees from the vertical, positive astern. */
export function angleDeg(state: LineState): number {
  return (Math.atan2(state.forceXN, state.forceZN) * 180) / Math.PI;
}

/** Starts a climb over from a depth of the lower end. */
export function startAt(state: LineState, endZM: number): void {
  state.xM = 0;
  state.zM = endZM;
  state.forceXN = 0;
  state.forceZN = 0;
  state.leastZM = endZM;
}

/** Adds what hangs on a node to the force carried up the line. At the top there is no line left to carry it. */
function addForcesAt(
  state: LineState,
  node: number,
  line: TowedLine,
  branchAt: BranchAt,
  water: Water,
  flow: FlowProfile,
): string | undefined {
  const speedMS = speedAtDepthMS(flow, state.zM);
  for (const body of line.bodies) if (body.node === node) addBody(state, body, water, speedMS);
  const branches = line.branches ?? [];
  for (let i = 0; i < branches.length; i++) {
    if (branches[i]?.node !== node) continue;
    const branch = branchAt(i, state.zM);
    if (branch === undefined) continue;
    if (!branch.ok) return branch.why;
    state.forceXN += branch.topForceXN;
    state.forceZN += branch.topForceZN;
  }
  return undefined;
}

/** Adds a body's weight and what the water, at a speed (m/s), does to it. */
export function addBody(state: LineState, body: PointBody, water: Water, speedMS: number): void {
  const { sphere } = body;
  const sphereM2 =
    sphere === undefined
      ? 0
      : sphereDragAreaM2(sphere.diameterM, speedMS, water.kinematicViscosityM2S, sphere.multiplier);
  const pressurePa = 0.5 * water.densityKgM3 * speedMS * speedMS;
  state.forceXN += body.forceXN + pressurePa * (body.dragAreaM2 + sphereM2) * Math.sign(speedMS);
  state.forceZN += body.weightN + pressurePa * body.liftAreaM2;
}

/** Climbs one segment; `scaleM` is what its steps' errors are measured against. Answers a plain reason when it cannot. */
export function climbSegment(
  state: LineState,
  segment: LineSegment,
  water: Water,
  flow: FlowProfile,
  scaleM: number,
  tolerance: number,
): string | undefined {
  const { lengthM } = segment;
  if (lengthM === 0) return undefined;
  const speedMS = speedAtDepthMS(flow, state.zM);
  if (!startsFree(state, segment, lengthM, water, speedMS))
    return climbLine(state, segment, lengthM, water, flow, scaleM, tolerance);
  if (flow.type === "uniform") return climbFreeEnd(state, segment, lengthM, water, speedMS);
  const firstM = FREE_START_SHARE * lengthM;
  const why = climbFreeEnd(state, segment, firstM, water, speedMS);
  return why ?? climbLine(state, segment, lengthM - firstM, water, flow, scaleM, tolerance);
}
