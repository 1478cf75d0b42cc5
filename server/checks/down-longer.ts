/** A rod that is said to have been out of the water for longer than it was in. */

import { findItem, measureOf } from "../model/quantities.ts";
import { rigStateBefore } from "../model/rig-states.ts";
import { isOutOfOrder, meantMs } from "../model/time-order.ts";
import { NOT_IN_WATER } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { Rule } from "./check.ts";
import { itemPlace, verbPlace } from "./places.ts";

const PUTS_IN = new Set(["set", "again"]);
/** Minutes are rounded, approximate times are off by more (judgement). */
const SLACK_MS = 5 * 60_000;
const APPROXIMATE_MS = 15 * 60_000;

/** Flags `down` that reaches back before its rod went in. A rod with a fish off it went in before that. */
export const downLonger: Rule = ({ analysis, report }) => {
  for (const { trip, timeline } of analysis.trips) {
    for (const event of trip.events) {
      const { line, lineIndex, rig } = event;
      const item = findItem(line, "down");
      const timeMs = event.instant === null ? null : meantMs(trip, event);
      const downS = measureOf(line, "down", "duration", trip.gear.defaults);
      if (item === undefined || timeMs === null || downS === undefined || rig === undefined) continue;
      const { state, because } = rigStateBefore(timeline, rig, { lineIndex, timeMs });
      if (state !== "fishing" || because?.instant == null || !PUTS_IN.has(because.line.verb)) continue;
      const sinceMs = meantMs(trip, because);
      if (sinceMs === null || isOutOfOrder(trip, rig)) continue;
      const slackMs = line.approx || because.line.approx ? APPROXIMATE_MS : SLACK_MS;
      if (timeMs - downS * 1000 >= sinceMs - slackMs) continue;
      const down = line.raw.slice(item.valueStart, item.stop);
      const since = because.line.clock ?? "";
      const related = [
        { uri: analysis.uri, message: DAY_RELATED.putIn, ...verbPlace(because.lineIndex, because.line) },
      ];
      const data = { state: "down-longer", rig, down, since } as const;
      report(NOT_IN_WATER, itemPlace(lineIndex, line, "down"), data, { related });
    }
  }
};
