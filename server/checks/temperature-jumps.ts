import { isCrossing } from "../analysis/crossing-points.ts";
import { repeatedDepths, type TempPoint } from "../analysis/temperature-points.ts";
import type { Gear } from "../model/gear-types.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { TEMP_IMPLAUSIBLE } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { CheckContext, Place, Rule } from "./check.ts";
import { itemPlace } from "./places.ts";
import { clockWords } from "./words.ts";

/** Readings nearer than this in depth are of one water, m (judgement). */
const SAME_DEPTH_M = 1;

/** Flags temperatures of one depth that jump within a short time, and points of one profile that cross. */
export const temperatureJumps: Rule = (context) => {
  for (const { trip, water } of context.analysis.trips) {
    const { points } = water;
    const repeated = repeatedDepths(points);
    reportRepeated(context, trip.gear, [...repeated]);
    const limitC = thresholdOf(trip.gear, THRESHOLDS.temperatureJump) / 1.8;
    const soonMs = 1000 * thresholdOf(trip.gear, THRESHOLDS.temperatureJumpTime);
    const sound = points.filter((point) => !repeated.has(point));
    sound.forEach((point, i) => {
      const other = sound.slice(0, i).findLast((before) => isSameWater(before, point, soonMs));
      if (other === undefined || Math.abs(other.tempC - point.tempC) < limitC - 1e-9) return;
      const { gear, zone } = trip;
      const clock = clockWords(other.timeMs, zone);
      const data = {
        kind: "jump" as const,
        gear,
        tempC: point.tempC,
        otherC: other.tempC,
        depthM: point.depthM,
        clock,
      };
      const related = [{ uri: context.analysis.uri, message: DAY_RELATED.reading, ...placeOf(other) }];
      context.report(TEMP_IMPLAUSIBLE, placeOf(point), data, { related });
    });
  }
};

function isSameWater(before: TempPoint, now: TempPoint, soonMs: number): boolean {
  if (before.event === now.event || now.timeMs - before.timeMs > soonMs) return false;
  return Math.abs(before.depthM - now.depthM) < SAME_DEPTH_M;
}

/** Reported at the second of the two. */
function reportRepeated({ report }: CheckContext, gear: Gear, repeated: readonly TempPoint[]): void {
  repeated.forEach((point, i) => {
    const other = repeated.slice(0, i).find((one) => one.event === point.event && isCrossing(one, point));
    if (other === undefined) return;
    const data = {
      kind: "repeated" as const,
      gear,
      tempC: point.tempC,
      otherC: other.tempC,
      depthM: point.depthM,
      apartM: Math.abs(point.depthM - other.depthM),
    };
    report(TEMP_IMPLAUSIBLE, placeOf(point), data);
  });
}

function placeOf(point: TempPoint): Place {
  const { event, source } = point;
  if (source !== "profile") return itemPlace(event.lineIndex, event.line, "temp");
  const item = event.line.items[point.item ?? 0];
  return { lineIndex: event.lineIndex, start: item?.start ?? 0, stop: item?.stop ?? 0 };
}
