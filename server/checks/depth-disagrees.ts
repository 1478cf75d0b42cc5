import { calibrationReadings } from "../analysis/calibration-readings.ts";
import { type ExpectedReading, expectedReading, explain } from "../analysis/expected-reading.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { DEPTH_DISAGREES } from "./catalog/day.ts";
import type { Rule } from "./check.ts";
import { itemPlace } from "./places.ts";
import { relatedOut } from "./related-out.ts";

/**
 * An 80 % range and the probe's error are this many times as wide where one reading in a hundred lies outside: a
 * whole day is looked at, and a false alarm costs trust.
 */
const SURE = 2;

/** Flags the probe depth of each rig and day that is farthest from the computed one, where it is too far. */
export const depthDisagrees: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    const { gear } = day.trip;
    for (const worst of farthest(day, thresholdOf(gear, THRESHOLDS.depthDisagrees))) {
      const { reading, measuredM, depthM, lowM, highM } = worst;
      const { event, rig, counterM, speed } = reading;
      const data = {
        gear,
        rig: rig.name,
        measuredM,
        expectedM: depthM,
        lowM,
        highM,
        outM: counterM,
        speedMS: speed.value,
        instead: explain(reading),
      };
      const related = relatedOut(analysis, day, event, rig.name);
      report(DEPTH_DISAGREES, itemPlace(event.lineIndex, event.line, "depth"), data, { related });
    }
  }
};

/** The farthest off of each rig, beyond what chance and the waves leave. */
function farthest(day: TripAnalysis, leastM: number): ExpectedReading[] {
  const worst = new Map<string, ExpectedReading>();
  for (const reading of calibrationReadings(day).used) {
    if (reading.reading.as !== "probe-depth") continue;
    const expected = expectedReading(reading);
    if (expected === undefined || expected.offAtMost < SURE || isDeeperThanOut(expected)) continue;
    if (Math.abs(expected.measuredM - expected.depthM) < leastM || expected.off < SURE) continue;
    const name = reading.rig.name;
    if (expected.off > (worst.get(name)?.off ?? 0)) worst.set(name, expected);
  }
  return [...worst.values()];
}

/** `deeper-than-out` speaks of those. */
function isDeeperThanOut({ reading: { counterM, task }, measuredM }: ExpectedReading): boolean {
  const { counterScale, counterOffsetM, probeAboveBallM = 0 } = task.downrigger;
  return measuredM + probeAboveBallM > Math.max(counterM, counterScale * counterM + counterOffsetM);
}
