/** The stream that a line hangs in, from the speeds known at its minute: how fast the water runs at each depth. */
import { type FlowProfile, uniformFlow } from "../physics/flow-profile.ts";

/** A speed, the depth it was read at, and the one on top where both are known. */
interface StreamSpeeds {
  readonly value: number;
  readonly depthM?: number | undefined;
  readonly onTop?: { readonly value: number };
}

/** A probe this near the surface, m, tells of the same water as the reading on top. */
const NEAR_TOP_M = 1;

/** A depth whose conditioning is above this is called shaky: an error of the model shows in it so many times over. */
export const SHAKY_CONDITIONING = 3;

/**
 * With a speed on top and one at the probe's depth: straight from the one at the surface to the other at that depth,
 * and the same below it, of which nothing is known. With one speed: the same at every depth. Where a temperature
 * profile shows a thermocline, two layers that meet there are the better guess; they would be built here.
 */
export function streamOf(speed: StreamSpeeds): FlowProfile {
  const { onTop, depthM = 0, value } = speed;
  if (onTop === undefined || depthM < NEAR_TOP_M) return uniformFlow(value);
  return { type: "piecewise", depthsM: [0, depthM], speedsMS: [onTop.value, value] };
}
