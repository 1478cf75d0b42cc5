/** Depth lines whose depth leans on a speed, in the order of time. */

import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { LineDepth } from "../analysis/line-depth.ts";
import { findItem } from "../model/quantities.ts";
import { misplacedLines } from "../model/time-order.ts";

/**
 * Lines with a clock whose rig is towed; a cast or jigged rod hangs still. None where the time of a speed is in doubt:
 * that is said already.
 */
export function trolledDepths({ trip, timeline, depths }: TripAnalysis): LineDepth[] {
  const rank = new Map(timeline.ordered.map((event, index) => [event, index]));
  const misplaced = misplacedLines(trip);
  const isReadingMisplaced = trip.events.some(
    (event) => misplaced.has(event.lineIndex) && findItem(event.line, "speed") !== undefined,
  );
  if (isReadingMisplaced) return [];
  return depths
    .filter((depth) => {
      if (misplaced.has(depth.event.lineIndex)) return false;
      const kind = trip.gear.rigs.get(depth.rig)?.kind;
      return depth.event.instant !== null && kind !== undefined && kind !== "jig";
    })
    .sort((a, b) => (rank.get(a.event) ?? 0) - (rank.get(b.event) ?? 0));
}
