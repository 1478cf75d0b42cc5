import type { TempPoint } from "../analysis/temperature-points.ts";
import { densityAt } from "../analysis/water-density.ts";
import { THRESHOLDS } from "../model/thresholds.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import { PROFILE_UPSIDE_DOWN } from "./catalog/day.ts";
import type { Rule } from "./check.ts";

/** Two probes read within a degree F of each other (judgement). */
const ALIKE_C = 1 / 1.8 + 0.01;
/** Lighter differences are within a reading's error, kg/m3 (judgement). */
const LEAST_KG_M3 = 0.02;

/** Flags heavier water above lighter in one lowered profile; the first place only. Water is heaviest near 39 F. */
export const profileUpsideDown: Rule = ({ analysis, report }) => {
  for (const { trip, water } of analysis.trips) {
    for (const event of trip.events) {
      if (event.line.verb !== "profile") continue;
      const found = inversion(trip, pointsOf(water.points, event));
      if (found === undefined) continue;
      const [upper, lower] = found;
      const item = event.line.items[lower.item ?? 0];
      const place = { lineIndex: event.lineIndex, start: item?.start ?? 0, stop: item?.stop ?? 0 };
      report(PROFILE_UPSIDE_DOWN, place, {
        gear: trip.gear,
        upperC: upper.tempC,
        upperM: upper.depthM,
        lowerC: lower.tempC,
        lowerM: lower.depthM,
      });
    }
  }
};

function pointsOf(points: readonly TempPoint[], event: TripEvent): TempPoint[] {
  const isWater = ({ tempC }: TempPoint): boolean =>
    tempC >= THRESHOLDS.coldestPossible.defaultSi && tempC <= THRESHOLDS.warmestPossible.defaultSi;
  return points
    .filter((point) => point.event === event && isWater(point))
    .sort((a, b) => a.depthM - b.depthM);
}

/** The first two neighbors of which the upper is the heavier by more than readings err. */
function inversion({ gear }: Trip, points: readonly TempPoint[]): [TempPoint, TempPoint] | undefined {
  for (const [i, lower] of points.entries()) {
    const upper = points[i - 1];
    if (upper === undefined || upper.depthM === lower.depthM) continue;
    const heavier = densityAt(upper.tempC, gear.water) - densityAt(lower.tempC, gear.water);
    if (heavier > LEAST_KG_M3 && Math.abs(upper.tempC - lower.tempC) > ALIKE_C) return [upper, lower];
  }
  return undefined;
}
