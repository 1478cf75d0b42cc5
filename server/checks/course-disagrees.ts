import { courseOf } from "../analysis/bearings.ts";
import { angleBetween } from "../analysis/current-looks.ts";
import { wayBetween } from "../analysis/geodesic.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { Fix } from "../analysis/positions.ts";
import type { Gear } from "../model/gear-types.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { COURSE_DISAGREES } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { Rule } from "./check.ts";
import { itemPlace } from "./places.ts";
import { clockWords } from "./words.ts";

/** Two courses of one leg agree within that (judgement). */
const ONE_COURSE_DEG = 30;

/** Flags a course that is not the way between two positions of one leg. */
export const courseDisagrees: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    const { gear } = day.trip;
    const limitDeg = thresholdOf(gear, THRESHOLDS.courseOff);
    const shortestM = thresholdOf(gear, THRESHOLDS.courseDistance);
    const turns = turnTimes(day);
    const { fixes } = day.water;
    fixes.slice(1).forEach((fix, i) => {
      const before = fixes[i];
      if (before === undefined || !isOneLeg(gear, before, fix, turns)) return;
      const courseDeg = commonCourse(day, before, fix);
      const way = courseDeg === undefined ? undefined : wayBetween(before.place, fix.place);
      if (courseDeg === undefined || way === undefined || way.distanceM < shortestM) return;
      if (angleBetween(courseDeg, way.bearingDeg) <= limitDeg) return;
      const clock = clockWords(before.timeMs, day.trip.zone);
      const { event } = fix;
      const read = itemPlace(before.event.lineIndex, before.event.line, "at");
      const related = [{ uri: analysis.uri, message: DAY_RELATED.reading, ...read }];
      const place = itemPlace(event.lineIndex, event.line, "course");
      report(COURSE_DISAGREES, place, { courseDeg, wayDeg: way.bearingDeg, clock }, { related });
    });
  }
};

function turnTimes({ trip }: TripAnalysis): number[] {
  const turns = new Set(["turn", "run", "drift"]);
  return trip.events.flatMap(({ line, instant }) =>
    turns.has(line.verb) && instant !== null ? [instant.utcMs] : [],
  );
}

function isOneLeg(gear: Gear, before: Fix, fix: Fix, turns: readonly number[]): boolean {
  const turnMs = 1000 * thresholdOf(gear, THRESHOLDS.turnSettles);
  const isNear = fix.timeMs - before.timeMs <= 1000 * thresholdOf(gear, THRESHOLDS.courseTime);
  return isNear && !turns.some((ms) => ms >= before.timeMs - turnMs && ms <= fix.timeMs + turnMs);
}

/** The course at the second position, where the first has about the same. */
function commonCourse({ trip }: TripAnalysis, before: Fix, fix: Fix): number | undefined {
  const [one, other] = [before, fix].map(({ event }) => courseOf(trip, event));
  if (one === undefined || other === undefined || one.isMagnetic || other.isMagnetic) return undefined;
  return angleBetween(one.deg, other.deg) <= ONE_COURSE_DEG ? other.deg : undefined;
}
