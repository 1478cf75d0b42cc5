import type { DepthPlace } from "../analysis/line-depth.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { TOUCHING_BOTTOM } from "./catalog/day.ts";
import type { Rule } from "./check.ts";
import { itemPlace } from "./places.ts";

/** Flags a ball or lure that the model puts within the margin of the bottom. */
export const touchingBottom: Rule = ({ analysis, report }) => {
  for (const { trip, depths } of analysis.trips) {
    const marginM = thresholdOf(trip.gear, THRESHOLDS.touchingBottom);
    for (const depth of depths) {
      const { bottom, setting, event } = depth;
      if (bottom === undefined || setting.onBottom) continue;
      const isNear = (place: DepthPlace | null): place is DepthPlace =>
        place !== null && place.depthM > bottom.waterM - marginM;
      const what = isNear(depth.ball) ? "ball" : isNear(depth.lure) ? "lure" : undefined;
      if (what === undefined) continue;
      const place = itemPlace(event.lineIndex, event.line, "out");
      const data = {
        gear: trip.gear,
        what,
        depthM: depth[what]?.depthM ?? 0,
        bottomShownM: bottom.shownM,
        bottomAgeMs: bottom.ageMs,
      } as const;
      const related = [
        {
          uri: analysis.uri,
          message: "bottom read here",
          ...itemPlace(bottom.event.lineIndex, bottom.event.line, "bottom"),
        },
      ];
      const end = event.line.items.at(-1)?.stop ?? event.line.verbStop;
      const edit = {
        uri: analysis.uri,
        lineIndex: event.lineIndex,
        start: end,
        stop: end,
        text: " on-bottom",
      };
      const fixes = [{ title: "It is meant to be on the bottom", edits: [edit], isPreferred: false }];
      report(TOUCHING_BOTTOM, place, data, { related, fixes });
    }
  }
};
