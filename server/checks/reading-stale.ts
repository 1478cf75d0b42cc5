import { READING_STALE } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { Rule } from "./check.ts";
import { itemPlace, slotPlace } from "./places.ts";
import { trolledDepths } from "./trolled-depths.ts";
import { clockWords } from "./words.ts";

/** Says once for each gap that a depth leans on a speed read long before. */
export const readingStale: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    const { gear, zone } = day.trip;
    const staleMs = day.ages.staleAfterMs;
    const said = new Set<number>();
    for (const { event, speed } of trolledDepths(day)) {
      const reading = speed?.how === "held" ? speed.used[0] : undefined;
      if (speed === undefined || reading === undefined || speed.ageMs <= staleMs) continue;
      if (said.has(reading.event.lineIndex)) continue;
      said.add(reading.event.lineIndex);
      const { source, rig, value: speedMS, timeMs, event: read } = reading;
      const data = {
        gear,
        source,
        rig,
        speedMS,
        clock: clockWords(timeMs, zone),
        ageMs: speed.ageMs,
        staleMs,
      };
      const place = itemPlace(read.lineIndex, read.line, "speed");
      const related = [{ uri: analysis.uri, message: DAY_RELATED.reading, ...place }];
      report(READING_STALE, slotPlace(event.lineIndex, event.line), data, { related });
    }
  }
};
