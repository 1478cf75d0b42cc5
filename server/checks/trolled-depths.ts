/** Depth lines whose depth leans on a speed, in the order of time. */
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { LineDepth } from "../analysis/line-depth.ts";

/** Lines with a clock whose rig is towed; a cast or jigged rod hangs still. */
export function trolledDepths({ trip, timeline, depths }: TripAnalysis): LineDepth[] {
  const rank = new Map(timeline.ordered.map((event, index) => [event, index]));
  return depths
    .filter((depth) => {
      const kind = trip.gear.rigs.get(depth.rig)?.kind;
      return depth.event.instant !== null && kind !== undefined && kind !== "jig";
    })
    .sort((a, b) => (rank.get(a.event) ?? 0) - (rank.get(b.event) ?? 0));
}
