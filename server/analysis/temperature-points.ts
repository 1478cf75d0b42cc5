/** Every temperature of a day with the depth it was read at: lowered profiles, the probe at its depth, the surface. */
import { measureOf } from "../model/quantities.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import { isContradicted } from "./contradictions.ts";
import { isCrossing } from "./crossing-points.ts";
import { isUsableTemperature } from "./odd-temperature.ts";
import { profilesOf } from "./water-used.ts";

/** One temperature at one depth. */
export interface TempPoint {
  readonly depthM: number;
  readonly tempC: number;
  readonly timeMs: number;
  readonly source: "profile" | "probe" | "surface";
  readonly event: TripEvent;
  /** Which item of a profile's line it is. */
  readonly item?: number;
}

/**
 * All temperatures with a minute and a depth, in the order of time. A probe that shows no depth has no say here, and
 * neither has a temperature that no water has. Kept with the trip.
 */
export function temperaturePoints(trip: Trip): readonly TempPoint[] {
  const known = pointsOfTrip.get(trip) ?? readPoints(trip);
  pointsOfTrip.set(trip, known);
  return known;
}

const pointsOfTrip = new WeakMap<Trip, readonly TempPoint[]>();

function readPoints(trip: Trip): TempPoint[] {
  const lowered = profilesOf(trip).flatMap(({ event, timeMs, points }) =>
    points.map((point): TempPoint => ({ ...point, timeMs, source: "profile", event })),
  );
  const single = trip.events.flatMap((event) => singlePoint(trip, event));
  return [...lowered, ...single].sort((a, b) => a.timeMs - b.timeMs || a.depthM - b.depthM);
}

function singlePoint(trip: Trip, event: TripEvent): TempPoint[] {
  const { gear } = trip;
  const { line, instant } = event;
  if (instant === null || (line.verb !== "probe" && line.verb !== "surface")) return [];
  const tempC = measureOf(line, "temp", "temperature", gear.defaults);
  const depthM = line.verb === "surface" ? 0 : measureOf(line, "depth", "length", gear.defaults);
  if (tempC === undefined || depthM === undefined || depthM < 0) return [];
  if (!isUsableTemperature(gear, tempC, event) || isContradicted(trip, event, "depth")) return [];
  return [{ depthM, tempC, timeMs: instant.utcMs, source: line.verb, event }];
}

const repeatedOf = new WeakMap<readonly TempPoint[], ReadonlySet<TempPoint>>();

/**
 * Depths given twice in one profile with temperatures that differ, and depths so near each other that the water can't
 * change so much between them: neither of the two can be believed. In the order of the points; found once for a list.
 */
export function repeatedDepths(points: readonly TempPoint[]): ReadonlySet<TempPoint> {
  const repeated = repeatedOf.get(points) ?? findRepeated(points);
  repeatedOf.set(points, repeated);
  return repeated;
}

function findRepeated(points: readonly TempPoint[]): Set<TempPoint> {
  const casts = new Map<TripEvent, TempPoint[]>();
  for (const point of points) {
    if (point.source !== "profile") continue;
    const cast = casts.get(point.event);
    if (cast === undefined) casts.set(point.event, [point]);
    else cast.push(point);
  }
  const isRepeated = (point: TempPoint): boolean =>
    casts.get(point.event)?.some((other) => other !== point && isCrossing(point, other)) === true;
  return new Set(points.filter(isRepeated));
}
