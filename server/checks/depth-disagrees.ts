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
import { notSurelyExpected } from "../analysis/surely-expected.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { calibrationFixes } from "./calibration-fix.ts";
import { DEPTH_DISAGREES } from "./catalog/day.ts";
import type { CheckContext, Fix, Rule } from "./check.ts";
import { itemPlace, slotPlace } from "./places.ts";
import { relatedOut } from "./related-out.ts";

/**
 * An 80 % range and the probe's error are this many times as wide where one reading in a hundred lies outside: a
 * whole day is looked at, and a false alarm costs trust.
 */
const SURE = 2;

/** Flags the measured depth of each rig and day that is farthest from the computed one, where it is too far. */
export const depthDisagrees: Rule = (context) => {
  const { analysis } = context;
  for (const day of analysis.trips) {
    const leastM = thresholdOf(day.trip.gear, THRESHOLDS.depthDisagrees);
    const { used, ofLines } = calibrationReadings(day);
    const probes = used.filter(isProbeDepth);
    const probed = notSurelyExpected(probes, leastM, SURE).flatMap(expectedOf);
    for (const worst of farthest(probed, leastM)) {
      const instead = explain(worst.reading);
      tell(context, day, worst, { instead, isLine: false, fixes: [] });
    }
    const lines = ofLines.filter(({ reading }) => reading.measuredM >= 0);
    for (const worst of farthest(lines.flatMap(expectedOfLine), leastM)) {
      const instead = explainLine(worst.reading);
      tell(context, day, worst, { instead, isLine: true, fixes: lineFixes(analysis, day, worst.reading) });
    }
  }
};

/** A depth above the surface is a slip, and is told as one. */
function isProbeDepth({ reading }: RigReading): boolean {
  return reading.as === "probe-depth" && reading.measuredM >= 0;
}

/** What a finding says besides the depths. */
interface Told {
  readonly instead: Explanations;
  readonly isLine: boolean;
  readonly fixes: readonly Fix[];
}

function tell(
  { analysis, report }: CheckContext,
  day: TripAnalysis,
  { reading, measuredM, depthM, lowM, highM }: ExpectedReading,
  { instead, isLine, fixes }: Told,
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
  const related = relatedOut(analysis, day, event, rig.name);
  report(DEPTH_DISAGREES, place, data, { related, fixes });
}

/** The farthest off of each rig, beyond what chance and the waves leave. */
function farthest<Of extends AnyReading>(
  expected: readonly ExpectedReading<Of>[],
  leastM: number,
): ExpectedReading<Of>[] {
  const worst = new Map<string, ExpectedReading<Of>>();
  for (const one of expected) {
    if (one.offAtMost < SURE || Math.abs(one.measuredM - one.depthM) < leastM || one.off < SURE) continue;
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
