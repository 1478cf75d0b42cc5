/** Lines that come too near to each other: as each line goes in or is moved, and in every turn. */

import type { FactLine } from "../../grammar/journal.ts";
import type { Gear } from "../model/gear-types.ts";
import { hasWord } from "../model/quantities.ts";
import type { ReadingAges } from "../model/readings.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { misplacedLines } from "../model/time-order.ts";
import type { CableSpread, Timeline } from "../model/timeline.ts";
import { cableRigOf, type Trip, type TripEvent } from "../model/trip.ts";
import type { CurvePoint } from "../physics/curve.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import type { CurvePart } from "../physics/rig-curves.ts";
import { isSameSpeed } from "./depth-kept.ts";
import type { DepthMemo } from "./depth-memo.ts";
import { type DrawnWetRig, drawWetRig, nearness } from "./rig-nearness.ts";
import { isClear, roughRig } from "./rough-rigs.ts";
import {
  type MinuteWater,
  type TripWater,
  tripWater,
  type WetRig,
  type WetTask,
  waterAround,
  wetRigsAfter,
  wetTaskOf,
} from "./spread-at.ts";
import { farthestAcrossM, shiftRange } from "./spread-geometry.ts";

/** Two rigs whose lines come within the margin at one line of the journal. */
export interface Crossing {
  readonly event: TripEvent;
  readonly isTurn: boolean;
  /** The line's own rig going straight; in a turn the one that the book has first. */
  readonly one: NearPart;
  readonly other: NearPart;
  /** They come at least as near as that, m, wherever both may stand. */
  readonly distanceM: number;
  /** Where, as likely as not, m. */
  readonly depthM: number;
  readonly behindM: number;
}

/** What of a rig comes near. */
export interface NearPart {
  /** The rig that is towed by itself: a stacked rod's is the one with the ball. */
  readonly rig: string;
  /** The rod, where it is on a cable and its own line comes near; else the rig. */
  readonly name: string;
  readonly what: "cable" | "ball" | "rod line" | "lure line" | "lure" | "line";
}

interface Sources {
  readonly ages: ReadingAges;
  readonly memo: DepthMemo;
}

const SPREAD_VERBS = new Set(["set", "move", "again"]);

/** Every pair that comes within the boat's margin, line by line in the order of time. */
export function crossingsOf(trip: Trip, timeline: Timeline, { ages, memo }: Sources): Crossing[] {
  const misplaced = misplacedLines(trip);
  if (misplaced.size > 0) return [];
  const marginM = thresholdOf(trip.gear, THRESHOLDS.crossingMargin);
  const water = tripWater(trip, ages);
  const search: Search = { trip, timeline, water, marginM, memo };
  return timeline.ordered.flatMap((event) => {
    if (event.instant === null) return [];
    if (event.line.verb === "turn") return inTurn(search, event, event.instant.utcMs);
    return SPREAD_VERBS.has(event.line.verb) ? goingStraight(search, event, event.instant.utcMs) : [];
  });
}

interface Search {
  readonly trip: Trip;
  readonly timeline: Timeline;
  readonly water: TripWater;
  readonly marginM: number;
  readonly memo: DepthMemo;
}

/**
 * The line's rig against every other, towed straight. Each line then lies in the upright plane of its own tow point, so
 * those whose planes may be farther apart than the margin need not be drawn: nearly all.
 */
function goingStraight(search: Search, event: TripEvent, timeMs: number): readonly Crossing[] {
  const { trip, timeline, marginM } = search;
  const name = cableRigOf(trip.gear, event.rig ?? "")?.name ?? event.rig;
  const wet = wetRigsAfter(trip, timeline, event);
  const own = wet.find(({ rig }) => rig.name === name);
  if (own === undefined) return [];
  const near = wet.filter((other) => {
    const range = shiftRange(own.place, other.place, false);
    return other !== own && farthestAcrossM(own.place, other.place, range) < marginM;
  });
  if (near.length === 0) return [];
  return keptOrFound(search, event, [own, ...near], timeMs, (around) => {
    const [first, ...others] = draw(search, hanging(search, [own, ...near], around), undefined);
    if (first?.wet !== own) return [];
    return others.flatMap((other) => compare(search, event, first, other, false));
  });
}

/** Every rig against every other, in a turn to the side that the line says. */
function inTurn(search: Search, event: TripEvent, timeMs: number): readonly Crossing[] {
  const side = hasWord(event.line, "right") ? 1 : hasWord(event.line, "left") ? -1 : 0;
  if (side === 0) return [];
  const wet = wetRigsAfter(search.trip, search.timeline, event);
  const radiusM = search.trip.gear.turnRadiusM ?? DEFAULTS.turnRadiusM.value;
  return keptOrFound(search, event, wet, timeMs, (around) => {
    const turnRadiusM = side * radiusM;
    const near = nearInTurn(search, hanging(search, wet, around), turnRadiusM);
    const drawn = new Map<Hanging, DrawnWetRig | undefined>();
    const drawnOnce = (one: Hanging): DrawnWetRig | undefined => {
      if (!drawn.has(one)) drawn.set(one, draw(search, [one], turnRadiusM)[0]);
      return drawn.get(one);
    };
    return near.flatMap(([first, second]) => {
      const [one, other] = [drawnOnce(first), drawnOnce(second)];
      return one === undefined || other === undefined ? [] : compare(search, event, one, other, true);
    });
  });
}

/** The pairs that rough drawings can't tell to be clear of each other: few, so that few rigs are drawn well. */
function nearInTurn(
  { marginM }: Search,
  rigs: readonly Hanging[],
  turnRadiusM: number,
): (readonly [Hanging, Hanging])[] {
  const rough = rigs.map(({ wet, task }) => roughRig(wet, task, turnRadiusM));
  return rigs.flatMap((one, i) =>
    rigs.slice(i + 1).flatMap((other, n): [Hanging, Hanging][] => {
      const range = shiftRange(one.wet.place, other.wet.place, true);
      return isClear(rough[i], rough[i + 1 + n], range, marginM) ? [] : [[one, other]];
    }),
  );
}

/** What the crossings of a line of the journal were found from, and the crossings. */
interface KnownCrossings {
  readonly gear: Gear;
  readonly memo: DepthMemo;
  readonly wetAfter: CableSpread | undefined;
  readonly around: MinuteWater;
  readonly crossings: readonly Crossing[];
}

const knownCrossings = new WeakMap<FactLine, KnownCrossings>();

/** What was found before where the line has the same rigs in the water, in the same settings, speed and temperatures. */
function keptOrFound(
  { trip, timeline, water, memo }: Search,
  event: TripEvent,
  wet: readonly WetRig[],
  timeMs: number,
  find: (around: MinuteWater) => Crossing[],
): readonly Crossing[] {
  const around = waterAround(water, wet, timeMs);
  if (around === undefined) return [];
  const { gear } = trip;
  const wetAfter = timeline.wetAfter.get(event.lineIndex);
  const known = knownCrossings.get(event.line);
  const isSame =
    known?.gear === gear &&
    known.memo === memo &&
    known.wetAfter === wetAfter &&
    isSameSpeed(known.around.speed, around.speed) &&
    isSameList(known.around.temperaturesC, around.temperaturesC);
  if (isSame) return known.crossings.map((crossing) => ({ ...crossing, event }));
  const crossings = find(around);
  knownCrossings.set(event.line, { gear, memo, wetAfter, around, crossings });
  return crossings;
}

function isSameList(one: readonly number[], other: readonly number[]): boolean {
  return one.length === other.length && one.every((value, i) => value === other[i]);
}

/** A rig in the water and what it hangs like. */
interface Hanging {
  readonly wet: WetRig;
  readonly task: WetTask;
}

/** Those of which that can be known. */
function hanging({ trip }: Search, wet: readonly WetRig[], { speed, temperaturesC }: MinuteWater): Hanging[] {
  return wet.flatMap((one, i) => {
    const task = wetTaskOf(trip, one, speed, temperaturesC[i] ?? Number.NaN);
    return task === undefined ? [] : { wet: one, task };
  });
}

function draw({ memo }: Search, rigs: readonly Hanging[], turnRadiusM: number | undefined): DrawnWetRig[] {
  return rigs.flatMap(({ wet, task }) => drawWetRig(wet, task, turnRadiusM, memo) ?? []);
}

function compare(
  { marginM, memo }: Search,
  event: TripEvent,
  one: DrawnWetRig,
  other: DrawnWetRig,
  isTurn: boolean,
): Crossing[] {
  const range = shiftRange(one.wet.place, other.wet.place, isTurn);
  const approach = nearness(one, other, range, marginM, memo);
  if (approach === null) return [];
  const { depthM, behindM } = approach.one;
  return [
    {
      event,
      isTurn,
      one: nearPart(one, approach.part, approach.one),
      other: nearPart(other, approach.otherPart, approach.other),
      distanceM: approach.distanceM,
      depthM,
      behindM,
    },
  ];
}

/** So near the end of a line, m, it is what hangs there that is near. */
const AT_END_M = 1;

function nearPart({ wet }: DrawnWetRig, { kind, rod, curve }: CurvePart, at: CurvePoint): NearPart {
  const end = curve.at(-1);
  // Shifts across the boat leave these two as they are.
  const isAtEnd =
    end !== undefined && Math.hypot(end.behindM - at.behindM, end.depthM - at.depthM) < AT_END_M;
  const atEnd = { cable: "ball", "lure line": "lure", line: "lure", "rod line": "rod line" } as const;
  const { name: rig } = wet.rig;
  return { rig, name: rod ?? rig, what: isAtEnd ? atEnd[kind] : kind };
}
