import { calibrationLine } from "../analysis/calibration-line.ts";
import type { RigReading } from "../analysis/calibration-readings.ts";
import { type CounterDrift, counterDrifts } from "../analysis/counter-drift.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import type { Trip } from "../model/trip.ts";
import { addToBook } from "./add-to-book.ts";
import { COUNTER_DRIFT } from "./catalog/day.ts";
import { DAY_FIXES, DAY_RELATED } from "./catalog/day-titles.ts";
import type { Fix, Place, Rule } from "./check.ts";
import { itemPlace, slotPlace } from "./places.ts";

/** Flags a counter that the readings of a trip find off, at the last of them. */
export const counterDrift: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    const { gear } = day.trip;
    for (const drift of counterDrifts(day, thresholdOf(gear, THRESHOLDS.counterDrift))) {
      const { readings, rig } = drift.calibration;
      const places = readings.map(placeOf);
      const last = places.pop();
      if (last === undefined) continue;
      const related = places.map((place) => ({ uri: analysis.uri, message: DAY_RELATED.reading, ...place }));
      const isCalibrated = readings[0].task.calibration?.counterScale !== undefined;
      const data = { ...drift, gear, rig, isCalibrated, readings: readings.length };
      report(COUNTER_DRIFT, last, data, { related, fixes: fixesFor(analysis, day.trip, drift) });
    }
  }
};

function placeOf({ event: { line, lineIndex }, reading }: RigReading): Place {
  if (reading.as.endsWith("behind")) return itemPlace(lineIndex, line, "behind");
  return line.verb === "probe" ? itemPlace(lineIndex, line, "depth") : slotPlace(lineIndex, line);
}

/** None where the book has a line of that day already: which of two would hold is the captain's to say. */
function fixesFor(analysis: JournalAnalysis, { gear, boat }: Trip, { calibration }: CounterDrift): Fix[] {
  const text = calibrationLine(gear, calibration);
  if (text === undefined || gear.calibrations.get(calibration.rig)?.origin.from === calibration.date)
    return [];
  const edit = addToBook(analysis, boat, "calibrate", text);
  if (edit === undefined) return [];
  return [{ title: DAY_FIXES.calibrate(calibration.readings.length), edits: [edit], isPreferred: true }];
}
