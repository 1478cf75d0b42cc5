import { isSpeedContradictedNear } from "../analysis/contradictions.ts";
import { speedReadings } from "../model/readings.ts";
import { meantMs } from "../model/time-order.ts";
import { READING_MISSING } from "./catalog/day.ts";
import type { Rule } from "./check.ts";
import { slotPlace } from "./places.ts";
import { trolledDepths } from "./trolled-depths.ts";
import { clockWords } from "./words.ts";

/** Says once for each gap that a depth has no speed to go by. */
export const readingMissing: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    const { gear, zone } = day.trip;
    const { unusedAfterMs: unusedMs, aheadMs } = day.ages;
    const readings = speedReadings(day.trip);
    const said = new Set<number>();
    for (const { event, speed } of trolledDepths(day)) {
      const timeMs = meantMs(day.trip, event) ?? 0;
      const gap = readings.filter((reading) => reading.timeMs <= timeMs).length;
      if (speed !== undefined || said.has(gap) || isSpeedContradictedNear(day.trip, timeMs, day.ages))
        continue;
      said.add(gap);
      const data = { gear, clock: clockWords(timeMs, zone), unusedMs, aheadMs };
      report(READING_MISSING, slotPlace(event.lineIndex, event.line), data);
    }
  }
};
