import { lineCalibrationLine } from "../analysis/calibration-line.ts";
import { type AnyReading, calibrationReadings, type RigReading } from "../analysis/calibration-readings.ts";
import {
  type ExpectedReading,
  type Explanations,
  expectedLineReading,
  expectedReading,
  explain,
  explainLine,
} from "../analysis/expected-reading.ts";
import type { JournalAnalysis, TripAnalysis } from "../analysis/journal-analysis.ts";
import { calibrateLines } from "../analysis/line-calibration.ts";
import type { LineReading } from "../analysis/line-readings.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { calibrationFixes } from "./calibration-fix.ts";
import { DEPTH_DISAGREES } from "./catalog/day.ts";
import type { CheckContext, Fix, Rule } from "./check.ts";
import { itemPlace, slotPlace } from "./places.ts";

/**
 * An 80 % range and the probe's error are this many times as wide where one reading in a hundred lies outside: a
 * whole day is looked at, and a false alarm costs trust.
 */
const SURE = 2;

/** Flags the measured depth of each rig and day that is farthest from the computed one, where it is too far. */
export const depthDisagrees: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    const leastM = thresholdOf(day.trip.gear, THRESHOLDS.depthDisagrees);
    const { used, ofLines } = calibrationReadings(day);
    const probed = used.filter(({ reading }) => reading.as === "probe-depth").flatMap(expectedOf);
    for (const worst of farthest(probed, leastM)) tell(report, worst, explain(worst.reading), false, []);
    for (const worst of farthest(ofLines.flatMap(expectedOfLine), leastM))
      tell(report, worst, explainLine(worst.reading), true, lineFixes(analysis, day, worst.reading));
  }
};

function tell(
  report: CheckContext["report"],
  { reading, measuredM, depthM, lowM, highM }: ExpectedReading,
  instead: Explanations,
  isLine: boolean,
  fixes: readonly Fix[],
): void {
  const { event, rig, counterM, speed, gear } = reading;
  const isProbe = reading.reading.as === "probe-depth";
  const hasBottom = event.line.items.some(({ word }) => word === "bottom");
  const place = isProbe
    ? itemPlace(event.lineIndex, event.line, "depth")
    : hasBottom
      ? itemPlace(event.lineIndex, event.line, "bottom")
      : slotPlace(event.lineIndex, event.line);
  const data = {
    gear,
    rig: rig.name,
    what: isProbe ? ("probe" as const) : ("touch" as const),
    isLine,
    measuredM,
    expectedM: depthM,
    lowM,
    highM,
    outM: counterM,
    speedMS: speed.value,
    instead,
  };
  report(DEPTH_DISAGREES, place, data, { fixes });
}

/** The farthest off of each rig, beyond what chance and the waves leave. */
function farthest<Of extends AnyReading>(
  expected: readonly ExpectedReading<Of>[],
  leastM: number,
): ExpectedReading<Of>[] {
  const worst = new Map<string, ExpectedReading<Of>>();
  for (const one of expected) {
    if (one.off < SURE || Math.abs(one.measuredM - one.depthM) < leastM) continue;
    const { name } = one.reading.rig;
    if (one.off > (worst.get(name)?.off ?? 0)) worst.set(name, one);
  }
  return [...worst.values()];
}

/** `deeper-than-out` speaks of depths beyond the cable. */
function expectedOf(reading: RigReading): ExpectedReading<RigReading>[] {
  const { counterM, task, reading: asked } = reading;
  const { counterScale, counterOffsetM, probeAboveBallM = 0 } = task.downrigger;
  const outM = Math.max(counterM, counterScale * counterM + counterOffsetM);
  const expected = asked.measuredM + probeAboveBallM > outM ? undefined : expectedReading(reading);
  return expected === undefined ? [] : [expected];
}

function expectedOfLine(reading: LineReading): ExpectedReading<LineReading>[] {
  const expected = expectedLineReading(reading);
  return expected === undefined ? [] : [expected];
}

/** A line's readings of the day, fitted, unless the one that disagrees is alone against the others. */
function lineFixes(analysis: JournalAnalysis, day: TripAnalysis, worst: LineReading): Fix[] {
  const { trip } = day;
  const { ofLines } = calibrationReadings(day);
  const [fitted] = calibrateLines(ofLines.filter((one) => one.rig.name === worst.rig.name));
  if (fitted === undefined || !fitted.what.fit.ok) return [];
  const { readings } = fitted.what.fit;
  const own = readings.find(({ index }) => fitted.readings[index] === worst);
  if (own === undefined || own.weight < 1) return [];
  const text = lineCalibrationLine(trip.gear, fitted);
  return calibrationFixes(analysis, trip, { ...fitted, readings: readings.length, text });
}
