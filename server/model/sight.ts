/**
 * What is looked at in a trip. A sight tells of each line what somebody sees of it, as one text; an edit that leaves
 * that text as it was on every line can't change what he makes of the trip. A sight may see more than is read, never
 * less.
 */
import type { FactLine, Line } from "../../grammar/journal.ts";
import { hasWord } from "./quantities.ts";

/** What is seen of a line; empty where nothing is. Two lines that look the same are the same to whoever has the sight. */
export type Sight = (line: Line) => string;

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
