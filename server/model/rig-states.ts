/** In what state a rig is at a place of the trip: found by halving, over an index kept for as long as the timeline. */
import type { RigState, Timeline } from "./timeline.ts";
import type { TripEvent } from "./trip.ts";

/** A rig's state, and the line that put it there; undefined for a rig that no line has moved yet. */
export interface RigNow {
  readonly state: RigState;
  readonly because: TripEvent | undefined;
}

/** A place in a trip: a line of the file, and its minute where it has one, UTC ms. */
export interface TripPlace {
  readonly lineIndex: number;
  readonly timeMs: number | null;
}

interface StateIndex {
  /** The key of each event in `ordered`: its time, or that of the last one above it that has one. */
  readonly keys: readonly number[];
  /** The place in `ordered` of each line. */
  readonly order: ReadonlyMap<number, number>;
  /** Line numbers of the events, rising. */
  readonly lines: readonly number[];
  /** The changes of each rig with their places in `ordered`, rising. */
  readonly changes: ReadonlyMap<string, readonly { readonly order: number; readonly now: RigNow }[]>;
}

const NEVER_SET: RigNow = { state: "up", because: undefined };
const indexes = new WeakMap<Timeline, StateIndex>();

/** The state of a rig just before a place; what that line itself does to it does not count. */
export function rigStateBefore(timeline: Timeline, rig: string, place: TripPlace): RigNow {
  const index = indexOf(timeline);
  const own = index.changes.get(rig) ?? [];
  const before = orderOf(timeline, index, place);
  const found = firstNot(own.length, (at) => (own[at]?.order ?? 0) < before) - 1;
  return own[found]?.now ?? NEVER_SET;
}

/** How many events come before a place. */
function orderOf({ ordered }: Timeline, index: StateIndex, { lineIndex, timeMs }: TripPlace): number {
  const own = index.order.get(lineIndex);
  if (own !== undefined) return own;
  if (timeMs === null) {
    const above = firstNot(index.lines.length, (at) => (index.lines[at] ?? 0) < lineIndex) - 1;
    const order = index.order.get(index.lines[above] ?? -1);
    return order === undefined ? 0 : order + 1;
  }
  return firstNot(ordered.length, (at) => {
    const key = index.keys[at] ?? 0;
    return key < timeMs || (key === timeMs && (ordered[at]?.lineIndex ?? 0) < lineIndex);
  });
}

function indexOf(timeline: Timeline): StateIndex {
  const known = indexes.get(timeline);
  if (known !== undefined) return known;
  const order = new Map(timeline.ordered.map((event, at) => [event.lineIndex, at]));
  let lastMs = Number.NEGATIVE_INFINITY;
  const keys = timeline.ordered.map(({ instant }) => {
    if (instant !== null && instant.utcMs > lastMs) lastMs = instant.utcMs;
    return lastMs;
  });
  const changes = new Map<string, { order: number; now: RigNow }[]>();
  for (const { rig, state, because } of timeline.changes) {
    const own = changes.get(rig) ?? [];
    own.push({ order: order.get(because.lineIndex) ?? 0, now: { state, because } });
    changes.set(rig, own);
  }
  const index = { keys, order, lines: [...order.keys()].sort((a, b) => a - b), changes };
  indexes.set(timeline, index);
  return index;
}

/** The first of `count` places for which a condition that holds up to some place does not hold. */
function firstNot(count: number, holds: (at: number) => boolean): number {
  let [low, high] = [0, count];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(middle)) low = middle + 1;
    else high = middle;
  }
  return low;
}
