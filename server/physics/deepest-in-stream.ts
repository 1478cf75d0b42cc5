import type { FlowProfile } from "./flow-profile.ts";
import { speedRange } from "./shear-strength.ts";

/** What else may differ between two minutes (the water's temperature by some degrees), as a share and in m. */
const OTHERWISE = 1.05;
const OTHERWISE_M = 0.2;

/**
 * No deeper than that, m, hangs a line in a stream that hung at a depth in another, without solving it. All drag and lift
 * grow with the square of the speed, so slower water is as if the line's weights had grown by the square of the ratio; and a
 * line whose weights are doubled hangs at most twice as deep. Not so one with a diver or a plug, which pull down harder in
 * faster water. Where either stream changes with depth, it is taken at its
 * slowest now and its fastest before. Source: derived; a test holds it against lines drawn at random.
 */
export function deepestInM(depthM: number, before: FlowProfile, now: FlowProfile): number {
  const [{ fastMS }, { slowMS }] = [speedRange(before), speedRange(now)];
  if (!(slowMS > 0)) return Number.POSITIVE_INFINITY;
  const slower = Math.max(1, fastMS / slowMS);
  return OTHERWISE * slower * slower * Math.max(0, depthM) + OTHERWISE_M;
}
