import type { LureWater } from "../analysis/lure-water.ts";
import { fishingDepth } from "../analysis/lure-water.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { NO_PROFILE } from "./catalog/day.ts";
import type { Rule } from "./check.ts";
import { slotPlace } from "./places.ts";
import { trolledDepths } from "./trolled-depths.ts";

/** So near the surface the captain goes by what he reads on top (judgement). */
const NEAR_SURFACE_M = 4.572;

/** Says once for each gap that a lure runs in water that nobody measured, on trips that look for a band. */
export const noProfile: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    const { gear } = day.trip;
    if (day.water.bands.length === 0) continue;
    let isSaid = false;
    for (const depth of trolledDepths(day)) {
      const place = fishingDepth(depth);
      if (place === undefined || place.depthM <= NEAR_SURFACE_M) continue;
      const water = day.water.lureOf(depth);
      if (water?.profile.cast !== undefined) isSaid = false;
      if (isSaid || !isUnmeasured(water)) continue;
      isSaid = true;
      const gap = water?.at?.kind === "gap" ? water.at : undefined;
      const unusedMs = thresholdOf(gear, THRESHOLDS.profileUnused) * 1000;
      const data = { gear, rig: depth.rig, depthM: place.depthM, gap, unusedMs };
      report(NO_PROFILE, slotPlace(depth.event.lineIndex, depth.event.line), data);
    }
  }
};

/** Below the deepest depth of a profile is no gap: the captain knows how deep he lowered it. */
function isUnmeasured(water: LureWater | undefined): boolean {
  return (
    water === undefined ||
    water.at?.kind === "gap" ||
    (water.profile.cast === undefined && water.at?.kind !== "known")
  );
}
