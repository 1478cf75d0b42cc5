/**
 * What the rules of a day look at. A sight tells of each line what a rule sees of it, as one text; an edit that leaves
 * that text as it was on every line can't change what the rule finds. A sight may see more than its rule reads, never
 * less: what the rule reads by way of the model and the analysis, and the places it points at, counts with it.
 */
import type { FactLine, Line } from "../../grammar/journal.ts";
import { hasWord } from "../model/quantities.ts";
import type { LineRule, Rule } from "./check.ts";

/** What is seen of a line; empty where nothing is. Two lines that look the same are the same to whoever has the sight. */
export type Sight = (line: Line) => string;

/** A rule that looks at one trip alone: with what it sees of it, or at each of its events by itself. */
export type TripRule = { readonly rule: Rule; readonly sees: Sight } | { readonly ofLine: LineRule };

const NOTHING = "";

/** All that several sights see. */
export const all =
  (...sights: readonly Sight[]): Sight =>
  (line) =>
    sights.map((sight) => sight(line)).join("\n");

/** Whole lines of these verbs. */
export const linesOf = (...verbs: readonly string[]): Sight => {
  const seen = new Set(verbs);
  return (line) => (line.kind === "fact" && seen.has(line.verb) ? line.raw : NOTHING);
};

/** These attributes of every event, with the head of the line they stand on. */
export const words = (...seen: readonly string[]): Sight => {
  const isSeen = new Set(seen);
  return (line) => {
    if (line.kind !== "fact") return NOTHING;
    const items = line.items.filter(({ word }) => isSeen.has(word));
    const written = items.map(({ start, stop }) => `${start} ${line.raw.slice(start, stop)}`);
    return items.length === 0 ? NOTHING : [headOf(line), ...written].join("\n");
  };
};

/** Which attributes stand on lines of a verb, whatever they say. */
export const wordsWritten =
  (verb: string): Sight =>
  (line) =>
    line.kind === "fact" && line.verb === verb ? line.items.map(({ word }) => word).join(" ") : NOTHING;

/** The trip's own property lines of these verbs. */
export const properties =
  (...verbs: readonly string[]): Sight =>
  (line) =>
    line.kind === "property" && verbs.includes(line.verb) ? line.raw : NOTHING;

/** Lines that can't be read. */
export const UNREADABLE: Sight = (line) => (line.kind === "unreadable" ? line.raw : NOTHING);

/** Date, clock, verb and names of every event, and whether it is `sure`: in what order which rigs did what. */
export const HEADS: Sight = (line) => (line.kind === "fact" ? headOf(line) : NOTHING);

function headOf(line: FactLine): string {
  const stop = line.slots.at(-1)?.stop ?? line.verbStop;
  return `${line.raw.slice(0, stop)}\n${hasWord(line, "sure")}`;
}

/** When each rig was in the water (`build-timeline.ts`, `rig-states.ts`). */
export const RIGS: Sight = all(HEADS, words("down", "with", "slider"));

/** Lines that say how a rig is set (`setting.ts`). */
const SETTINGS: Sight = linesOf("set", "move", "again", "change", "check");

/** How much is out at each line, and which line said so (`cable-at.ts`, `related-out.ts`). */
export const AMOUNTS: Sight = all(RIGS, SETTINGS, words("out"));

/** The bottom as it was read (`bottom.ts`). */
export const BOTTOMS: Sight = all(HEADS, linesOf("sonar", "touch"));

/** Positions and courses, on the way that the boat went between them (`track.ts`, `bearings.ts`). */
export const WAY: Sight = all(HEADS, linesOf("gps", "turn", "run"), words("at"));

/** What the instruments showed of speed, temperature and current (`readings.ts`, `temperature-points.ts`, `current-looks.ts`). */
export const READINGS: Sight = all(WAY, BOTTOMS, linesOf("probe", "surface", "profile"));

/** The speed that each depth goes by, not the depth itself (`trip-speed.ts`, `trolled-depths.ts`). */
export const SPEEDS: Sight = all(RIGS, READINGS, words("speed"));

/** Events that say nothing of depths but by their head and the words of `TELLING`. */
const DAY_OF_THE_CREW: ReadonlySet<string> = new Set([
  ...["depart", "return", "strike", "miss", "catch", "lost", "broke", "box", "dock", "weigh-in"],
  ...["weather", "water", "birds", "fleas", "weeds", "serviced", "note"],
]);
const TELLING: Sight = words(
  ...["down", "with", "slider", "at", "out", "behind", "bottom", "depth", "temp", "speed", "course"],
);

const METHOD: Sight = properties("method", "target");

/** Everything that depths, crossings and calibrations are reckoned from (`line-depth.ts`, `calibration-readings.ts`). */
export const DEPTHS: Sight = (line) => {
  if (line.kind !== "fact") return METHOD(line);
  return DAY_OF_THE_CREW.has(line.verb) ? HEADS(line) + TELLING(line) : line.raw;
};
