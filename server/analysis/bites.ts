/** Bites of a trip: a strike and the catch, loss or break-off that follows on the same rig are one bite. */
import type { Gear } from "../model/gear-types.ts";
import { matchMaybe } from "../model/match-name.ts";
import { findItem, hasWord, measureOf, nameOf, slotName } from "../model/quantities.ts";
import { findSpecies, UNSEEN_FISH } from "../model/species.ts";
import type { Timeline } from "../model/timeline.ts";
import type { Trip, TripEvent } from "../model/trip.ts";

/** How a bite ended; `open` when nothing more was written. */
type BiteEnd = "landed" | "lost" | "broke" | "missed" | "open";

/** One bite. */
export interface Bite {
  readonly rig: string;
  readonly strike: TripEvent | undefined;
  readonly end: BiteEnd;
  readonly last: TripEvent;
  readonly fish: Fish | undefined;
  readonly onSlider: boolean;
}

/** A fish that was seen. */
export interface Fish {
  /** Canonical name where known, else as written; undefined when not seen. */
  readonly species: string | undefined;
  readonly massKg: number | undefined;
  readonly lengthM: number | undefined;
  readonly fate: "kept" | "released" | "unsaid";
}

const ENDS: Readonly<Record<string, BiteEnd>> = {
  catch: "landed",
  lost: "lost",
  broke: "broke",
  miss: "missed",
};

/** All bites in the order of their last line. */
export function bitesOf(trip: Trip, timeline: Timeline): Bite[] {
  const open = new Map<string, TripEvent>();
  const bites: Bite[] = [];
  for (const event of timeline.ordered) {
    const { verb } = event.line;
    const { rig } = event;
    if (rig === undefined) continue;
    if (verb === "strike") {
      const before = open.get(rig);
      if (before !== undefined) bites.push(biteOf(trip, rig, before, before, "open"));
      open.set(rig, event);
      continue;
    }
    const end = ENDS[verb];
    const strike = open.get(rig);
    if (end === undefined || (end === "broke" && strike === undefined)) continue;
    open.delete(rig);
    bites.push(biteOf(trip, rig, strike, event, end));
  }
  for (const [rig, strike] of open) bites.push(biteOf(trip, rig, strike, strike, "open"));
  return bites;
}

function biteOf(trip: Trip, rig: string, strike: TripEvent | undefined, last: TripEvent, end: BiteEnd): Bite {
  const onSlider = [strike, last].some(
    (event) => event !== undefined && findItem(event.line, "slider")?.value.kind === "flag",
  );
  return { rig, strike, end, last, onSlider, fish: fishOf(trip, last) };
}

function fishOf(trip: Trip, event: TripEvent): Fish | undefined {
  if (event.line.verb !== "catch" && event.line.verb !== "lost") return undefined;
  const written = slotName(event.line, 1);
  const { defaults } = trip.gear;
  return {
    species:
      written === undefined || written.toLowerCase() === UNSEEN_FISH ? undefined : speciesName(trip, written),
    massKg: measureOf(event.line, "weight", "mass", defaults),
    lengthM: measureOf(event.line, "length", "length", defaults),
    fate: hasWord(event.line, "kept") ? "kept" : hasWord(event.line, "released") ? "released" : "unsaid",
  };
}

/** The canonical name of a species as written on this boat: the book's nicknames first, then the language's own. */
export function speciesName(trip: Trip, written: string): string {
  const meant = trip.gear.nicknames.get(written) ?? written;
  return findSpecies(meant)?.name ?? meant;
}

/** The lure that took a bite, as far as the log says. */
export function lureOfBite(bite: Bite, timeline: Timeline, gear: Gear): string | undefined {
  const named = matchMaybe(gear.lures, nameOf(bite.last.line, "lure"));
  if (named !== undefined) return named;
  const setting = timeline.settingAfter.get((bite.strike ?? bite.last).lineIndex);
  return bite.onSlider ? setting?.slider : setting?.lure;
}
