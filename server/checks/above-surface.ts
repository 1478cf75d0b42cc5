import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { DepthPlace, LineDepth } from "../analysis/line-depth.ts";
import { findItem, measureOf } from "../model/quantities.ts";
import { cableRigOf, type TripEvent } from "../model/trip.ts";
import { ABOVE_SURFACE } from "./catalog/day.ts";
import type { CheckContext, Rule } from "./check.ts";
import { itemPlace } from "./places.ts";
import { relatedOut } from "./related-out.ts";
import { speedsOf } from "./speeds-of.ts";

const SAYS_OUT = new Set(["set", "move", "again", "change"]);

/** Flags nothing out, a clip above the water, and what the model brings to the surface. One of these for a line. */
export const aboveSurface: Rule = (context) => {
  for (const day of context.analysis.trips) {
    const depths = new Map(day.depths.map((depth) => [depth.event.lineIndex, depth]));
    for (const event of day.trip.events) {
      if (!SAYS_OUT.has(event.line.verb) || flagOut(context, day, event)) continue;
      const depth = depths.get(event.lineIndex);
      if (!flagClip(context, day, event) && depth !== undefined) flagModel(context, day, depth);
    }
  }
};

function flagOut({ report }: CheckContext, { trip }: TripAnalysis, event: TripEvent): boolean {
  const outM = measureOf(event.line, "out", "length", trip.gear.defaults);
  if (outM === undefined || outM > 0) return false;
  const { line, lineIndex } = event;
  const out = findItem(line, "out");
  const typed = out === undefined ? "" : line.raw.slice(out.valueStart, out.stop);
  report(ABOVE_SURFACE, itemPlace(lineIndex, line, "out"), { kind: "out", gear: trip.gear, typed });
  return true;
}

/** A clip as far above the ball as there is cable; said at the line that says either. */
function flagClip(context: CheckContext, day: TripAnalysis, event: TripEvent): boolean {
  const { line, lineIndex } = event;
  const word = ["above", "out"].find((one) => findItem(line, one) !== undefined);
  const rods = day.timeline.spreadAfter.get(lineIndex);
  const cable = cableRigOf(day.trip.gear, event.rig ?? "")?.name ?? "";
  const outM = rods?.get(cable)?.setting.outM;
  if (word === undefined || rods === undefined || outM === undefined) return false;
  for (const [rig, { setting, isClipped }] of rods) {
    const { aboveM } = setting;
    if (!isClipped || aboveM === undefined || aboveM < outM) continue;
    const data = { kind: "above", gear: day.trip.gear, rig, aboveM, outM } as const;
    const related = relatedOut(context.analysis, day, event, cable);
    context.report(ABOVE_SURFACE, itemPlace(lineIndex, line, word), data, { related });
    return true;
  }
  return false;
}

/** A lure's own pull is a guess: only doubted. */
function flagModel({ report }: CheckContext, { trip }: TripAnalysis, depth: LineDepth): void {
  const { event, speed } = depth;
  const isUp = (place: DepthPlace | null): boolean => place !== null && place.depthM <= 0;
  const what = isUp(depth.ball) ? "ball" : isUp(depth.lure) ? "lure" : undefined;
  if (what === undefined || speed === undefined) return;
  const data = { kind: "model", gear: trip.gear, what, speeds: speedsOf(speed) } as const;
  const severity = what === "ball" ? "error" : "warning";
  report(ABOVE_SURFACE, itemPlace(event.lineIndex, event.line, "out"), data, { severity });
}
