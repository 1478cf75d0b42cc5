import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { isOutOfOrder, misplacedLines } from "../model/time-order.ts";
import type { AssumedPull } from "../model/timeline.ts";
import type { TripEvent } from "../model/trip.ts";
import { NEVER_PULLED } from "./catalog/day.ts";
import { DAY_FIXES, DAY_RELATED } from "./catalog/day-titles.ts";
import type { Rule } from "./check.ts";
import { insertLine } from "./move-lines.ts";
import { slotPlace, verbPlace, wholeLine } from "./places.ts";
import { stampText } from "./stamp-edits.ts";
import { clockWords } from "./words.ts";

/** Lines that say that the day on the water is over. */
const AT_THE_DOCK = new Set(["box", "dock", "weigh-in"]);

/** Says once which rigs are assumed pulled: at the return, else at the opener of a day that is over. */
export const neverPulled: Rule = ({ analysis, isFollowed, report }) => {
  for (const day of analysis.trips) {
    const left = day.timeline.assumedPulls.filter(
      ({ rig, state }) => state === "fishing" && !isOutOfOrder(day.trip, rig),
    );
    const back = day.timeline.ordered.findLast(
      (event) => event.line.verb === "return" && event.instant !== null,
    );
    const isOver = back !== undefined || isFollowed || isAtTheDock(day);
    const isMisplaced = back !== undefined && misplacedLines(day.trip).has(back.lineIndex);
    if (left.length === 0 || !isOver || isMisplaced) continue;
    const data = dataOf(day, left, back);
    const related = left.map(({ since }) => ({
      uri: analysis.uri,
      message: DAY_RELATED.putIn,
      ...slotPlace(since.lineIndex, since.line),
    }));
    if (back === undefined) {
      report(NEVER_PULLED, wholeLine(day.trip.openerIndex, day.trip.opener), data, { related });
      continue;
    }
    const line = `${stampText(back.line)} pull all`;
    const edits = [insertLine(analysis, back.lineIndex, line)];
    const fixes = [{ title: DAY_FIXES.addAbove(line), edits, isPreferred: true }];
    report(NEVER_PULLED, verbPlace(back.lineIndex, back.line), data, { related, fixes });
  }
};

function isAtTheDock({ trip }: TripAnalysis): boolean {
  return trip.events.some((event) => AT_THE_DOCK.has(event.line.verb));
}

function dataOf({ trip, timeline }: TripAnalysis, left: readonly AssumedPull[], back: TripEvent | undefined) {
  const { endMs } = timeline;
  return {
    rigs: left.map((pull) => pull.rig),
    at: endMs === null ? undefined : clockWords(endMs, trip.zone),
    isReturn: back !== undefined,
  };
}
