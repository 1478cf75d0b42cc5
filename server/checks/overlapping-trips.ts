import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { misplacedLines } from "../model/time-order.ts";
import type { Trip } from "../model/trip.ts";
import { OVERLAPPING_TRIPS } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { Rule } from "./check.ts";
import { wholeLine } from "./places.ts";
import { clockWords } from "./words.ts";

/** Lines at the dock, that belong to no time on the water. */
const AT_THE_DOCK = new Set(["box", "dock", "weigh-in", "serviced", "note", "weather"]);

/** Flags a trip whose hours on the water overlap an earlier one's in the file, of the same boat. */
export const overlappingTrips: Rule = ({ analysis, report }) => {
  const spans = analysis.trips.flatMap((day) => {
    const span = spanOf(day);
    return span === undefined ? [] : [{ trip: day.trip, ...span }];
  });
  spans.forEach((span, i) => {
    const other = spans
      .slice(0, i)
      .find(
        (before) =>
          before.trip.boat === span.trip.boat && before.fromMs < span.toMs && span.fromMs < before.toMs,
      );
    if (other === undefined) return;
    const clock = (ms: number): string => clockWords(ms, span.trip.zone);
    const data = {
      from: clock(span.fromMs),
      to: clock(span.toMs),
      otherFrom: clock(other.fromMs),
      otherTo: clock(other.toMs),
    };
    const place = wholeLine(other.trip.openerIndex, other.trip.opener);
    const related = [{ uri: analysis.uri, message: DAY_RELATED.otherTrip, ...place }];
    report(OVERLAPPING_TRIPS, wholeLine(span.trip.openerIndex, span.trip.opener), data, { related });
  });
};

interface Hours {
  readonly fromMs: number;
  readonly toMs: number;
}

const hoursOfTrip = new WeakMap<Trip, Hours | null>();

/** A trip's hours on the water, read once. */
function spanOf({ trip }: TripAnalysis): Hours | undefined {
  let hours = hoursOfTrip.get(trip);
  if (hours === undefined) {
    hours = hoursOf(trip);
    hoursOfTrip.set(trip, hours);
  }
  return hours ?? undefined;
}

function hoursOf(trip: Trip): Hours | null {
  const misplaced = misplacedLines(trip);
  const times = trip.events.flatMap(({ line, lineIndex, instant }) =>
    instant === null || AT_THE_DOCK.has(line.verb) || misplaced.has(lineIndex) ? [] : [instant.utcMs],
  );
  return times.length === 0 ? null : { fromMs: Math.min(...times), toMs: Math.max(...times) };
}
