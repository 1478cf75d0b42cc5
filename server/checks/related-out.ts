/** Where it is said how much cable is out, for findings that speak of it at another line. */
import type { JournalAnalysis, TripAnalysis } from "../analysis/journal-analysis.ts";
import { findItem } from "../model/quantities.ts";
import type { TripEvent } from "../model/trip.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { RelatedPlace } from "./check.ts";
import { itemPlace } from "./places.ts";

/** The line before an event that says how much of a rig's cable is out; none where the event says so itself. */
export function relatedOut(
  { uri }: JournalAnalysis,
  { timeline }: TripAnalysis,
  event: TripEvent,
  cable: string,
): RelatedPlace[] {
  if (event.rig === cable && findItem(event.line, "out") !== undefined) return [];
  const before = timeline.ordered.slice(0, timeline.ordered.indexOf(event));
  const said = before.findLast((one) => one.rig === cable && findItem(one.line, "out") !== undefined);
  if (said === undefined) return [];
  return [{ uri, message: DAY_RELATED.out, ...itemPlace(said.lineIndex, said.line, "out") }];
}
