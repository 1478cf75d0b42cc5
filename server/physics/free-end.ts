import type { LineProperties, LineState } from "./climb-line.ts";
import { normalDragCoefficient } from "./drag.ts";
import type { Water } from "./water.ts";

/** Below this share of a segment's whole load the tension at its lower end counts as none. */
const REST_SHARE = 1e-10;

/**
 * The share of a free segment that is taken as straight where the speed changes with depth; above it the line has
 * a tension to bend with. What that leaves out goes with its square, 1e-8 of the segment.
 */
export const FREE_START_SHARE = 1e-4;

/** Whether the tension at `state` is too small to have a direction, so that the segment above starts from a free end. */
export function startsFree(
  state: LineState,
  line: LineProperties,
  lengthM: number,
  water: Water,
  speedMS: number,
): boolean {
  const tensionN = Math.hypot(state.forceXN, state.forceZN);
  const dragNPerM = 0.5 * water.densityKgM3 * line.diameterM * speedMS * speedMS;
  return tensionN <= REST_SHARE * (Math.abs(line.weightNPerM) + dragNPerM) * lengthM;
}

/**
 * Climbs a segment whose lower end is free, in a uniform speed (m/s, either sign). It is exactly straight, at the
 * critical angle at which the water's push across it balances its weight across it (a floating line points up);
 * the tension grows evenly. Changes `state`; answers a plain reason when nothing keeps the line taut.
 */
export function climbFreeEnd(
  state: LineState,
  line: LineProperties,
  lengthM: number,
  water: Water,
  speedMS: number,
): string | undefined {
  const weight = Math.abs(line.weightNPerM);
  const cosSize = criticalCosine(line, weight, water, Math.abs(speedMS));
  const sinSize = Math.sqrt(1 - cosSize * cosSize);
  const alongMS = speedMS * sinSize;
  const tangentN =
    0.5 * water.densityKgM3 * line.tangentialCoefficient * Math.PI * line.diameterM * alongMS ** 2;
  const tensionN = (weight * cosSize + tangentN) * lengthM;
  if (!(tensionN > 0))
    return "nothing keeps the line taut: it has no weight, no drag along it and nothing at its end";
  const sin = speedMS < 0 ? -sinSize : sinSize;
  const cos = line.weightNPerM < 0 ? -cosSize : cosSize;
  state.xM -= lengthM * sin;
  state.zM -= lengthM * cos;
  state.forceXN = tensionN * sin;
  state.forceZN = tensionN * cos;
  if (state.zM < state.leastZM) state.leastZM = state.zM;
  return undefined;
}

/**
 * The cosine (from the vertical, 0 to 1) at which drag across the line, half rho C_n d U2 cos2, equals weight
 * across it, w sin. Bisection, since the coefficient may depend on the speed across the line.
 */
function criticalCosine(line: LineProperties, weight: number, water: Water, speedMS: number): number {
  if (speedMS === 0) return weight > 0 ? 1 : 0;
  const dynamicN = 0.5 * water.densityKgM3 * line.diameterM * speedMS * speedMS;
  const reynolds = (speedMS * line.diameterM) / water.kinematicViscosityM2S;
  let low = 0;
  let high = 1;
  for (let i = 0; i < 60; i++) {
    const cos = 0.5 * (low + high);
    const drag = dynamicN * normalDragCoefficient(line.normalDrag, reynolds * cos) * cos * cos;
    if (drag > weight * Math.sqrt(1 - cos * cos)) high = cos;
    else low = cos;
  }
  return weight > 0 ? 0.5 * (low + high) : 0;
}
