import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { extentOf } from "../model/extent.ts";
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
  for (const [span, other] of overlaps(spans)) {
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
  }
};

type Span = Hours & { readonly trip: Trip };

/** Pairs that overlap, the later one in the file first: by one sweep over the hours, since files may hold many trips. */
function overlaps(spans: readonly Span[]): [Span, Span][] {
  const pairs: [Span, Span][] = [];
  const latestOfBoat = new Map<string, Span>();
  for (const span of [...spans].sort((a, b) => a.fromMs - b.fromMs)) {
    const latest = latestOfBoat.get(span.trip.boat);
    if (latest !== undefined && span.fromMs < latest.toMs && latest.fromMs < span.toMs) {
      pairs.push(latest.trip.openerIndex < span.trip.openerIndex ? [span, latest] : [latest, span]);
    }
    if (latest === undefined || span.toMs > latest.toMs) latestOfBoat.set(span.trip.boat, span);
  }
  return pairs;
}

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
  const extent = extentOf(times);
  return extent === null ? null : { fromMs: extent.low, toMs: extent.high };
}
