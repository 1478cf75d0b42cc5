/**
 * Readings of one instrument at one minute that can't both be true: neither may be leaned on until one goes or says
 * `sure`.
 */
import { findItem, hasWord, measureOf } from "../model/quantities.ts";
import type { ReadingAges } from "../model/readings.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { meantMs } from "../model/time-order.ts";
import { cableRigOf, type Trip, type TripEvent } from "../model/trip.ts";

/** What two readings disagree on. */
export type ReadQuantity = "speed" | "depth";

/** Two readings of one minute, in the order of the file; m/s or m. */
export interface Contradiction {
  readonly of: ReadQuantity;
  readonly timeMs: number;
  readonly first: TripEvent;
  readonly firstValue: number;
  readonly second: TripEvent;
  readonly secondValue: number;
}

const INSTRUMENTS = new Set(["probe", "surface", "gps"]);
/** What changes the boat's speed within a minute. */
const CHANGES_SPEED = new Set(["turn", "run", "drift", "return", "depart"]);
/** What moves a probe within a minute. */
const MOVES_PROBE = new Set(["set", "move", "again", "pull", "change"]);

const known = new WeakMap<Trip, readonly Contradiction[]>();

/** Every pair of a trip; found once. */
export function contradictionsOf(trip: Trip): readonly Contradiction[] {
  const found = known.get(trip) ?? findPairs(trip);
  known.set(trip, found);
  return found;
}

/** True where speeds that contradict each other are all that is in reach of a minute that has no speed to go by. */
export function isSpeedContradictedNear(trip: Trip, timeMs: number, ages: ReadingAges): boolean {
  const { unusedAfterMs, aheadMs } = ages;
  return contradictionsOf(trip).some(
    (pair) => pair.of === "speed" && pair.timeMs >= timeMs - unusedAfterMs && pair.timeMs <= timeMs + aheadMs,
  );
}

const doubtedOfTrip = new WeakMap<Trip, Readonly<Record<ReadQuantity, ReadonlySet<TripEvent>>>>();

/** True for a reading that another of its minute contradicts, unless `sure` is on its line. */
export function isContradicted(trip: Trip, event: TripEvent, of: ReadQuantity): boolean {
  const pairs = contradictionsOf(trip);
  if (pairs.length === 0) return false;
  const doubted = doubtedOfTrip.get(trip) ?? {
    speed: doubtedIn(pairs, "speed"),
    depth: doubtedIn(pairs, "depth"),
  };
  doubtedOfTrip.set(trip, doubted);
  return doubted[of].has(event);
}

function doubtedIn(pairs: readonly Contradiction[], of: ReadQuantity): Set<TripEvent> {
  const both = pairs.filter((pair) => pair.of === of).flatMap(({ first, second }) => [first, second]);
  return new Set(both.filter(({ line }) => !hasWord(line, "sure")));
}

function findPairs(trip: Trip): Contradiction[] {
  const minutes = new Map<string, { readonly timeMs: number; readonly readings: TripEvent[] }>();
  for (const event of trip.events) {
    const { line, rig } = event;
    const timeMs = INSTRUMENTS.has(line.verb) && !line.approx ? meantMs(trip, event) : null;
    if (timeMs === null) continue;
    const key = `${timeMs} ${line.verb} ${rig ?? ""}`;
    const minute = minutes.get(key) ?? { timeMs, readings: [] };
    minutes.set(key, minute);
    minute.readings.push(event);
  }
  return [...minutes.values()].flatMap(({ timeMs, readings }) =>
    readings.length < 2
      ? []
      : (["speed", "depth"] as const).flatMap((of) => pairsAt(trip, timeMs, readings, of)),
  );
}

const LIMITS = { speed: THRESHOLDS.sameMinuteSpeed, depth: THRESHOLDS.sameMinuteDepth } as const;
const DIMENSIONS = { speed: "speed", depth: "length" } as const;

/** Each reading with the last one before it, if they are too far apart and nothing of that minute explains it. */
function pairsAt(
  trip: Trip,
  timeMs: number,
  readings: readonly TripEvent[],
  of: ReadQuantity,
): Contradiction[] {
  const { gear } = trip;
  const limit = thresholdOf(gear, LIMITS[of]);
  const read = readings.flatMap((event) => {
    const value = measureOf(event.line, of, DIMENSIONS[of], gear.defaults);
    return value === undefined ? [] : [{ event, value }];
  });
  const pairs = read.slice(1).flatMap((second, i): Contradiction[] => {
    const first = read[i];
    if (first === undefined || Math.abs(second.value - first.value) <= limit + 1e-9) return [];
    if (hasWord(first.event.line, "sure") && hasWord(second.event.line, "sure")) return [];
    return [
      {
        of,
        timeMs,
        first: first.event,
        firstValue: first.value,
        second: second.event,
        secondValue: second.value,
      },
    ];
  });
  return pairs.length > 0 && isExplained(trip, timeMs, readings, of) ? [] : pairs;
}

/** The boat turned or the cable was moved in that very minute. */
function isExplained(trip: Trip, timeMs: number, readings: readonly TripEvent[], of: ReadQuantity): boolean {
  const around = trip.events.filter((event) => meantMs(trip, event) === timeMs);
  if (of === "speed") return around.some(({ line }) => CHANGES_SPEED.has(line.verb));
  const cable = cableRigOf(trip.gear, readings[0]?.rig ?? "")?.name ?? readings[0]?.rig;
  const isOfIt = (rig: string | undefined): boolean =>
    rig === "all" || rig === cable || cableRigOf(trip.gear, rig ?? "")?.name === cable;
  return (
    around.some(({ line, rig }) => MOVES_PROBE.has(line.verb) && isOfIt(rig)) ||
    readings.some(({ line }) => findItem(line, "out") !== undefined)
  );
}
