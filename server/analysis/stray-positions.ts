/** Positions that no boat gets to: one digit wrong puts one across the lake. */
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { inTimeOrder, misplacedLines } from "../model/time-order.ts";
import type { Trip } from "../model/trip.ts";
import { wayBetween } from "./geodesic.ts";
import { goingByLine } from "./going.ts";
import type { Fix } from "./positions.ts";

/** A way between two positions that would need a faster boat. */
export interface Jump {
  readonly before: Fix;
  readonly fix: Fix;
  readonly distanceM: number;
  /** Between the two, s; 0 in one minute. */
  readonly seconds: number;
  /** The next position goes on from the one before, so this one alone stands out. */
  readonly isStray: boolean;
  /** How fast the boat goes at most between the two, m/s; less where it trolled all the while. */
  readonly limitMS: number;
  readonly isTrolling: boolean;
}

/** Clocks are written in whole minutes. */
const MINUTE_S = 60;

/** Every jump between positions in the order of time. Lines whose time is in doubt have no say. */
export function jumpsIn(trip: Trip, fixes: readonly Fix[]): Jump[] {
  if (fixes.length < 2) return [];
  const pace = paceOf(trip);
  const doubtful = misplacedLines(trip);
  const timed = fixes.filter(
    ({ event }) => !doubtful.has(event.lineIndex) && event.instant?.problem === null,
  );
  const jumps: Jump[] = [];
  let before = timed[0];
  timed.slice(1).forEach((fix, i) => {
    if (before === undefined) return;
    const way = between(before, fix);
    const next = timed[i + 2];
    const most = pace(before, fix);
    const isFar = isBeyond(way, most);
    const isStray = isFar && next !== undefined && !isBeyond(between(before, next), pace(before, next));
    if (isFar) jumps.push({ before, fix, ...way, isStray, ...most });
    if (!isStray) before = fix;
  });
  return jumps;
}

function between(one: Fix, other: Fix): Pick<Jump, "distanceM" | "seconds"> {
  const distanceM = wayBetween(one.place, other.place)?.distanceM ?? 0;
  return { distanceM, seconds: Math.abs(other.timeMs - one.timeMs) / 1000 };
}

type Pace = Pick<Jump, "limitMS" | "isTrolling">;

/** Positions are written to a tenth of a minute, and lines go in and out beside them; at a troll that counts, m (judgement). */
const WRITTEN_M = 1000;

function isBeyond(
  { distanceM, seconds }: Pick<Jump, "distanceM" | "seconds">,
  { limitMS, isTrolling }: Pace,
): boolean {
  return distanceM > limitMS * (seconds + MINUTE_S) + (isTrolling ? WRITTEN_M : 0);
}

/** Answers how fast the boat goes at most from one position to another: with the strongest current at a troll. */
function paceOf(trip: Trip): (one: Fix, other: Fix) => Pace {
  const { gear } = trip;
  const boatMS = thresholdOf(gear, THRESHOLDS.fastestBoat);
  const trollMS = thresholdOf(gear, THRESHOLDS.fastTroll) + thresholdOf(gear, THRESHOLDS.strongestCurrent);
  const ordered = inTimeOrder(trip);
  const going = goingByLine(trip, { ordered });
  const order = new Map(ordered.map((event, at) => [event.lineIndex, at]));
  return (one, other) => {
    const [from, to] = [one, other].map(({ event }) => order.get(event.lineIndex) ?? 0) as [number, number];
    const between = ordered.slice(from, to + 1);
    const isTrolling = between.length > 1 && between.every((event) => going.get(event.lineIndex)?.isTrolling);
    return isTrolling && trollMS < boatMS
      ? { limitMS: trollMS, isTrolling }
      : { limitMS: boatMS, isTrolling: false };
  };
}
