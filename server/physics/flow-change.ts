/** Another shape that a stream may as well have, as what it changes of the one that is taken. */
import { type FlowProfile, speedAtDepthMS } from "./flow-profile.ts";

/** What is added to the speed at each depth, m/s: straight between the depths, which increase strictly; the ends hold outside. */
export interface FlowChange {
  readonly depthsM: readonly number[];
  readonly byMS: readonly number[];
}

/** Depths nearer to each other than this are one, m. */
const SAME_DEPTH_M = 0.01;

/**
 * The profile with so many times the change added, no speed below `leastMS`. A smooth layer (`tanh`) states its own
 * shape and stays as it is.
 */
export function withFlowChange(
  flow: FlowProfile,
  change: FlowChange,
  times: number,
  leastMS: number,
): FlowProfile {
  if (flow.type === "tanh" || times === 0) return flow;
  const added: FlowProfile = { type: "piecewise", depthsM: change.depthsM, speedsMS: change.byMS };
  const depthsM = depthsOfBoth(flow.type === "piecewise" ? flow.depthsM : [], change.depthsM);
  const speedsMS = depthsM.map((depthM) =>
    Math.max(leastMS, speedAtDepthMS(flow, depthM) + times * speedAtDepthMS(added, depthM)),
  );
  return { type: "piecewise", depthsM, speedsMS };
}

function depthsOfBoth(one: readonly number[], other: readonly number[]): number[] {
  const all = [...one, ...other].sort((a, b) => a - b);
  return all.filter((depthM, i) => i === 0 || depthM - (all[i - 1] ?? 0) >= SAME_DEPTH_M);
}

/** What takes one profile to another at the depths of both. */
export function changeBetween(from: FlowProfile, to: FlowProfile, share = 1): FlowChange {
  const knots = (flow: FlowProfile): readonly number[] => (flow.type === "piecewise" ? flow.depthsM : []);
  const depthsM = depthsOfBoth(knots(from), knots(to));
  return {
    depthsM,
    byMS: depthsM.map((depthM) => share * (speedAtDepthMS(to, depthM) - speedAtDepthMS(from, depthM))),
  };
}
