import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { hasWord, measureOf } from "../model/quantities.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import type { TripEvent } from "../model/trip.ts";
import { cableAt } from "./cable-at.ts";
import { PROBE_FROZEN } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { Rule } from "./check.ts";
import { itemPlace } from "./places.ts";
import { clockWords } from "./words.ts";

interface ProbeDepth {
  readonly event: TripEvent;
  readonly rig: string;
  readonly timeMs: number;
  readonly depthM: number;
  readonly outM: number;
}

/** Flags a probe whose depth stays the same though its cable was moved. */
export const probeFrozen: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    const { gear, zone } = day.trip;
    const limitM = thresholdOf(gear, THRESHOLDS.frozenCable);
    const before = new Map<string, ProbeDepth>();
    for (const now of probeDepths(day)) {
      const last = before.get(now.rig);
      before.set(now.rig, now);
      const movedM = last === undefined ? 0 : now.outM - last.outM;
      if (last === undefined || now.depthM !== last.depthM || Math.abs(movedM) < limitM - 1e-6) continue;
      const { event, rig, depthM } = now;
      const data = { gear, rig, depthM, movedM, clock: clockWords(last.timeMs, zone) };
      const related = [
        {
          uri: analysis.uri,
          message: DAY_RELATED.reading,
          ...itemPlace(last.event.lineIndex, last.event.line, "depth"),
        },
      ];
      report(PROBE_FROZEN, itemPlace(event.lineIndex, event.line, "depth"), data, { related });
    }
  }
};

/** Depths a probe shows with the cable out then, in the order of time; a ball on the bottom stays where it is. */
function probeDepths(day: TripAnalysis): ProbeDepth[] {
  return day.timeline.ordered.flatMap((event) => {
    const { line, rig, instant } = event;
    if (line.verb !== "probe" || rig === undefined || instant === null) return [];
    const depthM = measureOf(line, "depth", "length", day.trip.gear.defaults);
    const cable = cableAt(day, event);
    const isOnBottom =
      hasWord(line, "on-bottom") || day.timeline.settingAfter.get(event.lineIndex)?.onBottom === true;
    if (depthM === undefined || cable === undefined || isOnBottom) return [];
    return [{ event, rig, timeMs: instant.utcMs, depthM, outM: cable.counterM }];
  });
}
