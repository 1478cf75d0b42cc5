/** Lines of a trip that stand out of the order of time, and the slip that would explain them. */

import { longestRising } from "./longest-rising.ts";
import { ALL_RIGS, type Trip, type TripEvent } from "./trip.ts";

/**
 * What explains it: an afternoon written like a morning (twelve hours short) or the other way around, a night past
 * midnight without its date (a day short), else a line that comes before one above it, or one that runs ahead of the
 * lines below.
 */
type Slip = "afternoon" | "morning" | "next-day" | "before" | "ahead";

/** A slip that says what time is meant. */
type Shifted = Exclude<Slip, "before" | "ahead">;

/** Lines next to each other that are out of order in the same way. */
export interface Disorder {
  readonly slip: Slip;
  /** In the order of the file; one at least. */
  readonly events: readonly [TripEvent, ...TripEvent[]];
  /** The line in order that it disagrees with: above it, or below for a line that runs ahead. */
  readonly against: TripEvent;
}

interface Clocked {
  readonly event: TripEvent;
  ms: number;
}

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
/** An approximate time may stand that far from its place (judgement). */
const APPROXIMATE_MS = 15 * MINUTE_MS;
/** Longer pauses than this are not taken for a slip of the half-day or the date (judgement). */
const LONGEST_PAUSE_MS = 6 * HOUR_MS;

const known = new WeakMap<Trip, readonly Disorder[]>();
const knownLines = new WeakMap<Trip, ReadonlySet<number>>();
const knownRigs = new WeakMap<Trip, ReadonlySet<string>>();

/** Every disorder of a trip, in the order of the file. Lines without a clock, or in a doubtful hour, have no say. */
export function timeDisorders(trip: Trip): readonly Disorder[] {
  const disorders = known.get(trip) ?? findDisorders(trip);
  known.set(trip, disorders);
  return disorders;
}

/** Line numbers of every line that is out of order. */
export function misplacedLines(trip: Trip): ReadonlySet<number> {
  const misplaced = knownLines.get(trip) ?? new Set(linesOf(timeDisorders(trip)));
  knownLines.set(trip, misplaced);
  return misplaced;
}

function linesOf(disorders: readonly Disorder[]): number[] {
  return disorders.flatMap(({ events }) => events.map((event) => event.lineIndex));
}

/** True for rigs with a line out of order or in a doubtful hour: in what order theirs happened can't be told. */
export function isOutOfOrder(trip: Trip, rig: string): boolean {
  const doubtful = knownRigs.get(trip) ?? doubtfulRigs(trip);
  knownRigs.set(trip, doubtful);
  return doubtful.has(rig) || doubtful.has(ALL_RIGS);
}

function doubtfulRigs(trip: Trip): ReadonlySet<string> {
  const misplaced = misplacedLines(trip);
  const rigs = new Set<string>();
  for (const { lineIndex, instant, rig } of trip.events) {
    const isDoubtful = misplaced.has(lineIndex) || (instant?.problem ?? null) !== null;
    if (isDoubtful && rig !== undefined) rigs.add(rig);
  }
  return rigs;
}

const knownOrders = new WeakMap<Trip, readonly TripEvent[]>();

/**
 * Events sorted by time; a line without a clock stays behind the line above it, and so does one whose half-day or date
 * slipped, or whose approximate time may as well be the one above. Stable.
 * Kept with the trip.
 */
export function inTimeOrder(trip: Trip): readonly TripEvent[] {
  const ordered = knownOrders.get(trip) ?? sortByTime(trip);
  knownOrders.set(trip, ordered);
  return ordered;
}

function sortByTime(trip: Trip): TripEvent[] {
  const slipped = slippedLines(trip);
  let lastMs = Number.NEGATIVE_INFINITY;
  const keyed = trip.events.map((event) => {
    if (event.instant !== null && !slipped.has(event.lineIndex)) lastMs = placedMs(trip, event) ?? lastMs;
    return { event, key: lastMs };
  });
  return keyed.sort((a, b) => (a.key === b.key ? 0 : a.key - b.key)).map(({ event }) => event);
}

const knownSlips = new WeakMap<Trip, ReadonlyMap<number, number>>();

/**
 * Lines whose half-day or date slipped, by line number, with how much later they are meant, ms (less than zero for
 * earlier): their place in the file tells more than their clock.
 */
export function slippedLines(trip: Trip): ReadonlyMap<number, number> {
  const known = knownSlips.get(trip);
  if (known !== undefined) return known;
  const slips = new Map<number, number>();
  for (const { slip, events } of timeDisorders(trip)) {
    if (slip === "before" || slip === "ahead") continue;
    for (const { lineIndex } of events) slips.set(lineIndex, SHIFT_MS[slip]);
  }
  knownSlips.set(trip, slips);
  return slips;
}

/** When a line is meant, UTC ms: as it says, put right where its half-day or date slipped; null without a clock. */
export function meantMs(trip: Trip, { instant, lineIndex }: TripEvent): number | null {
  return instant === null ? null : instant.utcMs + (slippedLines(trip).get(lineIndex) ?? 0);
}

const knownPlaces = new WeakMap<Trip, ReadonlyMap<number, number>>();

/**
 * When a line takes effect among the others, UTC ms: as it is meant, and an approximate time that is near its place in
 * the file at that place. Null without a clock.
 */
export function placedMs(trip: Trip, event: TripEvent): number | null {
  const places = knownPlaces.get(trip) ?? approximatePlaces(trip);
  knownPlaces.set(trip, places);
  return places.get(event.lineIndex) ?? meantMs(trip, event);
}

/** Approximate times that were put into their place, by line number; those that slipped are told by their slip. */
function approximatePlaces(trip: Trip): ReadonlyMap<number, number> {
  const slipped = slippedLines(trip);
  const places = new Map<number, number>();
  for (const { event, ms } of clockedLines(trip)) {
    if (event.line.approx && !slipped.has(event.lineIndex)) places.set(event.lineIndex, ms);
  }
  return places;
}

function findDisorders(trip: Trip): Disorder[] {
  const clocked = clockedLines(trip);
  if (isRising(clocked)) return [];
  const disorders: Disorder[] = [];
  for (let i = 1; i < clocked.length; i++) {
    const [one, above] = [clocked[i], clocked[i - 1]];
    if (one === undefined || above === undefined || one.ms >= above.ms) continue;
    const early = runAhead(clocked, i);
    if (early !== undefined) {
      for (const late of early.run) late.ms += SHIFT_MS.morning;
      disorders.push(disorder("morning", early.run, early.above.event));
      continue;
    }
    const run = runBehind(clocked, i);
    const slip = explain(clocked, i, run);
    if (slip === undefined) continue;
    for (const late of run) late.ms += SHIFT_MS[slip];
    disorders.push(disorder(slip, run, above.event));
  }
  return disorders.concat(leftovers(clocked)).sort((a, b) => a.events[0].lineIndex - b.events[0].lineIndex);
}

/** Nearly every trip is in order. */
function isRising(clocked: readonly Clocked[]): boolean {
  return clocked.every((one, i) => one.ms >= (clocked[i - 1]?.ms ?? one.ms));
}

/** Lines with a sure minute; an approximate one near its place counts as in it. */
function clockedLines(trip: Trip): Clocked[] {
  const clocked = trip.events.flatMap((event) =>
    event.instant === null || event.instant.problem !== null ? [] : [{ event, ms: event.instant.utcMs }],
  );
  clocked.forEach((one, i) => {
    if (!one.event.line.approx) return;
    const above = clocked[i - 1]?.ms ?? one.ms;
    const below = clocked[i + 1]?.ms ?? one.ms;
    if (one.ms < above && above - one.ms <= APPROXIMATE_MS) one.ms = above;
    else if (one.ms > below && one.ms - below <= APPROXIMATE_MS) one.ms = below;
  });
  return clocked;
}

/** The lines from `start` on that stay behind the one above `start`, in order among themselves. */
function runBehind(clocked: readonly Clocked[], start: number): [Clocked, ...Clocked[]] {
  const aboveMs = clocked[start - 1]?.ms ?? Number.NEGATIVE_INFINITY;
  const run = [clocked[start] as Clocked] as [Clocked, ...Clocked[]];
  for (let i = start + 1; i < clocked.length; i++) {
    const next = clocked[i] as Clocked;
    if (next.ms < (run.at(-1)?.ms ?? 0) || next.ms >= aboveMs) break;
    run.push(next);
  }
  return run;
}

const SHIFT_MS: Readonly<Record<Shifted, number>> = {
  afternoon: 12 * HOUR_MS,
  morning: -12 * HOUR_MS,
  "next-day": 24 * HOUR_MS,
};

/**
 * The lines right above `stop` that run ahead of it and, twelve hours earlier, fit between it and the line above them;
 * undefined where they don't.
 */
function runAhead(
  clocked: readonly Clocked[],
  stop: number,
): { readonly run: readonly [Clocked, ...Clocked[]]; readonly above: Clocked } | undefined {
  const belowMs = clocked[stop]?.ms ?? Number.NEGATIVE_INFINITY;
  const run: Clocked[] = [];
  for (let i = stop - 1; i >= 0; i--) {
    const one = clocked[i] as Clocked;
    const nextMs = run[0]?.ms ?? Number.POSITIVE_INFINITY;
    const [first, ...rest] = run;
    if (first !== undefined && one.ms <= first.ms + SHIFT_MS.morning) {
      const isShort = first.ms + SHIFT_MS.morning - one.ms <= LONGEST_PAUSE_MS;
      return isShort ? { run: [first, ...rest], above: one } : undefined;
    }
    if (!isAfternoon(one) || one.ms > nextMs || one.ms + SHIFT_MS.morning > belowMs) return undefined;
    run.unshift(one);
  }
  return undefined;
}

function isAfternoon({ event }: Clocked): boolean {
  return Number(event.line.clock?.slice(0, 2)) >= 13;
}

/** The shift that puts a run between its neighbors, if one does. */
function explain(
  clocked: readonly Clocked[],
  start: number,
  run: readonly [Clocked, ...Clocked[]],
): Shifted | undefined {
  const [first] = run;
  const last = run.at(-1) ?? first;
  const above = clocked[start - 1];
  const before = clocked[start - 2];
  if (above === undefined || (before !== undefined && before.ms <= first.ms)) return undefined;
  const next = clocked[start + run.length];
  const fits = (shiftMs: number): boolean => {
    const pauseMs = first.ms + shiftMs - above.ms;
    const isBeforeNext = next === undefined || next.ms < last.ms || last.ms + shiftMs <= next.ms;
    return pauseMs >= 0 && pauseMs <= LONGEST_PAUSE_MS && isBeforeNext;
  };
  if (run.every(isMorning) && fits(SHIFT_MS.afternoon)) return "afternoon";
  const isUndated = run.every(({ event }) => event.line.date === null);
  return isUndated && fits(SHIFT_MS["next-day"]) ? "next-day" : undefined;
}

function isMorning({ event }: Clocked): boolean {
  const hour = Number(event.line.clock?.slice(0, 2));
  return hour >= 1 && hour <= 11;
}

/** What no shift explains: the fewest lines without which the rest is in order. */
function leftovers(clocked: readonly Clocked[]): Disorder[] {
  const kept = longestRising(clocked.map((one) => one.ms));
  const disorders: Disorder[] = [];
  let run: Clocked[] = [];
  let above: Clocked | undefined;
  const close = (below: Clocked | undefined): void => {
    for (const part of partsOf(run, above, below)) disorders.push(part);
    run = [];
  };
  clocked.forEach((one, i) => {
    if (!kept.has(i)) run.push(one);
    else {
      close(one);
      above = one;
    }
  });
  close(undefined);
  return disorders;
}

/** A run of lines out of order, split where it changes from behind to ahead. */
function partsOf(
  run: readonly Clocked[],
  above: Clocked | undefined,
  below: Clocked | undefined,
): Disorder[] {
  const isBehind = (one: Clocked): boolean => above !== undefined && one.ms < above.ms;
  const behind = run.filter(isBehind);
  const ahead = run.filter((one) => !isBehind(one));
  return [
    ...(above === undefined || behind.length === 0 ? [] : [disorder("before", behind, above.event)]),
    ...(below === undefined || ahead.length === 0 ? [] : [disorder("ahead", ahead, below.event)]),
  ];
}

function disorder(slip: Slip, run: readonly Clocked[], against: TripEvent): Disorder {
  const [first, ...rest] = run.map((one) => one.event);
  if (first === undefined) throw new Error("a disorder has a line at least");
  return { slip, events: [first, ...rest], against };
}
