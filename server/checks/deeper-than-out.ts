import { beyondCable } from "../analysis/beyond-cable.ts";
import { bottomNear } from "../analysis/bottom.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { measureOf } from "../model/quantities.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { meantMs } from "../model/time-order.ts";
import type { TripEvent } from "../model/trip.ts";
import { type CableAt, cableAt } from "./cable-at.ts";
import { DEEPER_THAN_OUT } from "./catalog/day.ts";
import type { Place, Rule } from "./check.ts";
import { itemPlace, slotPlace } from "./places.ts";
import { relatedOut } from "./related-out.ts";

/** Feet are no whole numbers in meters. */
const ROUNDING_M = 1e-6;

interface Measured {
  readonly what: "probe" | "bottom";
  readonly depthM: number;
  /** How far above the ball it was measured; the ball hangs that much deeper, at most. */
  readonly probeAboveBallM: number;
  /** The sounder is under the boat and the ball behind it: on a slope they differ. */
  readonly isElsewhere: boolean;
  readonly place: Place;
}

/** Flags a depth read at the probe, or of the bottom where the ball touched it, that is beyond the cable out. */
export const deeperThanOut: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    const { gear } = day.trip;
    for (const event of day.trip.events) {
      const cable = measuresDepth(event) ? cableAt(day, event) : undefined;
      const measured = cable === undefined ? undefined : measuredDepth(day, event, cable);
      if (cable === undefined || measured === undefined) continue;
      if (measured.depthM < 0 || cable.counterM <= 0) continue;
      const outM = Math.max(cable.counterM, cable.outM);
      const ballM = measured.depthM + measured.probeAboveBallM;
      const { excessM, isBeyond } = beyondCable(gear, ballM, outM);
      const isWithin = excessM <= thresholdOf(gear, THRESHOLDS.counterRounding) + ROUNDING_M;
      if (isWithin || (measured.isElsewhere && !isBeyond)) continue;
      const { what, depthM, probeAboveBallM, isElsewhere } = measured;
      const isError = isBeyond && !isElsewhere;
      const data = { gear, what, depthM, probeAboveBallM, outM: cable.counterM, isBeyond: isError };
      const related = relatedOut(analysis, day, event, cable.rig.name);
      report(DEEPER_THAN_OUT, measured.place, data, { severity: isError ? "error" : "warning", related });
    }
  }
};

function measuresDepth({ line }: TripEvent): boolean {
  return line.verb === "probe" || line.verb === "touch";
}

function measuredDepth({ trip }: TripAnalysis, event: TripEvent, { rig }: CableAt): Measured | undefined {
  const { line, lineIndex } = event;
  if (line.verb === "probe") {
    const depthM = measureOf(line, "depth", "length", trip.gear.defaults);
    const probeAboveBallM = rig.probeAboveBallM ?? 0;
    const place = itemPlace(lineIndex, line, "depth");
    return depthM === undefined
      ? undefined
      : { what: "probe", depthM, probeAboveBallM, isElsewhere: false, place };
  }
  const own = measureOf(line, "bottom", "length", trip.gear.defaults);
  const timeMs = meantMs(trip, event);
  const read = timeMs === null ? undefined : bottomNear(trip, timeMs)?.waterM;
  const depthM = own ?? read;
  const place = own === undefined ? slotPlace(lineIndex, line) : itemPlace(lineIndex, line, "bottom");
  return depthM === undefined
    ? undefined
    : { what: "bottom", depthM, probeAboveBallM: 0, isElsewhere: own === undefined, place };
}
