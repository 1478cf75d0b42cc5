/** The verb that a line was meant to start with where it starts with something else that the trade says. */
import type { Line } from "../../grammar/journal.ts";
import { splitNumber } from "../../grammar/number-text.ts";
import { type IndexedRow, VOCABULARY } from "../../grammar/vocabulary.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import type { Place } from "./check.ts";
import { mendsLine, replace } from "./edits.ts";
import type { Way } from "./way.ts";

const EVENTS: readonly IndexedRow[] = VOCABULARY.rows.filter((row) => row.place === "event");

/** The verb that a word of the trade stands for: `catch` for `landed`. */
export function verbOfTrade(word: string): string | undefined {
  return EVENTS.find((row) => row.not.includes(word.toLowerCase()))?.verb;
}

/** What a line says that starts with an attribute, or with a measure, in place of its verb. */
export interface VerbLess {
  /** Lines that say such things. */
  readonly verbs: readonly string[];
  /** The line with its verb, where that makes one that can be read. */
  readonly ways: readonly Way[];
}

/** Lines that take what a line starts with: `weather` for `wind SW 10`. Empty where none does. */
export function verbLess(analysis: JournalAnalysis, line: Line, place: Place): VerbLess {
  const word = line.raw.slice(place.start, place.stop).toLowerCase();
  const isMeasure = splitNumber(word) !== undefined;
  const rows = isMeasure ? [] : EVENTS.filter((row) => takes(row, word));
  const rest = line.raw.slice(place.start).trimEnd();
  const ways = rows
    .map(({ verb }) => wayTo(analysis.uri, place, verb, rest))
    .filter(({ edit }) => mendsLine(analysis, edit));
  return { verbs: rows.map((row) => row.verb), ways };
}

/** Flags say something about a line; what starts a line is a reading or a name. */
function takes(row: IndexedRow, word: string): boolean {
  const item = row.words.get(word) ?? row.items.find((one) => one.not.includes(word));
  return item !== undefined && item.type.kind !== "flag";
}

function wayTo(uri: string, place: Place, verb: string, rest: string): Way {
  const start = { ...place, stop: place.start };
  return { text: `${verb} ${rest}`, edit: replace(uri, start, `${verb} `) };
}
