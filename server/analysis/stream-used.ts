/** The stream that a line hangs in, from the speeds known at its minute: how fast the water runs at each depth. */
import { DEVIATIONS_80 } from "../physics/band.ts";
import { changeBetween, type FlowChange } from "../physics/flow-change.ts";
import { type FlowProfile, uniformFlow } from "../physics/flow-profile.ts";
import type { Layers } from "../physics/lake-layers.ts";

/** A speed, the depth it was read at, the one on top where both are known, and the layer between where one is known. */
interface StreamSpeeds {
  readonly value: number;
  readonly depthM?: number | undefined;
  readonly onTop?: { readonly value: number } | undefined;
  readonly layer?: Layers | undefined;
}

/** Two speeds joined, and how. */
export interface JoinedStream {
  /**
   * `two-layers`: one speed above the metalimnion, one below it, straight in between. `in-layer`: the probe hung in it,
   * so the change ends at the probe. `straight`: from the surface to the probe, for no layer is known. `above-layer`: the
   * same, for the probe hung above it.
   */
  readonly kind: "two-layers" | "in-layer" | "straight" | "above-layer";
  /** Where the speed begins to change, and where it has changed, m. */
  readonly fromM: number;
  readonly toM: number;
  readonly flow: FlowProfile;
  /** What one standard deviation of its shape changes; undefined where the speeds are the same. */
  readonly shape: FlowChange | undefined;
}

/** The same speed at every depth. */
interface UniformStream {
  readonly kind: "uniform";
  readonly flow: FlowProfile;
  readonly shape: undefined;
}

/** A probe this near the surface, m, tells of the same water as the reading on top. */
const NEAR_TOP_M = 1;

/** No layer is taken to be thinner, m: across a jump a line may have no steady shape. */
const LEAST_LAYER_M = 1;

/** A depth whose conditioning is above this is called shaky: an error of the model shows in it so many times over. */
export const SHAKY_CONDITIONING = 3;

/**
 * With a speed on top and one at the probe: the one on top down to the metalimnion, the probe's below it, straight in
 * between; straight from the surface to the probe where no metalimnion is known above it. Below the probe its own speed
 * holds, for nothing was read there. With one speed: the same at every depth.
 */
export function streamOf(speed: StreamSpeeds): JoinedStream | UniformStream {
  const { onTop, depthM = 0, value, layer } = speed;
  if (onTop === undefined || depthM < NEAR_TOP_M)
    return { kind: "uniform", flow: uniformFlow(value), shape: undefined };
  const { kind, fromM, toM } = spanOf(depthM, layer);
  const speedsMS = [onTop.value, value];
  const flow: FlowProfile = { type: "piecewise", depthsM: [fromM, toM], speedsMS };
  const isStraight = fromM === 0 && toM === depthM;
  const shape = onTop.value === value ? undefined : shapeOf(flow, speedsMS, depthM, isStraight);
  return { kind, fromM, toM, flow, shape };
}

/** Over which depths the speed changes between the surface and a probe. */
export function spanOf(
  probeM: number,
  layer: Layers | undefined,
): Pick<JoinedStream, "kind" | "fromM" | "toM"> {
  if (layer === undefined) return { kind: "straight", fromM: 0, toM: probeM };
  if (probeM <= layer.topM) return { kind: "above-layer", fromM: 0, toM: probeM };
  const thickM = Math.max(LEAST_LAYER_M, layer.bottomM - layer.topM);
  const middleM = (layer.topM + layer.bottomM) / 2;
  const toM = Math.min(probeM, Math.max(LEAST_LAYER_M, middleM + thickM / 2));
  const isIn = probeM < layer.bottomM;
  const fromM = Math.max(0, Math.min(isIn ? layer.topM : middleM - thickM / 2, toM - LEAST_LAYER_M));
  return { kind: isIn ? "in-layer" : "two-layers", fromM, toM };
}

/**
 * A layer in the temperature need not be one in the current: the straight line lies at one end of the range that holds
 * 80 of 100, and as far the other way at the other, for the layer rises and sinks. Where no layer is known the change
 * may as well lie all in the upper half or all in the lower (judgement, both).
 */
function shapeOf(
  flow: FlowProfile,
  speedsMS: readonly number[],
  probeM: number,
  isStraight: boolean,
): FlowChange {
  const [topMS = 0, deepMS = 0] = speedsMS;
  const other: FlowProfile = isStraight
    ? { type: "piecewise", depthsM: [0, probeM / 2, probeM], speedsMS: [topMS, topMS, deepMS] }
    : { type: "piecewise", depthsM: [0, probeM], speedsMS };
  return changeBetween(flow, other, 1 / DEVIATIONS_80);
}
