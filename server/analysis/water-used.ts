/** The water temperature that density and viscosity are taken at: profile, else probe, else on top, else a default. */

import { defaultUnit, partsToSi } from "../model/quantities.ts";
import type { Reading, ReadingAges } from "../model/readings.ts";
import { fromSource, isInReach, valueAt } from "../model/readings.ts";
import { meantMs } from "../model/time-order.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import { soundPoints } from "./crossing-points.ts";
import { isUsableTemperature } from "./odd-temperature.ts";

/** A lowered probe's depths and temperatures, shallowest first. */
export interface Profile {
  readonly event: TripEvent;
  readonly timeMs: number;
  readonly points: readonly { depthM: number; tempC: number; item: number }[];
  /** Those that no other point of it speaks against. */
  readonly sound: Profile["points"];
}

/** Share of its length that a long line goes down (common practice: copper a quarter, leadcore a sixth, divers half). */
export const LONG_LINE_SHARE = 0.25;

/** A water temperature and what it was taken from. */
export interface WaterUsed {
  readonly tempC: number;
  readonly from: "profile" | "probe" | "surface" | "default";
  readonly event: TripEvent | undefined;
}

/** The profiles of a trip that have a clock time, in order; temperatures that no water has, and depths above the surface, are left out. */
export function profilesOf(trip: Trip): readonly Profile[] {
  const known = profilesOfTrip.get(trip) ?? readProfiles(trip);
  profilesOfTrip.set(trip, known);
  return known;
}

const profilesOfTrip = new WeakMap<Trip, readonly Profile[]>();

function readProfiles(trip: Trip): Profile[] {
  const profiles: Profile[] = [];
  for (const event of trip.events) {
    const timeMs = meantMs(trip, event);
    if (event.line.verb !== "profile" || timeMs === null) continue;
    const points = event.line.items.flatMap(({ value }, item) => {
      if (value.kind !== "point") return [];
      const depthM = partsToSi(value.depth, defaultUnit("length", "profile", trip.gear.defaults), "length");
      const tempC = partsToSi(
        value.temp,
        defaultUnit("temperature", "profile", trip.gear.defaults),
        "temperature",
      );
      if (depthM === undefined || tempC === undefined || depthM < 0) return [];
      return isUsableTemperature(trip.gear, tempC, event) ? [{ depthM, tempC, item }] : [];
    });
    points.sort((a, b) => a.depthM - b.depthM);
    if (points.length > 0) profiles.push({ event, timeMs, points, sound: soundPoints(points) });
  }
  return profiles;
}

/** The temperature of the water a line hangs in, down to `depthM`. */
export function waterAt(
  profiles: readonly Profile[],
  readings: readonly Reading[],
  timeMs: number,
  depthM: number,
  ages: ReadingAges,
): WaterUsed {
  let nearest: Profile | undefined;
  for (const profile of profiles) {
    const { sound, timeMs: readMs } = profile;
    if (sound.length === 0 || !isInReach(readMs, timeMs, ages)) continue;
    const isNearer = nearest === undefined || Math.abs(readMs - timeMs) < Math.abs(nearest.timeMs - timeMs);
    if (isNearer) nearest = profile;
  }
  if (nearest !== undefined)
    return { tempC: meanDownTo(nearest.sound, depthM), from: "profile", event: nearest.event };
  for (const source of ["probe", "surface"] as const) {
    const found = valueAt(fromSource(readings, source), timeMs, ages);
    if (found !== undefined) return { tempC: found.value, from: source, event: found.used[0]?.event };
  }
  return { tempC: DEFAULTS.waterTemperatureC.value, from: "default", event: undefined };
}

/** Mean temperature by depth from the top to `depthM`; the profile's own ends are held outward. */
function meanDownTo(points: Profile["sound"], depthM: number): number {
  let [sum, count] = [0, 0];
  for (const point of points) {
    if (point.depthM > depthM) continue;
    sum += point.tempC;
    count++;
  }
  return count > 0 ? sum / count : (points[0]?.tempC ?? Number.NaN);
}
