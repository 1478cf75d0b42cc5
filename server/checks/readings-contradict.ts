import { contradictionsOf } from "../analysis/contradictions.ts";
import { hasWord } from "../model/quantities.ts";
import { READINGS_CONTRADICT } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { Rule } from "./check.ts";
import { itemPlace } from "./places.ts";
import { speedAt } from "./speed-words.ts";

/** Flags the later of two readings of one instrument and minute that can't both be true. */
export const readingsContradict: Rule = ({ analysis, report }) => {
  for (const { trip } of analysis.trips) {
    for (const { of, first, firstValue, second, secondValue } of contradictionsOf(trip)) {
      if (hasWord(first.line, "sure") || hasWord(second.line, "sure")) continue;
      const data = { gear: trip.gear, of, at: speedAt(second), value: secondValue, otherValue: firstValue };
      const read = itemPlace(first.lineIndex, first.line, of);
      const related = [{ uri: analysis.uri, message: DAY_RELATED.reading, ...read }];
      report(READINGS_CONTRADICT, itemPlace(second.lineIndex, second.line, of), data, { related });
    }
  }
};
