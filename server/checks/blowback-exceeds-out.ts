import { measureOf } from "../model/quantities.ts";
import { cableAt } from "./cable-at.ts";
import { BLOWBACK_EXCEEDS_OUT } from "./catalog/day.ts";
import type { Rule } from "./check.ts";
import { itemPlace } from "./places.ts";
import { relatedOut } from "./related-out.ts";

/** Flags a measured distance behind that is longer than the cable. */
export const blowbackExceedsOut: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    for (const event of day.trip.events) {
      const behindM = measureOf(event.line, "behind", "length", day.trip.gear.defaults);
      const cable = behindM === undefined ? undefined : cableAt(day, event);
      if (behindM === undefined || cable === undefined) continue;
      if (behindM <= Math.max(cable.counterM, cable.outM)) continue;
      const data = { gear: day.trip.gear, behindM, outM: cable.counterM };
      const related = relatedOut(analysis, day, event, cable.rig.name);
      report(BLOWBACK_EXCEEDS_OUT, itemPlace(event.lineIndex, event.line, "behind"), data, { related });
    }
  }
};
