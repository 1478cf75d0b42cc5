import { outsideTrip } from "../analysis/outside-trip.ts";
import { TIME_OUTSIDE_TRIP } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { Rule } from "./check.ts";
import { stampPlace } from "./places.ts";
import { stampText } from "./stamp-edits.ts";

/** Flags lines of rods before the boat left or after it was back. */
export const timeOutsideTrip: Rule = ({ analysis, report }) => {
  for (const { trip } of analysis.trips) {
    const outside = outsideTrip(trip);
    for (const { line, lineIndex } of trip.events) {
      const passed = outside.get(lineIndex);
      if (passed === undefined) continue;
      const { edge, at } = passed;
      const data = {
        verb: line.verb,
        clock: stampText(line, false),
        edge,
        edgeClock: stampText(at.line, false),
      };
      const place = stampPlace(at.lineIndex, at.line);
      const related = [{ uri: analysis.uri, message: DAY_RELATED[edge], ...place }];
      report(TIME_OUTSIDE_TRIP, stampPlace(lineIndex, line), data, { related });
    }
  }
};
