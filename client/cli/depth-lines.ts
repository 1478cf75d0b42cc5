/** Computed lines as they go into JSON: SI, lines from 0, the clock on board. */
import type { TripAnalysis } from "../../server/analysis/journal-analysis.ts";
import type { DepthPlace, LineDepth } from "../../server/analysis/line-depth.ts";
import { streamOf } from "../../server/analysis/stream-used.ts";
import { isKnownZone, localClock } from "../../server/model/local-time.ts";
import type { TripEvent } from "../../server/model/trip.ts";
import type { DepthLineJson, DepthPlaceJson } from "./output-schemas.ts";

/** The depths of a trip that are shown: of lines set, moved and put back out, and of changes that alter one. */
export function shownDepths({ depths, changeDepths }: TripAnalysis): readonly LineDepth[] {
  if (changeDepths.length === 0) return depths;
  return [...depths, ...changeDepths].sort((a, b) => a.event.lineIndex - b.event.lineIndex);
}

/** One line's depths. */
export function depthLineJson(day: TripAnalysis, depth: LineDepth): DepthLineJson {
  const { trip } = day;
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
    weight: placeJson(depth.weight),
    weightIs: depth.weightIs ?? null,
    lure: placeJson(depth.lure),
    slider: depth.slider,
    sideM: depth.sideM,
    stream: streamJson(depth),
    why: depth.why ?? depth.whyNoLure ?? depth.whyNoBall,
    assumed: [...depth.assumed],
    changes: changesJson(day, depth),
  };
}

/** How fast the water runs past the line at each depth; null without a speed. */
function streamJson({ speed }: LineDepth): DepthLineJson["stream"] {
  if (speed === undefined) return null;
  const { kind, flow } = streamOf(speed);
  const isPieces = flow.type === "piecewise";
  return {
    shape: kind,
    depthsM: isPieces ? [...flow.depthsM] : [0],
    speedsMS: isPieces ? [...flow.speedsMS] : [speed.value],
    thermoclineM: speed.layer?.thermoclineM ?? null,
  };
}

const TEN_FEET_M = 3.048;
const FASTER_MS = 0.2 * 0.44704;

/** What a little more line, a little more speed and other gear of the book would change. */
function changesJson(day: TripAnalysis, depth: LineDepth): DepthLineJson["changes"] {
  const main = depth.ball ?? depth.lure;
  if (main === null || main.onBottom) return null;
  return {
    of: depth.ball === null ? "lure" : "ball",
    moreOut: { byM: TEN_FEET_M, deeperM: main.depthPerOut * TEN_FEET_M },
    faster: { byMS: FASTER_MS, deeperM: main.depthPerSpeed * FASTER_MS },
    gear: day
      .gearChanges(depth)
      .map(({ kind, name, instead, deeperM }) => ({ kind, name, instead, deeperM })),
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
