/** Positions that no boat gets to: one digit wrong puts one across the lake. */
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { misplacedLines } from "../model/time-order.ts";
import type { Trip } from "../model/trip.ts";
import { wayBetween } from "./geodesic.ts";
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
}

/** Clocks are written in whole minutes. */
const MINUTE_S = 60;

/** Every jump between positions in the order of time. Lines whose time is in doubt have no say. */
export function jumpsIn(trip: Trip, fixes: readonly Fix[]): Jump[] {
  const limitMS = thresholdOf(trip.gear, THRESHOLDS.fastestBoat);
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
    const isFar = isBeyond(way, limitMS);
    const isStray = isFar && next !== undefined && !isBeyond(between(before, next), limitMS);
    if (isFar) jumps.push({ before, fix, ...way, isStray });
    if (!isStray) before = fix;
  });
  return jumps;
}

function between(one: Fix, other: Fix): Pick<Jump, "distanceM" | "seconds"> {
  const distanceM = wayBetween(one.place, other.place)?.distanceM ?? 0;
  return { distanceM, seconds: Math.abs(other.timeMs - one.timeMs) / 1000 };
}

function isBeyond({ distanceM, seconds }: Pick<Jump, "distanceM" | "seconds">, limitMS: number): boolean {
  return distanceM > limitMS * (seconds + MINUTE_S);
}
