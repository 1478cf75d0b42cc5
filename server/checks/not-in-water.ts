import type { JournalAnalysis, TripAnalysis } from "../analysis/journal-analysis.ts";
import { outsideTrip } from "../analysis/outside-trip.ts";
import { isOutOfOrder } from "../model/time-order.ts";
import type { Anomaly } from "../model/timeline.ts";
import { NOT_IN_WATER } from "./catalog/day.ts";
import { DAY_FIXES, DAY_RELATED } from "./catalog/day-titles.ts";
import type { Fix, Rule } from "./check.ts";
import { insertLine } from "./move-lines.ts";
import { slotPlace, verbPlace } from "./places.ts";
import { stampText } from "./stamp-edits.ts";

/** Readings: a ball may go down for a reading alone. */
const READINGS = new Set(["probe", "touch"]);
const PUTS_IN = new Set(["set", "again"]);

/** Flags a strike, catch, move or pull on a rig that isn't fishing, once until it is put in. */
export const notInWater: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    const outside = outsideTrip(day.trip);
    for (const anomaly of firstOfEachSpell(day)) {
      const { event, rig, since } = anomaly;
      const isKnown = day.trip.gear.rigs.size === 0 || day.trip.gear.rigs.has(rig);
      if (
        !isKnown ||
        isOutOfOrder(day.trip, rig) ||
        outside.has(event.lineIndex) ||
        isSetUnread(analysis, day, event.lineIndex, rig)
      )
        continue;
      const state =
        since === undefined ? "never-set" : anomaly.kind === "waiting-again" ? "not-back" : "pulled";
      const clock = since?.line.clock ?? undefined;
      const data = { rig, verb: event.line.verb, state, since: clock } as const;
      const related =
        since === undefined
          ? []
          : [
              {
                uri: analysis.uri,
                message: DAY_RELATED.cameOut,
                ...verbPlace(since.lineIndex, since.line),
              },
            ];
      report(NOT_IN_WATER, slotPlace(event.lineIndex, event.line), data, {
        related,
        fixes: [missingLine(analysis, anomaly)],
      });
    }
  }
};

/** One anomaly for each rig until a line puts it in. */
function firstOfEachSpell({ timeline }: TripAnalysis): Anomaly[] {
  const byLine = new Map(timeline.anomalies.map((anomaly) => [anomaly.event.lineIndex, anomaly]));
  const said = new Set<string>();
  return timeline.ordered.flatMap((event) => {
    if (event.rig !== undefined && PUTS_IN.has(event.line.verb)) said.delete(event.rig);
    const anomaly = byLine.get(event.lineIndex);
    if (anomaly === undefined || anomaly.kind === "already-set") return [];
    if (READINGS.has(event.line.verb) || said.has(anomaly.rig)) return [];
    said.add(anomaly.rig);
    return [anomaly];
  });
}

/** A line above that names the rig and can't be read may be the one that put it in; it has its own message. */
export function isSetUnread(
  analysis: JournalAnalysis,
  day: TripAnalysis,
  below: number,
  rig: string,
): boolean {
  const { lines } = analysis.parse.journal;
  return lines
    .slice(day.trip.openerIndex + 1, below)
    .some((line) => line.kind === "unreadable" && line.raw.split(/\s+/u).includes(rig));
}

/** The line that is missing: `again` for a rig that was in the water that day, else `set`. */
function missingLine(analysis: JournalAnalysis, { event, since }: Anomaly): Fix {
  const { raw } = event.line;
  const slot = event.line.slots[0];
  const name = slot === undefined ? "" : raw.slice(slot.start, slot.stop);
  const verb = since === undefined ? "set" : "again";
  const line = [stampText(event.line, true), verb, name].filter((part) => part !== "").join(" ");
  const edits = [insertLine(analysis, event.lineIndex, line)];
  return { title: DAY_FIXES.addAbove(line), edits, isPreferred: true };
}
