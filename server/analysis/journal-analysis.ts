/** Everything computed from one file and the books within its reach: its trips, their timelines, depths and sums. */
import type { FactLine } from "../../grammar/journal.ts";
import type { Parse } from "../../grammar/parse.ts";
import { buildTimeline } from "../model/build-timeline.ts";
import type { BookFile } from "../model/gear-lines.ts";
import type { ReadingAges } from "../model/readings.ts";
import { NO_THRESHOLDS, THRESHOLDS, type ThresholdWords, thresholdOf } from "../model/thresholds.ts";
import type { Timeline } from "../model/timeline.ts";
import { type GearResolver, gearResolver, type Trip } from "../model/trip.ts";
import { TripChange } from "../model/trip-change.ts";
import { tripsOf } from "../model/trips-of.ts";
import { type Crossing, crossingsOf } from "./crossings.ts";
import { createDepthMemo, type DepthMemo } from "./depth-memo.ts";
import { type GearChange, gearChanges } from "./gear-changes.ts";
import { changeDepths, type LineDepth, lineDepths } from "./line-depth.ts";
import { once } from "./once.ts";
import { type RodLift, rodLift } from "./rod-lift.ts";
import { type Shoal, shoalsOf } from "./shoals.ts";
import { DEPTHS } from "./sights.ts";
import { summarize, type TripSummary } from "./summary.ts";
import { readWater, type WaterDay } from "./water-day.ts";

/** One trip, computed. Its parts are computed when they are first asked for. */
export interface TripAnalysis {
  readonly trip: Trip;
  readonly timeline: Timeline;
  readonly depths: readonly LineDepth[];
  /** Those of change lines that alter a depth; computed when first asked for. */
  readonly changeDepths: readonly LineDepth[];
  readonly ages: ReadingAges;
  readonly summary: TripSummary;
  /** Lines that come too near to each other; looked for when first asked for. */
  readonly crossings: readonly Crossing[];
  /** What the readings say of the water, read when first asked for. */
  readonly water: WaterDay;
  /** Readings of the bottom that find lines already out too near to it; looked for when first asked for. */
  readonly shoals: readonly Shoal[];
  /** What other gear of the book would do to a line's depth; solved when first asked for. */
  readonly gearChanges: (depth: LineDepth) => readonly GearChange[];
  /** How far the rods on a line's cable lift its ball; solved when first asked for. */
  readonly rodLift: (depth: LineDepth) => RodLift | undefined;
}

/** One file, computed. */
export interface JournalAnalysis {
  readonly uri: string;
  readonly parse: Parse;
  /** The file itself and the books within reach, nearest first. */
  readonly files: readonly BookFile[];
  readonly trips: readonly TripAnalysis[];
  /** The gear of a boat on a day, from these files and with the thresholds chosen. */
  readonly gearOf: GearResolver;
}

/**
 * Computes a file. `books` are the other files within its reach that hold gear, nearest first; `chosen` thresholds hold
 * where no book states them.
 */
export function analyzeJournal(
  file: BookFile,
  books: readonly BookFile[],
  memo: DepthMemo = createDepthMemo(),
  chosen: ThresholdWords = NO_THRESHOLDS,
): JournalAnalysis {
  const files = [file, ...books];
  const gearOf = gearResolver(files, chosen);
  const trips = tripsOf(file.uri, file.parse, gearOf).map((trip) => knownOrNew(trip, memo));
  return { uri: file.uri, parse: file.parse, files, trips, gearOf };
}

/** What hangs on how the lines are out: the same for all versions of a trip in which nobody sees a difference to that. */
interface DepthParts {
  depths?: readonly LineDepth[];
  changeDepths?: readonly LineDepth[];
  crossings?: readonly Crossing[];
  shoals?: readonly Shoal[];
}

interface KnownAnalysis {
  readonly memo: DepthMemo;
  readonly analysis: TripAnalysis;
  readonly parts: DepthParts;
}

/** The latest of each trip, by its opener. */
const knownAnalyses = new WeakMap<FactLine, KnownAnalysis>();

/** A trip that is the very same is not computed again; of one that was edited only what the edit concerns. */
function knownOrNew(trip: Trip, memo: DepthMemo): TripAnalysis {
  const last = knownAnalyses.get(trip.opener);
  const known = last?.memo === memo ? last : undefined;
  if (known?.analysis.trip === trip) return known.analysis;
  const change = known && TripChange.between(known.analysis.trip, trip);
  const isSame = change?.isStill === true && !change.isSeenWith(DEPTHS);
  const parts = known !== undefined && isSame ? known.parts : {};
  const analysis = analyzeTrip(trip, memo, parts);
  knownAnalyses.set(trip.opener, { memo, analysis, parts });
  return analysis;
}

/** Computes one trip; each part when it is first asked for, since most questions are about one part of one trip. */
export function analyzeTrip(trip: Trip, memo: DepthMemo, parts: DepthParts = {}): TripAnalysis {
  const ages = readingAges(trip);
  const timeline = once(() => buildTimeline(trip));
  const bottomHeldMs = thresholdOf(trip.gear, THRESHOLDS.bottomHeld) * 1000;
  const sources = { ages, bottomHeldMs, memo };
  const depths = (): readonly LineDepth[] => {
    parts.depths ??= lineDepths(trip, timeline(), sources);
    return parts.depths;
  };
  const water = once(() => readWater(trip, ages));
  const summary = once(() => summarize(trip, timeline(), depths(), water()));
  return {
    trip,
    ages,
    gearChanges: (depth) => gearChanges(trip, timeline(), depth, memo),
    rodLift: (depth) => rodLift(trip, timeline(), depth, memo),
    get crossings(): readonly Crossing[] {
      parts.crossings ??= crossingsOf(trip, timeline(), { ages, memo });
      return parts.crossings;
    },
    get shoals(): readonly Shoal[] {
      parts.shoals ??= shoalsOf(trip, timeline(), depths(), sources);
      return parts.shoals;
    },
    get timeline(): Timeline {
      return timeline();
    },
    get changeDepths(): readonly LineDepth[] {
      parts.changeDepths ??= changeDepths(trip, timeline(), sources);
      return parts.changeDepths;
    },
    get depths(): readonly LineDepth[] {
      return depths();
    },
    get summary(): TripSummary {
      return summary();
    },
    get water(): WaterDay {
      return water();
    },
  };
}

function readingAges(trip: Trip): ReadingAges {
  return {
    staleAfterMs: thresholdOf(trip.gear, THRESHOLDS.readingStale) * 1000,
    unusedAfterMs: thresholdOf(trip.gear, THRESHOLDS.readingUnused) * 1000,
    aheadMs: thresholdOf(trip.gear, THRESHOLDS.readingAhead) * 1000,
  };
}
