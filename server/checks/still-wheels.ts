/** Speed wheels that stand still while the boat moves. */
import type { CurrentLook } from "../analysis/current-looks.ts";
import { goingByLine } from "../analysis/going.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";

/** Speeds of nothing through the water while the boat moved over ground. */
export function stillWheels({ trip, timeline, water }: TripAnalysis): CurrentLook[] {
  const looks = water.looks.filter(({ waterMS }) => waterMS === 0);
  if (looks.length === 0) return [];
  const going = goingByLine(trip, timeline);
  const leastMS = thresholdOf(trip.gear, THRESHOLDS.slowTroll);
  return looks.filter((look) => look.groundMS >= leastMS && going.get(look.water.lineIndex)?.isTrolling);
}
