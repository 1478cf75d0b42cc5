/** Which rigs a line can be about: those its verb makes sense for at that minute, the likeliest first. */

import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { resolveInstant } from "../model/local-time.ts";
import { type RigNow, rigStateBefore, type TripPlace } from "../model/rig-states.ts";

/** What a rig is at, as the captain would say it. */
type RigMood = "out" | "fishing" | "fish-on" | "waiting";

/** The moods a verb is written about, the likeliest first. Verbs that aren't here are about any rig. */
const MOODS: Readonly<Record<string, readonly RigMood[]>> = {
  set: ["out"],
  again: ["waiting", "fish-on"],
  move: ["fishing", "fish-on", "waiting"],
  change: ["waiting", "fishing", "fish-on"],
  check: ["fishing"],
  pull: ["fishing", "waiting", "fish-on"],
  tangle: ["fishing", "fish-on", "waiting"],
  broke: ["fish-on", "fishing"],
  strike: ["fishing"],
  miss: ["fishing"],
  catch: ["fish-on", "fishing"],
  lost: ["fish-on", "fishing"],
  probe: ["fishing", "waiting", "fish-on"],
  touch: ["fishing", "waiting", "fish-on"],
};

/**
 * The rigs that a line with that verb can be about. All of them where none fits: a log may begin in the middle of
 * the day, and nothing offered would be no help at all.
 */
export function rigChoices(
  rigs: readonly string[],
  verb: string,
  { trip, timeline }: TripAnalysis,
  { lineIndex, date, clock, offset }: TypedStamp,
): readonly string[] {
  const moods = MOODS[verb];
  if (moods === undefined) return rigs;
  const timeMs = clock === null ? null : resolveInstant(date ?? trip.date, clock, offset, trip.zone).utcMs;
  const place: TripPlace = { lineIndex, timeMs: Number.isFinite(timeMs) ? timeMs : null };
  const ofMood = new Map<RigMood, string[]>();
  for (const rig of rigs) {
    const mood = moodOf(rigStateBefore(timeline, rig, place));
    ofMood.set(mood, [...(ofMood.get(mood) ?? []), rig]);
  }
  const fitting = moods.flatMap((mood) => ofMood.get(mood) ?? []);
  return fitting.length === 0 ? rigs : fitting;
}

/** The stamp of the line being typed, as far as it is there. */
export interface TypedStamp {
  readonly lineIndex: number;
  readonly date: string | null;
  readonly clock: string | null;
  readonly offset: string | null;
}

function moodOf({ state, because }: RigNow): RigMood {
  if (state === "up") return "out";
  if (state === "fishing") return "fishing";
  return because?.line.verb === "strike" ? "fish-on" : "waiting";
}
