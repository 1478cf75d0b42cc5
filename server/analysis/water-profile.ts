/**
 * The temperature at every depth at one minute, from all readings in reach. Readings of the same depth are weighted by
 * age; where a newer one contradicts an older one the newer holds and the older is left out, and said to be. Between
 * depths the curve keeps the readings' shape; below the deepest reading there is none.
 */
import { isInReach, type ReadingAges } from "../model/readings.ts";
import { countUpTo } from "../model/sorted.ts";
import type { TripEvent } from "../model/trip.ts";
import { type ShapeCurve, shapeCurve } from "../physics/shape-preserving.ts";
import { once } from "./once.ts";
import { repeatedDepths, type TempPoint } from "./temperature-points.ts";
import { densityAt, type Salt } from "./water-density.ts";

/** One depth of a profile and what it was made of. */
export interface ProfileNode {
  readonly depthM: number;
  readonly tempC: number;
  /** Distance in time to the nearest reading in it, ms. */
  readonly ageMs: number;
  readonly points: readonly TempPoint[];
}

/** A reading that was not used, and why. */
export interface LeftOut {
  readonly point: TempPoint;
  readonly why: "repeated" | "contradicted";
  /** The newer reading that contradicts it. */
  readonly by: TempPoint | undefined;
}

/** The water at one minute. */
export interface WaterProfile {
  readonly timeMs: number;
  /** Shallowest first; one at least. */
  readonly nodes: readonly ProfileNode[];
  readonly leftOut: readonly LeftOut[];
  /** Undefined where there is one depth only. */
  readonly curve: ShapeCurve | undefined;
  readonly deepestM: number;
  /** The lowered profile it leans on most, if any. */
  readonly cast: TripEvent | undefined;
}

/** Readings nearer than this in depth speak of the same water (judgement). */
const SAME_DEPTH_M = 1;
/** Readings of one depth that differ by more contradict each other (judgement). */
const CONTRADICTION_C = 1.5;
/** Denser water above lighter by more than this is a contradiction between two readings, kg/m3 (judgement). */
const UNSTABLE_KG_M3 = 0.1;

/** A depth while readings are put into it. */
interface Draft {
  readonly depthM: number;
  readonly ageMs: number;
  readonly points: TempPoint[];
  tempC: number;
  /** By the temperature so far, kg/m3. */
  densityKgM3: number;
  /** Sums over its points: of their weights, and of their temperatures by weight. */
  weight: number;
  weightedC: number;
}

/** The profile at a minute, from points in the order of time; undefined when no reading may be used. */
export function profileAt(
  points: readonly TempPoint[],
  timeMs: number,
  ages: ReadingAges,
  salt: Salt,
): WaterProfile | undefined {
  const { usable, nearest } = usableAt(points, timeMs, ages);
  const repeated = repeatedDepths(points);
  const leftOut: LeftOut[] = [];
  if (repeated.size > 0)
    for (const point of usable)
      if (repeated.has(point)) leftOut.push({ point, why: "repeated", by: undefined });
  const drafts: Draft[] = [];
  for (const point of nearest) {
    if (repeated.has(point)) continue;
    const by = take(drafts, point, Math.abs(timeMs - point.timeMs), ages.staleAfterMs, salt);
    if (by !== undefined) leftOut.push({ point, why: "contradicted", by });
  }
  const deepest = drafts.sort((a, b) => a.depthM - b.depthM).at(-1);
  if (deepest === undefined) return undefined;
  const nodes = drafts.map(({ depthM, tempC, ageMs, points: of }) => ({ depthM, tempC, ageMs, points: of }));
  const curve = once(() =>
    shapeCurve(
      nodes.map((node) => node.depthM),
      nodes.map((node) => node.tempC),
    ),
  );
  return {
    timeMs,
    nodes,
    leftOut,
    get curve() {
      return curve();
    },
    deepestM: deepest.depthM,
    cast: castIn(nodes),
  };
}

function castIn(nodes: readonly ProfileNode[]): TripEvent | undefined {
  for (const { points } of nodes)
    for (const { source, event } of points) if (source === "profile") return event;
  return undefined;
}

/** The readings in reach of a minute: as they are given, in the order of time, and those nearest in time first. */
function usableAt(
  points: readonly TempPoint[],
  timeMs: number,
  ages: ReadingAges,
): { readonly usable: readonly TempPoint[]; readonly nearest: readonly TempPoint[] } {
  const msOf = (point: TempPoint): number => point.timeMs;
  const past = countUpTo(points, timeMs, msOf);
  let from = past;
  while (from > 0 && isInReach(timeAt(points, from - 1), timeMs, ages)) from--;
  let to = past;
  while (to < points.length && isInReach(timeAt(points, to), timeMs, ages)) to++;
  const usable = points.slice(from, to);
  return { usable, nearest: nearestFirst(usable, past - from, timeMs) };
}

const timeAt = (points: readonly TempPoint[], index: number): number => points[index]?.timeMs ?? Number.NaN;

/** Points of one minute stay in their order; of two as near, the earlier comes first. The first `past` are not later. */
function nearestFirst(points: readonly TempPoint[], past: number, timeMs: number): TempPoint[] {
  const ordered: TempPoint[] = [];
  let [before, after] = [past, past];
  while (before > 0 || after < points.length) {
    const beforeMs = before > 0 ? timeMs - timeAt(points, before - 1) : Number.POSITIVE_INFINITY;
    const afterMs = after < points.length ? timeAt(points, after) - timeMs : Number.POSITIVE_INFINITY;
    if (afterMs < beforeMs) ordered.push(points[after++] as TempPoint);
    else {
      const last = before;
      const minuteMs = timeAt(points, before - 1);
      while (before > 0 && timeAt(points, before - 1) === minuteMs) before--;
      for (let i = before; i < last; i++) ordered.push(points[i] as TempPoint);
    }
  }
  return ordered;
}

/** Puts a reading among the fresher ones; gives the one that speaks against it, if any does. */
function take(
  drafts: Draft[],
  point: TempPoint,
  ageMs: number,
  staleMs: number,
  salt: Salt,
): TempPoint | undefined {
  const { depthM, tempC } = point;
  // Half the weight at the age where a reading is called stale.
  const weight = 1 / (1 + (ageMs / staleMs) ** 2);
  const same = drafts.find((draft) => isSameDepth(draft, point));
  if (same !== undefined) {
    if (Math.abs(same.tempC - tempC) > CONTRADICTION_C) return same.points[0];
    same.points.push(point);
    same.weight += weight;
    same.weightedC += tempC * weight;
    same.tempC = same.weightedC / same.weight;
    same.densityKgM3 = densityAt(same.tempC, salt);
    return undefined;
  }
  const densityKgM3 = densityAt(tempC, salt);
  const against = drafts.find((draft) => isUnstable(draft, point, densityKgM3));
  if (against !== undefined) return against.points[0];
  drafts.push({ depthM, tempC, ageMs, densityKgM3, points: [point], weight, weightedC: tempC * weight });
  return undefined;
}

/** Depths of one profile stay apart, however near. */
function isSameDepth(draft: Draft, point: TempPoint): boolean {
  if (draft.depthM === point.depthM) return true;
  return Math.abs(draft.depthM - point.depthM) < SAME_DEPTH_M && !isOfCast(draft, point);
}

function isOfCast({ points }: Draft, { event }: TempPoint): boolean {
  return points.some((other) => other.event === event);
}

/** Two readings of different minutes that would put heavier water on lighter. One profile by itself is kept as read. */
function isUnstable(draft: Draft, point: TempPoint, densityKgM3: number): boolean {
  const heavier = densityKgM3 - draft.densityKgM3;
  const isHeavierAbove = point.depthM < draft.depthM ? heavier > UNSTABLE_KG_M3 : -heavier > UNSTABLE_KG_M3;
  return isHeavierAbove && !isOfCast(draft, point);
}
