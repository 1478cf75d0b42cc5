/** Whether a ball or lure is within a margin of the bottom. */
import type { DepthPlace } from "./depth-place.ts";
import type { LineDepth } from "./line-depth.ts";

/**
 * What of a line is within `marginM` of the last bottom read, if anything. A lure's own pull is a guess: it counts only
 * where even the high end of its range is near the bottom.
 */
export function nearBottom({ ball, lure, bottom }: LineDepth, marginM: number): "ball" | "lure" | undefined {
  if (bottom === undefined) return undefined;
  const isNear = (place: DepthPlace | null, depthM: number | undefined): boolean =>
    place !== null && (depthM ?? 0) > bottom.waterM - marginM;
  if (isNear(ball, ball?.depthM)) return "ball";
  return isNear(lure, lure?.depthM) && isNear(lure, lure?.lowM) ? "lure" : undefined;
}
