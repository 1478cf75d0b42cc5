import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { Rig } from "../model/gear-types.ts";
import { measureOf } from "../model/quantities.ts";
import type { TripEvent } from "../model/trip.ts";
import { LINE_TOO_LONG } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { CheckContext, RelatedPlace, Rule } from "./check.ts";
import { itemPlace } from "./places.ts";

const SAYS_OUT = new Set(["set", "move", "again", "change"]);

/** Rounding: ten colors and 300 ft are the same length. */
const SLACK_M = 0.15;

/** Flags more line out than the rig holds, where the book names no backing that the rest could be. */
export const lineTooLong: Rule = (context) => {
  for (const day of context.analysis.trips) {
    for (const event of day.trip.events) {
      const rig = day.trip.gear.rigs.get(event.rig ?? "");
      if (rig !== undefined && SAYS_OUT.has(event.line.verb)) flagRig(context, day, event, rig);
    }
  }
};

function flagRig({ report }: CheckContext, { trip }: TripAnalysis, event: TripEvent, rig: Rig): void {
  const outM = measureOf(event.line, "out", "length", trip.gear.defaults);
  const { holdsM, backing } = rig;
  if (outM === undefined || holdsM === undefined || backing !== undefined || outM <= holdsM + SLACK_M) return;
  const data = { gear: trip.gear, rig: rig.name, outM, holdsM, isLeadcore: rig.kind === "leadcore" };
  const place = itemPlace(event.lineIndex, event.line, "out");
  report(LINE_TOO_LONG, place, data, { related: [whereItHolds(rig)] });
}

function whereItHolds({ origin }: Rig): RelatedPlace {
  return {
    uri: origin.uri,
    message: DAY_RELATED.holds,
    ...itemPlace(origin.lineIndex, origin.line, "holds"),
  };
}
