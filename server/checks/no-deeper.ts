import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { LineDepth } from "../analysis/line-depth.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { NO_DEEPER } from "./catalog/day.ts";
import type { Rule } from "./check.ts";
import { itemPlace } from "./places.ts";
import { speedsOf } from "./speeds-of.ts";

/** Says where more line out no longer goes deeper; once for a rig, until it goes deeper again. */
export const noDeeper: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    const { gear } = day.trip;
    const leastShare = thresholdOf(gear, THRESHOLDS.noDeeper);
    const said = new Set<string>();
    for (const depth of day.depths) {
      const { event, speed, rig } = depth;
      const share = isSteep(depth, leastShare) ? 1 : deeperShare(day, depth);
      if (share === undefined || speed === undefined) continue;
      const isFlat = share < leastShare;
      if (isFlat && !said.has(rig)) {
        const what = depth.ball === null ? (depth.weightIs ?? "lure") : "ball";
        const data = { gear, what, share, speeds: speedsOf(speed) } as const;
        report(NO_DEEPER, itemPlace(event.lineIndex, event.line, "out"), data);
      }
      if (isFlat) said.add(rig);
      else said.delete(rig);
    }
  }
};

/** How many times the threshold a line's slope at the top may be before the gain itself is worth solving for. */
const STEEP = 3;

/** In an even speed a line gains about the cosine of its angle at the top: most hang far too steep to ask further. */
function isSteep({ topAngleDeg }: LineDepth, leastShare: number): boolean {
  return topAngleDeg !== null && Math.cos((topAngleDeg * Math.PI) / 180) > STEEP * leastShare;
}

/**
 * Depth gained for each length of line let out; `undefined` where the question isn't asked: a flat line's depth is
 * its lure's, a line on the bottom is deep enough, one at the surface has a check of its own, and backing only takes a line
 * away from the boat.
 */
function deeperShare({ trip }: TripAnalysis, depth: LineDepth): number | undefined {
  const { ball, weight, lure, cableRig, rig, setting, surfaced, backingM } = depth;
  const place = ball ?? weight ?? lure;
  if (place === null || surfaced || backingM > 0 || setting.onBottom || place.onBottom) return undefined;
  if (cableRig !== undefined) return cableRig.name === rig ? place.depthPerOut : undefined;
  return trip.gear.rigs.get(rig)?.kind === "flat" && weight === null ? undefined : place.depthPerOut;
}
