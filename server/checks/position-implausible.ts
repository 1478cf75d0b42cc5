import { jumpsIn } from "../analysis/stray-positions.ts";
import { POSITION_IMPLAUSIBLE } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { Rule } from "./check.ts";
import { itemPlace } from "./places.ts";
import { clockWords } from "./words.ts";

const NMI_M = 1852;

/** Flags a position farther from the one before than the boat can go. Of three the one that stands out is flagged. */
export const positionImplausible: Rule = ({ analysis, report }) => {
  for (const { trip, water } of analysis.trips) {
    const { gear, zone } = trip;
    for (const { before, fix, distanceM, seconds, limitMS, isTrolling } of jumpsIn(trip, water.fixes)) {
      const speedMS = seconds === 0 ? undefined : distanceM / seconds;
      const clock = clockWords(before.timeMs, zone);
      const data = { gear, distanceNmi: distanceM / NMI_M, clock, seconds, speedMS, limitMS, isTrolling };
      const { event } = fix;
      const read = itemPlace(before.event.lineIndex, before.event.line, "at");
      const related = [{ uri: analysis.uri, message: DAY_RELATED.reading, ...read }];
      report(POSITION_IMPLAUSIBLE, itemPlace(event.lineIndex, event.line, "at"), data, { related });
    }
  }
};
