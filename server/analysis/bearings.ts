/**
 * Bearings of a line as true directions. An unmarked bearing is taken as true, as the GPS shows it. One marked magnetic
 * is turned by the variation that the boat's book states, else by that of the world's magnetic model.
 */
import { hasWord, numberOf } from "../model/quantities.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import { magneticVariationDeg } from "../physics/magnetic-variation.ts";
import { fixesOf, placeNear } from "./positions.ts";

/** The angle from true north to the compass needle's, east positive, and where it was taken from. */
export interface Variation {
  readonly deg: number;
  readonly from: "book" | "model";
}

/** A direction and what its north is. */
export interface Bearing {
  readonly deg: number;
  /** Marked magnetic, and no variation is known: it can't be turned to true. */
  readonly isMagnetic: boolean;
  /** What turned a magnetic bearing to true. */
  readonly turnedBy?: Variation;
}

/** The bearing under a word of a line; undefined where there is none, or where it is none of a circle. */
export function bearingOf(trip: Trip, { line }: TripEvent, word: "course" | "to"): Bearing | undefined {
  const deg = numberOf(line, word);
  if (deg === undefined || deg < 0 || deg > 360) return undefined;
  if (!hasWord(line, "magnetic")) return { deg: deg % 360, isMagnetic: false };
  const variation = variationOf(trip);
  if (variation === undefined) return { deg: deg % 360, isMagnetic: true };
  return { deg: (((deg + variation.deg) % 360) + 360) % 360, isMagnetic: false, turnedBy: variation };
}

/** The course on a line: over ground on `gps`, the new one on `turn`. */
export function courseOf(trip: Trip, event: TripEvent): Bearing | undefined {
  if (event.line.verb === "gps") return bearingOf(trip, event, "course");
  return event.line.verb === "turn" ? bearingOf(trip, event, "to") : undefined;
}

const modelled = new WeakMap<Trip, { readonly deg: number | undefined }>();

/** A trip's variation: the book's, else the model's on its day at the first place known; undefined where it has none. */
export function variationOf(trip: Trip): Variation | undefined {
  const { variationDeg } = trip.gear;
  if (variationDeg !== undefined) return { deg: variationDeg, from: "book" };
  const known = modelled.get(trip) ?? { deg: byModel(trip) };
  modelled.set(trip, known);
  return known.deg === undefined ? undefined : { deg: known.deg, from: "model" };
}

const YEAR_MS = 365.25 * 86_400_000;

function byModel(trip: Trip): number | undefined {
  const dayMs = Date.parse(trip.date);
  const place = Number.isNaN(dayMs) ? undefined : placeNear(trip, fixesOf(trip), Number.NEGATIVE_INFINITY);
  if (place === undefined) return undefined;
  const year = new Date(dayMs).getUTCFullYear();
  return magneticVariationDeg({ ...place, year: year + (dayMs - Date.UTC(year, 0)) / YEAR_MS });
}
