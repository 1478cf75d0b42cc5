import type { Item } from "../../grammar/journal.ts";
import { beyondCable } from "../analysis/beyond-cable.ts";
import { bottomNear } from "../analysis/bottom.ts";
import { defaultUnit, measureOf, valueRange } from "../model/quantities.ts";
import { meantMs } from "../model/time-order.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import { DEEPER_THAN_BOTTOM } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { CheckContext, Rule } from "./check.ts";
import { itemPlace } from "./places.ts";

/** Sounders show whole feet (judgement). */
const ROUNDING_M = 0.4;

/** Flags marks below the bottom on their own line, and profiles and probes below the bottom of their minute. */
export const deeperThanBottom: Rule = (context) => {
  for (const { trip } of context.analysis.trips) {
    for (const event of trip.events) {
      if (event.line.verb === "sonar") checkMarks(context, trip, event);
      else if (event.line.verb === "profile" || event.line.verb === "probe") checkDepth(context, trip, event);
    }
  }
};

function checkMarks({ report }: CheckContext, { gear }: Trip, { line, lineIndex }: TripEvent): void {
  const bottomM = measureOf(line, "bottom", "length", gear.defaults);
  if (bottomM === undefined || bottomM <= 0) return;
  for (const item of line.items) {
    const { word } = item;
    if (word !== "marks" && word !== "bait") continue;
    const depthM = valueRange(item.value, "length", defaultUnit("length", line.verb, gear.defaults))?.high;
    if (depthM === undefined || depthM <= bottomM + ROUNDING_M) continue;
    const place = { lineIndex, start: item.start, stop: item.stop };
    report(DEEPER_THAN_BOTTOM, place, { gear, what: word, depthM, bottomM, clock: undefined });
  }
}

function checkDepth({ analysis, report }: CheckContext, trip: Trip, event: TripEvent): void {
  const { line, lineIndex } = event;
  const { gear } = trip;
  const timeMs = event.instant === null ? null : meantMs(trip, event);
  const deepest = line.items.map((item) => ({ item, depthM: depthOf(trip, event, item) })).sort(byDepth)[0];
  if (timeMs === null || deepest?.depthM === undefined) return;
  const { item, depthM } = deepest;
  const bottom = bottomNear(trip, timeMs);
  if (bottom === undefined || bottom.waterM <= 0 || !beyondCable(gear, depthM, bottom.waterM).isBeyond)
    return;
  const what = line.verb === "probe" ? "probe" : "profile";
  const { event: read, shownM: bottomM } = bottom;
  const clock = read.line.clock?.slice(0, 5);
  const place = { lineIndex, start: item.start, stop: item.stop };
  const related = [
    { uri: analysis.uri, message: DAY_RELATED.bottom, ...itemPlace(read.lineIndex, read.line, "bottom") },
  ];
  report(DEEPER_THAN_BOTTOM, place, { gear, what, depthM, bottomM, clock }, { related });
}

interface DepthOn {
  readonly item: Item;
  readonly depthM: number | undefined;
}

const byDepth = (a: DepthOn, b: DepthOn): number => (b.depthM ?? -1) - (a.depthM ?? -1);

/** The depth that a point of a profile or a probe's `depth` states. */
function depthOf({ gear }: Trip, { line }: TripEvent, { word, value }: Item): number | undefined {
  const unit = defaultUnit("length", line.verb, gear.defaults);
  if (value.kind === "point")
    return valueRange({ kind: "quantity", parts: value.depth }, "length", unit)?.low;
  return word === "depth" ? valueRange(value, "length", unit)?.low : undefined;
}
