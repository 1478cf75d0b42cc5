/** The fish a boat usually writes of, in its own words, the most frequent first. */
import { slotName } from "../model/quantities.ts";
import type { Trip } from "../model/trip.ts";
import type { Snapshot } from "./snapshot.ts";

const FISH_LINES = new Set(["catch", "lost", "box", "dock"]);

/** Species and nicknames as the boat's lines in the file name them; those as frequent in the order of the file. */
export function usualSpecies(snapshot: Snapshot, boat: string, lineIndex: number): string[] {
  const counts = new Map<string, number>();
  for (const { trip } of snapshot.analysis.trips) {
    if (trip.boat !== boat) continue;
    for (const [word, lines] of fishOf(trip)) {
      // The word that stands on the line itself may be half typed.
      const times = lines.length - Number(lines.includes(lineIndex));
      if (times > 0) counts.set(word, (counts.get(word) ?? 0) + times);
    }
  }
  return [...counts].sort((a, b) => b[1] - a[1]).map(([word]) => word);
}

const knownFish = new WeakMap<Trip, ReadonlyMap<string, readonly number[]>>();

/** Line numbers by the fish they name, kept for as long as the trip is the same. */
function fishOf(trip: Trip): ReadonlyMap<string, readonly number[]> {
  const known = knownFish.get(trip);
  if (known !== undefined) return known;
  const fish = new Map<string, number[]>();
  for (const { line, lineIndex } of trip.events) {
    const word = FISH_LINES.has(line.verb) ? slotName(line, line.slots.length - 1) : undefined;
    if (word !== undefined && isNamed(line.verb, line.slots.length))
      fish.set(word, [...(fish.get(word) ?? []), lineIndex]);
  }
  knownFish.set(trip, fish);
  return fish;
}

/** A catch that names only its rig names no fish. */
function isNamed(verb: string, slots: number): boolean {
  return verb === "box" || verb === "dock" ? slots === 1 : slots === 2;
}
