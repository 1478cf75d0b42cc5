/** Computed lines as they go into JSON: SI, lines from 0, the clock on board. */
import type { TripAnalysis } from "../../server/analysis/journal-analysis.ts";
import type { DepthPlace, LineDepth } from "../../server/analysis/line-depth.ts";
import { isKnownZone, localClock } from "../../server/model/local-time.ts";
import type { TripEvent } from "../../server/model/trip.ts";
import type { DepthLineJson, DepthPlaceJson } from "./output-schemas.ts";

/** One line's depths. */
export function depthLineJson({ trip }: TripAnalysis, depth: LineDepth): DepthLineJson {
  const { event, setting } = depth;
  return {
    line: event.lineIndex,
    trip: trip.date,
    verb: event.line.verb,
    time: clockOf(event, trip.zone),
    instant: instantOf(event, trip.zone),
    rig: depth.rig,
    outM: setting.outM ?? null,
    ball: placeJson(depth.ball),
    lure: placeJson(depth.lure),
    why: depth.why ?? depth.whyNoLure,
  };
}

function placeJson(place: DepthPlace | null): DepthPlaceJson | null {
  if (place === null) return null;
  const { depthM, lowM, highM, behindM } = place;
  return { depthM, lowM, highM, behindM };
}

/** The clock on board, `05:14`; null for a line without one. */
export function clockOf(event: TripEvent, zone: string | undefined): string | null {
  const { clock, offset } = event.line;
  if (clock === null || event.instant === null) return null;
  return offset !== null && isZone(zone) ? localClock(event.instant.utcMs, zone) : clock.slice(0, 5);
}

/** The instant, where the zone or an offset on the line says which one it is. */
function instantOf(event: TripEvent, zone: string | undefined): string | null {
  if (event.instant === null) return null;
  return event.line.offset !== null || isZone(zone) ? new Date(event.instant.utcMs).toISOString() : null;
}

/** An instant of a trip's clock as text; null where its zone isn't known. */
export function instantText(utcMs: number | null, zone: string | undefined): string | null {
  return utcMs === null || !isZone(zone) ? null : new Date(utcMs).toISOString();
}

function isZone(zone: string | undefined): zone is string {
  return zone !== undefined && isKnownZone(zone);
}
