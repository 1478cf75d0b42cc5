import { isCalendarDate } from "../../grammar/stamp.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import { FUTURE_DATE } from "./catalog/day.ts";
import { DAY_FIXES } from "./catalog/day-titles.ts";
import type { Fix, FixEdit, Place, Rule } from "./check.ts";
import { replace } from "./edits.ts";
import { slotPlace, stampPlace } from "./places.ts";
import { laterDay } from "./stamp-edits.ts";

/** Somewhere it is tomorrow already. */
const DAYS_AHEAD = 1;

/**
 * Says what was logged on a day that is still to come: once for a trip, else on its dated lines. A date that isn't of
 * the calendar is told as that.
 */
export const futureDate: Rule = ({ analysis, report, today }) => {
  if (today === undefined) return;
  const last = laterDay(today, DAYS_AHEAD);
  for (const { trip } of analysis.trips) {
    if (!isCalendarDate(trip.date)) continue;
    if (trip.date > last && trip.events.some(({ line }) => line.clock !== null)) {
      const dated = datedEvents(trip).filter(({ line }) => (line.date ?? "") > last);
      const places = [slotPlace(trip.openerIndex, trip.opener), ...dated.map(datePlace)];
      tell(slotPlace(trip.openerIndex, trip.opener), trip.date, places);
    } else if (trip.date <= last) {
      for (const event of datedEvents(trip)) {
        const date = event.line.date ?? "";
        if (date > last) tell(datePlace(event), date, [datePlace(event)], trip);
      }
    }
  }

  function tell(place: Place, date: string, places: readonly Place[], within?: Trip): void {
    const meant = nearestPast(date, within?.date.slice(0, 4) ?? today?.slice(0, 4) ?? "", last);
    const fixes = meant === undefined ? [] : [writeYears(analysis, date, meant, places)];
    report(FUTURE_DATE, place, { date, today: today ?? "", meant }, { fixes });
  }
};

const datedOfTrip = new WeakMap<Trip, readonly TripEvent[]>();

/** The events of a trip that say their own day of the calendar: hardly ever any. Looked for once for each trip. */
function datedEvents(trip: Trip): readonly TripEvent[] {
  const known =
    datedOfTrip.get(trip) ??
    trip.events.filter(({ line }) => line.date !== null && isCalendarDate(line.date));
  datedOfTrip.set(trip, known);
  return known;
}

function datePlace({ lineIndex, line }: TripEvent): Place {
  const stamp = stampPlace(lineIndex, line);
  return { ...stamp, stop: stamp.start + (line.date?.length ?? 0) };
}

/** The same day of the latest year, from `year` back, in which it is past; a leap day goes back to a leap year. */
function nearestPast(date: string, year: string, last: string): string | undefined {
  for (let back = 0; back < 8; back++) {
    const meant = `${String(Number(year) - back).padStart(4, "0")}${date.slice(4)}`;
    if (meant <= last && isCalendarDate(meant)) return meant;
  }
  return undefined;
}

/** Takes all of a trip's days ahead back by as many years as its own. */
function writeYears(
  { uri, parse }: JournalAnalysis,
  date: string,
  meant: string,
  places: readonly Place[],
): Fix {
  const years = Number(date.slice(0, 4)) - Number(meant.slice(0, 4));
  const edits = places.flatMap((place): FixEdit[] => {
    const typed = parse.journal.lines[place.lineIndex]?.raw.slice(place.start, place.stop) ?? "";
    const year = Number(typed.slice(0, 4)) - years;
    return Number.isNaN(year)
      ? []
      : [replace(uri, place, `${String(year).padStart(4, "0")}${typed.slice(4)}`)];
  });
  return { title: DAY_FIXES.write(meant), edits, isPreferred: true };
}
