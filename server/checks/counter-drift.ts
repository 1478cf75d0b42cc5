import { calibrationLine } from "../analysis/calibration-line.ts";
import type { RigReading } from "../analysis/calibration-readings.ts";
import { counterDrifts } from "../analysis/counter-drift.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { calibrationFixes } from "./calibration-fix.ts";
import { COUNTER_DRIFT } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { Place, Rule } from "./check.ts";
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
      const { calibration } = drift;
      const text = calibrationLine(gear, calibration);
      const fixes = calibrationFixes(analysis, day.trip, { ...calibration, readings: readings.length, text });
      const data = { ...drift, gear, rig, isCalibrated, readings: readings.length };
      report(COUNTER_DRIFT, last, data, { related, fixes });
    }
  }
};

function placeOf({ event: { line, lineIndex }, reading }: RigReading): Place {
  if (reading.as.endsWith("behind")) return itemPlace(lineIndex, line, "behind");
  return line.verb === "probe" ? itemPlace(lineIndex, line, "depth") : slotPlace(lineIndex, line);
}
