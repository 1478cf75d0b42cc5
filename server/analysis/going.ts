/** How the boat goes at each line of a trip: what is in the water, and whether it trolls. */
import type { Timeline } from "../model/timeline.ts";
import type { Trip, TripEvent } from "../model/trip.ts";

/** How the boat goes just before a line of the day. */
interface Going {
  /** Something but a cast or jigged rod is in the water, and the boat neither runs nor drifts. */
  readonly isTrolling: boolean;
  /** A fish is on: the boat may be slowed for it. */
  readonly isFishOn: boolean;
}

const ENDS_BITE = new Set(["catch", "lost", "broke", "miss", "again", "set", "pull"]);

const known = new WeakMap<readonly TripEvent[], ReadonlyMap<number, Going>>();

/** How the boat goes at each line with a clock, by line index; found once for a trip's lines in the order of time. */
export function goingByLine(trip: Trip, { ordered }: Pick<Timeline, "ordered">): ReadonlyMap<number, Going> {
  const going = known.get(ordered) ?? findGoing(trip, ordered);
  known.set(ordered, going);
  return going;
}

function findGoing(trip: Trip, ordered: readonly TripEvent[]): Map<number, Going> {
  const wet = new Set<string>();
  const fishOn = new Set<string>();
  let isUnderWay = true;
  const going = new Map<number, Going>();
  for (const event of ordered) {
    const { verb } = event.line;
    const isIn = isPutIn(trip, event);
    if (verb === "run" || verb === "drift" || verb === "return") isUnderWay = false;
    else if (isIn) isUnderWay = true;
    takeRig(event, wet, fishOn, isIn);
    going.set(event.lineIndex, {
      isTrolling: isUnderWay && wet.size > 0,
      isFishOn: fishOn.size > 0,
    });
  }
  return going;
}

function isPutIn({ gear }: Trip, { line, rig }: TripEvent): boolean {
  const isIn = line.verb === "set" || line.verb === "again";
  return isIn && rig !== undefined && gear.rigs.get(rig)?.kind !== "jig";
}

function takeRig({ line, rig }: TripEvent, wet: Set<string>, fishOn: Set<string>, isIn: boolean): void {
  if (rig === undefined) return;
  if (isIn) wet.add(rig);
  if (line.verb === "pull") {
    for (const set of [wet, fishOn]) rig === "all" ? set.clear() : set.delete(rig);
  }
  if (line.verb === "strike") fishOn.add(rig);
  else if (ENDS_BITE.has(line.verb)) fishOn.delete(rig);
}
