/** Where the boat was: the positions written, and the place nearest to a minute. */
import type { FactLine } from "../../grammar/journal.ts";
import type { Place } from "../model/gear-types.ts";
import { nameOf, positionOf } from "../model/quantities.ts";
import type { Trip, TripEvent } from "../model/trip.ts";

/** A position with its minute. */
export interface Fix {
  readonly event: TripEvent;
  readonly timeMs: number;
  readonly place: Place;
}

const fixesOfTrips = new WeakMap<Trip, readonly Fix[]>();

/** The positions of a day in the order of time. Kept with the trip. */
export function fixesOf(trip: Trip): readonly Fix[] {
  const fixes = fixesOfTrips.get(trip) ?? findFixes(trip);
  fixesOfTrips.set(trip, fixes);
  return fixes;
}

function findFixes(trip: Trip): Fix[] {
  return trip.events
    .flatMap((event) => {
      const place = placeOf(event);
      return place === undefined || event.instant === null
        ? []
        : [{ event, timeMs: event.instant.utcMs, place }];
    })
    .sort((a, b) => a.timeMs - b.timeMs);
}

const placesOfLines = new WeakMap<FactLine, { readonly place: Place | undefined }>();

/** A written position, the very same for the same line. The place a boat runs to is where it will be, not where it is. */
function placeOf({ line }: TripEvent): Place | undefined {
  if (line.verb === "run") return undefined;
  const known = placesOfLines.get(line) ?? { place: positionOf(line, "at") };
  placesOfLines.set(line, known);
  return known.place;
}

/** Where the day was spent nearest to a minute: a position, else the spot run to. */
export function placeNear(trip: Trip, fixes: readonly Fix[], timeMs: number): Place | undefined {
  const nearest = fixes.reduce<Fix | undefined>(
    (best, fix) =>
      best === undefined || Math.abs(fix.timeMs - timeMs) < Math.abs(best.timeMs - timeMs) ? fix : best,
    undefined,
  );
  return nearest?.place ?? spotRunTo(trip);
}

function spotRunTo({ gear, events }: Trip): Place | undefined {
  for (const { line } of events) {
    if (line.verb !== "run") continue;
    const place = positionOf(line, "at") ?? gear.spots.get(nameOf(line, "to") ?? "");
    if (place !== undefined) return place;
  }
  return undefined;
}
