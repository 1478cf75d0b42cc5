import { timeDisorders } from "../model/time-order.ts";
import { AFTERNOON_SLIP } from "./catalog/day.ts";
import { DAY_FIXES, DAY_RELATED } from "./catalog/day-titles.ts";
import type { Rule } from "./check.ts";
import { stampPlace } from "./places.ts";
import { laterClock, stampText, writeClock } from "./stamp-edits.ts";

const HALF_DAY_H = 12;

/**
 * Flags an afternoon's times written like a morning's, and a morning's written like an afternoon's: twelve hours later,
 * or earlier, they fit between their neighbors.
 */
export const afternoonSlip: Rule = ({ analysis, report }) => {
  for (const { trip } of analysis.trips) {
    for (const { slip, events, against } of timeDisorders(trip)) {
      if (slip !== "afternoon" && slip !== "morning") continue;
      const [first] = events;
      const clock = first.line.clock ?? "";
      const meant = laterClock(clock, HALF_DAY_H);
      const isAhead = slip === "morning";
      const data = {
        clock,
        meant,
        isAhead,
        against: stampText(against.line, false),
        more: events.length - 1,
      };
      const message = DAY_RELATED.lineAbove;
      const related = [{ uri: analysis.uri, message, ...stampPlace(against.lineIndex, against.line) }];
      const edits = events.map((event) =>
        writeClock(analysis.uri, event, laterClock(event.line.clock ?? "", HALF_DAY_H)),
      );
      const fix = { title: DAY_FIXES.writeLater(meant, events.length), edits, isPreferred: true };
      report(AFTERNOON_SLIP, stampPlace(first.lineIndex, first.line), data, { related, fixes: [fix] });
    }
  }
};
