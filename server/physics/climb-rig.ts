import type { LineState } from "./climb-line.ts";
import { addBody, climbSegment, startAt, tensionOf } from "./climb-nodes.ts";
import type { Cable, LurePull } from "./downrigger-cable.ts";
import { type FlowProfile, speedAtDepthMS } from "./flow-profile.ts";
import type { Pull } from "./rod-line.ts";
import type { TowedLine } from "./towed-line.ts";
import type { Water } from "./water.ts";

/** Where one climb up a cable put it, m from where it enters the water. Each climb writes it anew. */
export interface ClimbedCable {
  /** By node, 0 at the water line. */
  readonly xM: Float64Array;
  readonly zM: Float64Array;
  /** The pull on the top. */
  readonly state: LineState;
  /** How far below its place the top came out before all was moved; an answer has none of it. */
  missM: number;
  leastDepthM: number;
}

/** A lure's line as it hangs from its release: counted from there, with its pull, N. Each climb writes it anew. */
export interface HungLure extends LurePull {
  /** The depth that its lower end was climbed from, m; of no matter in a uniform stream, and none before it was hung. */
  endZM: number;
  depthM: number;
  behindM: number;
  topForceXN: number;
  topForceZN: number;
  /** The highest point of its line, counted down from the release, m. */
  leastDepthM: number;
}

/** What cables are climbed into, used again and again: one rig at a time is sought. */
let scratch = unclimbedCable(8);

/** A place to climb a cable into; the next one to ask gets the same. */
export function scratchFor(cable: Cable): ClimbedCable {
  const nodes = cable.segments.length + 1;
  if (scratch.xM.length < nodes) scratch = unclimbedCable(2 * nodes);
  return scratch;
}

function unclimbedCable(nodes: number): ClimbedCable {
  const state = { xM: 0, zM: 0, forceXN: 0, forceZN: 0, leastZM: 0 };
  return { xM: new Float64Array(nodes), zM: new Float64Array(nodes), state, missM: 0, leastDepthM: 0 };
}

/** A lure not hung yet. */
export function unhungLure(): HungLure {
  return {
    endZM: Number.NEGATIVE_INFINITY,
    depthM: 0,
    behindM: 0,
    topForceXN: 0,
    topForceZN: 0,
    leastDepthM: 0,
  };
}

/**
 * Climbs a cable once from a depth of its ball, with the pulls of lures and rods on its releases, then moves it so that
 * its top is at the water line. Nothing is allocated: it is climbed again and again while the pulls settle. Answers a
 * plain reason when it cannot.
 */
export function climbCable(
  into: ClimbedCable,
  cable: Cable,
  lures: readonly LurePull[],
  pulls: readonly Pull[],
  water: Water,
  flow: FlowProfile,
  ballZM: number,
  tolerance: number,
): string | undefined {
  const { xM, zM, state } = into;
  const { segments, releaseNodes, ball, lengthM } = cable;
  startAt(state, ballZM);
  addBody(state, ball, water, speedAtDepthMS(flow, ballZM));
  for (let node = segments.length; node >= 0; node--) {
    for (let i = 0; node > 0 && i < releaseNodes.length; i++) {
      if (releaseNodes[i] !== node) continue;
      state.forceXN += (lures[i]?.topForceXN ?? 0) + (pulls[i]?.forceXN ?? 0);
      state.forceZN += (lures[i]?.topForceZN ?? 0) + (pulls[i]?.forceZN ?? 0);
    }
    xM[node] = state.xM;
    zM[node] = state.zM;
    const segment = segments[node - 1];
    if (segment === undefined) break;
    const why = climbSegment(state, segment, water, flow, lengthM || 1, tolerance);
    if (why !== undefined) return why;
  }
  into.missM = state.zM;
  into.leastDepthM = state.leastZM - state.zM;
  for (let node = 0; node <= segments.length; node++) {
    xM[node] = (xM[node] ?? 0) - state.xM;
    zM[node] = (zM[node] ?? 0) - state.zM;
  }
  return undefined;
}

const lureState: LineState = { xM: 0, zM: 0, forceXN: 0, forceZN: 0, leastZM: 0 };

/** Climbs a lure's line, one segment with its lure, once from a depth of the lure. */
export function climbLure(
  into: HungLure,
  { segments: [segment], bodies: [lure] }: TowedLine,
  water: Water,
  flow: FlowProfile,
  endZM: number,
  tolerance: number,
): string | undefined {
  if (segment === undefined || lure === undefined) return "there is no line to the lure";
  startAt(lureState, endZM);
  addBody(lureState, lure, water, speedAtDepthMS(flow, endZM));
  const why = climbSegment(lureState, segment, water, flow, segment.lengthM || 1, tolerance);
  if (why !== undefined) return why;
  into.endZM = endZM;
  into.depthM = endZM - lureState.zM;
  into.behindM = 0 - lureState.xM;
  into.topForceXN = lureState.forceXN;
  into.topForceZN = lureState.forceZN;
  into.leastDepthM = lureState.leastZM - lureState.zM;
  return undefined;
}

/** The pull of a lure's line on its release, N. */
export function lureTensionN({ topForceXN, topForceZN }: LurePull): number {
  return Math.hypot(topForceXN, topForceZN);
}

/** The pull of a cable on its top, N. */
export function topTensionN({ state }: ClimbedCable): number {
  return tensionOf(state);
}
