import { wayBetween } from "../analysis/geodesic.ts";
import type { Fix as PositionFix } from "../analysis/track.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { misplacedLines } from "../model/time-order.ts";
import { POSITION_IMPLAUSIBLE } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { Rule } from "./check.ts";
import { itemPlace } from "./places.ts";
import { clockWords } from "./words.ts";

const NMI_M = 1852;
/** Clocks are written in whole minutes. */
const MINUTE_S = 60;

/** Flags a position farther from the one before than the boat can go. Of three the one that stands out is flagged. */
export const positionImplausible: Rule = ({ analysis, report }) => {
  for (const { trip, water } of analysis.trips) {
    const { gear, zone } = trip;
    const limitMS = thresholdOf(gear, THRESHOLDS.fastestBoat);
    const doubtful = misplacedLines(trip);
    const fixes = water.fixes.filter(
      ({ event }) => !doubtful.has(event.lineIndex) && event.instant?.problem === null,
    );
    let last = fixes[0];
    fixes.slice(1).forEach((fix, i) => {
      const before = last;
      if (before === undefined) return;
      const next = fixes[i + 2];
      const isFar = isBeyond(before, fix, limitMS);
      const isStray = isFar && next !== undefined && !isBeyond(before, next, limitMS);
      if (!isStray) last = fix;
      if (!isFar) return;
      const { distanceM, seconds } = between(before, fix);
      const speedMS = seconds === 0 ? undefined : distanceM / seconds;
      const clock = clockWords(before.timeMs, zone);
      const data = { gear, distanceNmi: distanceM / NMI_M, clock, speedMS, limitMS };
      const { event } = fix;
      const read = itemPlace(before.event.lineIndex, before.event.line, "at");
      const related = [{ uri: analysis.uri, message: DAY_RELATED.reading, ...read }];
      report(POSITION_IMPLAUSIBLE, itemPlace(event.lineIndex, event.line, "at"), data, { related });
    });
  }
};

function between(one: PositionFix, other: PositionFix): { distanceM: number; seconds: number } {
  const distanceM = wayBetween(one.place, other.place)?.distanceM ?? 0;
  return { distanceM, seconds: Math.abs(other.timeMs - one.timeMs) / 1000 };
}

function isBeyond(one: PositionFix, other: PositionFix, limitMS: number): boolean {
  const { distanceM, seconds } = between(one, other);
  return distanceM > limitMS * (seconds + MINUTE_S);
}
