import { type FlowProfile, speedAtDepthMS } from "./flow-profile.ts";

/** How the boat goes: straight ahead, or round a circle at a steady speed. */
export interface Course {
  /** Speed of the boat through the water by depth. */
  readonly flow: FlowProfile;
  /** Radius of the circle of the boat's middle, m: to starboard positive, to port negative. Left out going straight. */
  readonly turnRadiusM?: number;
}

/** A velocity across the level, m/s: astern and to starboard. */
export interface Stream {
  behindMS: number;
  acrossMS: number;
}

/**
 * The water as it runs past a place that keeps its station beside the boat, written into `into`. In a turn everything
 * goes round the same middle in the same time, so it runs at U(1 - y/R): slower inside, faster outside, and
 * it comes round with the circle.
 */
export function streamAt(
  into: Stream,
  { flow, turnRadiusM }: Course,
  behindM: number,
  acrossM: number,
  depthM: number,
): void {
  const speedMS = speedAtDepthMS(flow, depthM);
  into.behindMS = turnRadiusM === undefined ? speedMS : (speedMS * (turnRadiusM - acrossM)) / turnRadiusM;
  into.acrossMS = turnRadiusM === undefined ? 0 : (speedMS * behindM) / turnRadiusM;
}
