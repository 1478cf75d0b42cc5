import { fishingDepth } from "../analysis/lure-water.ts";
import { type TempAtDepth, temperatureAt } from "../analysis/temperature-at.ts";
import type { WaterProfile } from "../analysis/water-profile.ts";
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
      const profile = day.water.profileAt(depth.event.instant?.utcMs ?? Number.NaN);
      if (profile?.cast !== undefined) isSaid = false;
      const at = profile === undefined ? undefined : temperatureAt(profile, place.depthM);
      if (isSaid || !isUnmeasured(profile, at)) continue;
      isSaid = true;
      const gap = at?.kind === "gap" ? at : undefined;
      const unusedMs = thresholdOf(gear, THRESHOLDS.profileUnused) * 1000;
      const data = { gear, rig: depth.rig, depthM: place.depthM, gap, unusedMs };
      report(NO_PROFILE, slotPlace(depth.event.lineIndex, depth.event.line), data);
    }
  }
};

/** Below the deepest depth of a profile is no gap: the captain knows how deep he lowered it. */
function isUnmeasured(profile: WaterProfile | undefined, at: TempAtDepth | undefined): boolean {
  return at === undefined || at.kind === "gap" || (profile?.cast === undefined && at.kind !== "known");
}
