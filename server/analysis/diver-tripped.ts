/** Whether a diver still pulls: a fish trips it, and it stays tripped until it is put back. */
import type { Timeline } from "../model/timeline.ts";
import type { TripEvent } from "../model/trip.ts";

const TRIPS = new Set(["strike", "catch", "lost", "broke"]);
/** Lines that find a diver as it was left. */
const LEAVES = new Set(["move", "probe", "touch"]);
const RESETS = new Set(["set", "again", "change", "pull"]);

/** The line that tripped a rig's diver before an event, where nothing has put it back since. */
export function trippedBy({ ordered }: Timeline, event: TripEvent): TripEvent | undefined {
  if (!LEAVES.has(event.line.verb)) return undefined;
  const before = ordered.slice(0, ordered.indexOf(event));
  const last = before.findLast(
    ({ rig, line }) => rig === event.rig && (TRIPS.has(line.verb) || RESETS.has(line.verb)),
  );
  return last !== undefined && TRIPS.has(last.line.verb) ? last : undefined;
}
