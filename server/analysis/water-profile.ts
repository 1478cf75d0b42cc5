/**
 * The temperature at every depth at one minute, from all readings in reach. Readings of the same depth are weighted by
 * age; where a newer one contradicts an older one the newer holds and the older is left out, and said to be. Between
 * depths the curve keeps the readings' shape; below the deepest reading there is none.
 */
import type { ReadingAges } from "../model/readings.ts";
import type { TripEvent } from "../model/trip.ts";
import { type ShapeCurve, shapeCurve } from "../physics/shape-preserving.ts";
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

/** The profile at a minute; undefined when no reading may be used. */
export function profileAt(
  points: readonly TempPoint[],
  timeMs: number,
  ages: ReadingAges,
  salt: Salt,
): WaterProfile | undefined {
  const ageOf = (point: TempPoint): number => Math.abs(timeMs - point.timeMs);
  const usable = points.filter(({ timeMs: readMs }) =>
    readMs <= timeMs ? timeMs - readMs <= ages.unusedAfterMs : readMs - timeMs <= ages.aheadMs,
  );
  const repeated = new Set(repeatedDepths(usable));
  const leftOut: LeftOut[] = [...repeated].map((point) => ({ point, why: "repeated", by: undefined }));
  const nodes: ProfileNode[] = [];
  const fresh = usable.filter((point) => !repeated.has(point)).sort((a, b) => ageOf(a) - ageOf(b));
  for (const point of fresh) {
    const by = take(nodes, point, ageOf, ages.staleAfterMs, salt);
    if (by !== undefined) leftOut.push({ point, why: "contradicted", by });
  }
  if (nodes.length === 0) return undefined;
  nodes.sort((a, b) => a.depthM - b.depthM);
  return {
    timeMs,
    nodes,
    leftOut,
    curve: shapeCurve(
      nodes.map((node) => node.depthM),
      nodes.map((node) => node.tempC),
    ),
    deepestM: nodes.at(-1)?.depthM ?? 0,
    cast: nodes.flatMap((node) => node.points).find((point) => point.source === "profile")?.event,
  };
}

/** Puts a reading among the fresher ones; gives the one that speaks against it, if any does. */
function take(
  nodes: ProfileNode[],
  point: TempPoint,
  ageOf: (point: TempPoint) => number,
  staleMs: number,
  salt: Salt,
): TempPoint | undefined {
  const near = nodes.findIndex((node) => isSameDepth(node, point));
  const node = nodes[near];
  if (node !== undefined) {
    if (Math.abs(node.tempC - point.tempC) > CONTRADICTION_C) return node.points[0];
    nodes[near] = merged(node, point, ageOf, staleMs);
    return undefined;
  }
  const against = nodes.find((other) => isUnstable(other, point, salt));
  if (against !== undefined) return against.points[0];
  nodes.push({ depthM: point.depthM, tempC: point.tempC, ageMs: ageOf(point), points: [point] });
  return undefined;
}

/** Depths of one profile stay apart, however near. */
function isSameDepth(node: ProfileNode, point: TempPoint): boolean {
  if (node.depthM === point.depthM) return true;
  const isOneCast = node.points.some((other) => other.event === point.event);
  return !isOneCast && Math.abs(node.depthM - point.depthM) < SAME_DEPTH_M;
}

/** Half the weight at the age where a reading is called stale. */
function merged(
  node: ProfileNode,
  point: TempPoint,
  ageOf: (point: TempPoint) => number,
  staleMs: number,
): ProfileNode {
  const points = [...node.points, point];
  const weights = points.map((one) => 1 / (1 + (ageOf(one) / staleMs) ** 2));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = (of: (point: TempPoint) => number): number =>
    points.reduce((sum, one, i) => sum + of(one) * (weights[i] ?? 0), 0) / total;
  return { depthM: node.depthM, tempC: mean((one) => one.tempC), ageMs: node.ageMs, points };
}

/** Two readings of different minutes that would put heavier water on lighter. One profile by itself is kept as read. */
function isUnstable(node: ProfileNode, point: TempPoint, salt: Salt): boolean {
  if (node.points.some((other) => other.event === point.event)) return false;
  const heavier = densityAt(point.tempC, salt) - densityAt(node.tempC, salt);
  return point.depthM < node.depthM ? heavier > UNSTABLE_KG_M3 : -heavier > UNSTABLE_KG_M3;
}
