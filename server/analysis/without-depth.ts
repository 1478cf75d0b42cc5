/** What every line's depth starts from, and the form of a line that has none. */
import type { WaterAndSpeed } from "./downrigger-input.ts";
import type { LineDepth } from "./line-depth.ts";
import type { DepthLack, NoTask } from "./no-task.ts";
import type { SpeedUsed } from "./speed-used.ts";
import { streamOf } from "./stream-used.ts";

/** A line with what its depth leans on. */
export type DepthBase = Pick<
  LineDepth,
  "event" | "rig" | "setting" | "speed" | "water" | "bottom" | "cableRig"
>;

/** A line with no depth at all, and why, as a sentence part. */
export function withoutDepth(base: DepthBase, why: string, lack?: DepthLack): LineDepth {
  return {
    ...base,
    ball: null,
    whyNoBall: why,
    weight: null,
    weightIs: undefined,
    lure: null,
    slider: null,
    sideM: null,
    backingM: 0,
    assumed: [],
    releaseDepthM: null,
    why,
    lack,
    whyNoLure: null,
    topAngleDeg: null,
    surfaced: false,
    conditioning: null,
    otherBallDepthsM: [],
    calibration: undefined,
    sharedFrom: [],
  };
}

const NO_SPEED = "no speed reading within reach (probe, surface or gps)";

/** The same line where speeds were read, and say two things. */
export function contradicted(depth: LineDepth): LineDepth {
  if (depth.why !== NO_SPEED) return depth;
  const why = "the speeds read within reach contradict each other";
  return { ...depth, why, whyNoBall: why };
}

/** The speed and water of a line's minute, or why it has none. */
export function waterAndSpeed({ event, speed, water }: DepthBase): ({ ok: true } & WaterAndSpeed) | NoTask {
  if (event.instant === null) return { ok: false, why: "the line has no clock time, so no speed to go by" };
  if (speed === undefined || water === undefined) {
    return { ok: false, why: NO_SPEED };
  }
  return { ok: true, ...inStream(speed, water.tempC) };
}

const streams = new WeakMap<SpeedUsed, WaterAndSpeed>();

/** What a line runs in: the stream of its minute's speeds, in water of a temperature, °C. The latest of a speed is kept. */
export function inStream(speed: SpeedUsed, waterTemperatureC: number): WaterAndSpeed {
  const known = streams.get(speed);
  if (known?.waterTemperatureC === waterTemperatureC) return known;
  const joined = joinedStream(speed, waterTemperatureC);
  streams.set(speed, joined);
  return joined;
}

function joinedStream(speed: SpeedUsed, waterTemperatureC: number): WaterAndSpeed {
  const { flow, shape } = streamOf(speed);
  return {
    flow,
    ...(shape === undefined ? {} : { shape }),
    speedSdMS: speed.sdMS,
    ...(speed.onTop === undefined ? {} : { surfaceSpeedSdMS: speed.onTop.sdMS }),
    waterTemperatureC,
  };
}
