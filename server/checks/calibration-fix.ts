/** The fix that writes what a trip's readings say into the gear book. */
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import type { Trip } from "../model/trip.ts";
import { addToBook } from "./add-to-book.ts";
import { DAY_FIXES } from "./catalog/day-titles.ts";
import type { Fix } from "./check.ts";

/** What was fitted on a trip. */
export interface FittedOfTrip {
  readonly rig: string;
  /** The day from which it holds. */
  readonly date: string;
  readonly readings: number;
  /** The gear-book line; undefined where there is no fit. */
  readonly text: string | undefined;
}

/** None where the book has a line of that day already: which of two would hold is the captain's to say. */
export function calibrationFixes(
  analysis: JournalAnalysis,
  { gear, boat }: Trip,
  { rig, date, readings, text }: FittedOfTrip,
): Fix[] {
  if (text === undefined || gear.calibrations.get(rig)?.origin.from === date) return [];
  const edit = addToBook(analysis, boat, "calibrate", text);
  if (edit === undefined) return [];
  return [{ title: DAY_FIXES.calibrate(readings), edits: [edit], isPreferred: true }];
}
