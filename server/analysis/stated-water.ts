/** The water a line will run in, from speeds that somebody states rather than reads. */
import { DEFAULTS } from "../physics/defaults.ts";
import type { WaterAndSpeed } from "./downrigger-input.ts";
import { streamOf } from "./stream-used.ts";

/** Speeds through the water, m/s. */
export interface StatedSpeeds {
  /** Down at the lines. */
  readonly speedMS: number;
  readonly surfaceSpeedMS: number | undefined;
  /** The depth that the speed down there holds at, m; else each target's own. */
  readonly speedDepthM: number | undefined;
  readonly waterTempC: number | undefined;
}

/** The stream for a line to a depth: straight from the speed on top to the one down there, where both are stated. */
export function statedWater(speeds: StatedSpeeds, targetM: number): WaterAndSpeed {
  const { speedMS, surfaceSpeedMS, speedDepthM = targetM, waterTempC } = speeds;
  const onTop = surfaceSpeedMS === undefined ? {} : { onTop: { value: surfaceSpeedMS } };
  const { flow, shape } = streamOf({ value: speedMS, depthM: speedDepthM, ...onTop });
  return {
    flow,
    ...(shape === undefined ? {} : { shape }),
    speedSdMS: DEFAULTS.probeSpeedSdMS.value,
    ...(surfaceSpeedMS === undefined ? {} : { surfaceSpeedSdMS: DEFAULTS.surfaceSpeedSdMS.value }),
    waterTemperatureC: waterTempC ?? DEFAULTS.waterTemperatureC.value,
  };
}
