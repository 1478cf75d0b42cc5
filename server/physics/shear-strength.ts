import { deepSpeedMS, type FlowProfile, surfaceSpeedMS } from "./flow-profile.ts";
import { type Layer, layersOf } from "./shear-scan.ts";

/** How far the line would drop in a uniform speed, at the slowest and the fastest of the profile, m and m/s. */
export interface DropRange {
  readonly slowMS: number;
  readonly fastMS: number;
  readonly slowM: number | undefined;
  readonly fastM: number | undefined;
}

/** The slowest and the fastest speed of a stream, m/s. */
export function speedRange(flow: FlowProfile): { readonly slowMS: number; readonly fastMS: number } {
  const speeds = flow.type === "piecewise" ? flow.speedsMS : [surfaceSpeedMS(flow), deepSpeedMS(flow)];
  let [slowMS, fastMS] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const speedMS of speeds) {
    slowMS = Math.min(slowMS, speedMS);
    fastMS = Math.max(fastMS, speedMS);
  }
  return { slowMS, fastMS };
}

/** The most that a stream's speed changes by for each m of depth, as a share of its slowest; without end where that is 0. */
export function steepnessPerM(flow: FlowProfile): number {
  const { slowMS, fastMS } = speedRange(flow);
  if (fastMS === slowMS) return 0;
  const steepest = layersOf(flow).reduce((most, layer) => Math.max(most, layer.slopePerS), 0);
  return slowMS > 0 ? steepest / slowMS : Number.POSITIVE_INFINITY;
}

/**
 * The most that the drop of a line hanging in a stream could change by between its slowest and its fastest speed, m.
 * What a line loses of its length grows at most with the fourth power of the speed: twice its drag leans it twice as far,
 * and it loses the square of that; constant pulls only slow this down. Twice that is taken. Source: derived.
 */
export function mostChangeM(flow: FlowProfile, lengthM: number, dropM: number): number {
  const { slowMS, fastMS } = speedRange(flow);
  const ratio = slowMS > 0 ? fastMS / slowMS : Number.POSITIVE_INFINITY;
  return Math.min(2 * lengthM, 2 * (lengthM - dropM) * (ratio ** 4 - ratio ** -4));
}

/** Below this a layer moves the drop by less, over its own shift, than the shift: g then rises, with one zero. */
const STRONG = 0.5;

/**
 * The layers in which several steady shapes are possible. Shifting the profile by some depth changes speeds by
 * the layer's slope times that, and the drop by its own slope on speed times this; only where the product nears
 * one can g turn back. The slope on speed is the mean one over the profile's range, so half is taken as near.
 * Source: derived; random lines in a test are scanned everywhere to confirm it.
 */
export function strongLayers(flow: FlowProfile, drops: DropRange): Layer[] {
  const { slowM, fastM, slowMS, fastMS } = drops;
  if (fastMS === slowMS) return [];
  const perSpeed =
    slowM === undefined || fastM === undefined
      ? Number.POSITIVE_INFINITY
      : Math.abs(fastM - slowM) / (fastMS - slowMS);
  return layersOf(flow).filter((layer) => layer.slopePerS * perSpeed >= STRONG);
}

/** The same told without a climb, from how much the drop can change at all, m: false where it rules several out. */
export function hasStrongLayer(flow: FlowProfile, mostChangeM: number): boolean {
  const { slowMS, fastMS } = speedRange(flow);
  if (fastMS === slowMS) return false;
  return layersOf(flow).some((layer) => (layer.slopePerS * mostChangeM) / (fastMS - slowMS) >= STRONG);
}
