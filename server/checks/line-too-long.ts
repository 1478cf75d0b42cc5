import type { Gear, Rig } from "../model/gear-types.ts";
import { measureOf } from "../model/quantities.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import type { TripEvent } from "../model/trip.ts";
import { LINE_TOO_LONG } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { CheckContext, LineRule, RelatedPlace } from "./check.ts";
import { itemPlace } from "./places.ts";

const SAYS_OUT = new Set(["set", "move", "again", "change"]);

/** Rounding: ten colors and 300 ft are the same length. */
const SLACK_M = 0.15;

/** Flags more line out than the rig holds, where the book names no backing that the rest could be, and more than is ever let out. */
export const lineTooLong: LineRule = (context, { gear }, event) => {
  const rig = gear.rigs.get(event.rig ?? "");
  if (rig !== undefined && SAYS_OUT.has(event.line.verb)) flagRig(context, gear, event, rig);
};

function flagRig({ report }: CheckContext, gear: Gear, event: TripEvent, rig: Rig): void {
  const outM = measureOf(event.line, "out", "length", gear.defaults);
  const { holdsM, backing } = rig;
  if (outM === undefined) return;
  const isHeld = holdsM !== undefined && outM <= holdsM + SLACK_M;
  if (isHeld) return;
  const place = itemPlace(event.lineIndex, event.line, "out");
  const data = { gear, rig: rig.name, outM, isLeadcore: rig.kind === "leadcore" };
  if (holdsM !== undefined && backing === undefined) {
    report(LINE_TOO_LONG, place, { ...data, holdsM }, { related: [whereItHolds(rig)] });
  } else if (outM > thresholdOf(gear, THRESHOLDS.longestOut) + SLACK_M) {
    report(LINE_TOO_LONG, place, { ...data, holdsM: undefined }, { severity: "warning" });
  }
}

function whereItHolds({ origin }: Rig): RelatedPlace {
  return {
    uri: origin.uri,
    message: DAY_RELATED.holds,
    ...itemPlace(origin.lineIndex, origin.line, "holds"),
  };
}
