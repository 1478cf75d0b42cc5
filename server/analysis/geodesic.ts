/** Distance and bearing between two places on the WGS 84 ellipsoid, by Karney's method (the library's). */
import geodesic from "geographiclib-geodesic";
import type { Place } from "../model/gear-types.ts";

/** A way from one place to another. */
export interface Way {
  readonly distanceM: number;
  /** The first bearing, degrees true. */
  readonly bearingDeg: number;
}

const ways = new WeakMap<Place, WeakMap<Place, Way>>();

/**
 * The shortest way; works across the antimeridian and the poles. Undefined for a place that is none. Found once for the very
 * same two places.
 */
export function wayBetween(from: Place, to: Place): Way | undefined {
  const waysFrom = ways.get(from) ?? new WeakMap<Place, Way>();
  const known = waysFrom.get(to);
  if (known !== undefined) return known;
  const way = findWay(from, to);
  if (way !== undefined) ways.set(from, waysFrom.set(to, way));
  return way;
}

function findWay(from: Place, to: Place): Way | undefined {
  if (!isPlace(from) || !isPlace(to)) return undefined;
  const { WGS84 } = geodesic.Geodesic;
  const { s12, azi1 } = WGS84.Inverse(from.latitudeDeg, from.longitudeDeg, to.latitudeDeg, to.longitudeDeg);
  if (s12 === undefined || azi1 === undefined) return undefined;
  return { distanceM: s12, bearingDeg: (azi1 + 360) % 360 };
}

function isPlace({ latitudeDeg, longitudeDeg }: Place): boolean {
  return Math.abs(latitudeDeg) <= 90 && Number.isFinite(longitudeDeg);
}
