/** Words written behind their numbers: `80 ft out 20 ft back` for `out 80 ft setback 20 ft`. */
import { isRead } from "../../grammar/is-read.ts";
import type { Line, ReadLine } from "../../grammar/journal.ts";
import { splitNumber } from "../../grammar/number-text.ts";
import { findUnit } from "../../grammar/units.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import type { Place } from "./check.ts";
import { mendsLine, replace } from "./edits.ts";
import { rowOf } from "./sound-lines.ts";
import type { Way } from "./way.ts";

/**
 * The word of the line that a common word of the trade stands for: `setback` for `back`. A word that takes a number
 * counts only before one, where its place is given.
 */
export function wordOfTrade(line: Line, word: string, place?: Place): string | undefined {
  const row = isRead(line) ? rowOf(line) : undefined;
  const item = row?.items.find((one) => one.not.includes(word.toLowerCase()));
  if (item === undefined || place === undefined || !["quantity", "number"].includes(item.type.kind))
    return item?.word;
  const [next = ""] = line.raw.slice(place.stop).trim().split(/\s+/u);
  return splitNumber(next) === undefined ? undefined : item.word;
}

/**
 * The measures from where a number was read without its word, each turned around with the word behind it; undefined
 * where that doesn't make a line that can be read.
 */
export function wordsBehind(
  analysis: JournalAnalysis,
  line: Line,
  place: Place,
): { readonly typed: string; readonly way: Way } | undefined {
  if (!isRead(line)) return undefined;
  const bare = line.items.find(
    ({ bare: isBare, value, start, stop }) =>
      isBare &&
      value.kind === "quantity" &&
      (start === place.start || (stop <= place.start && line.raw.slice(stop, place.start).trim() === "")),
  );
  if (bare === undefined) return undefined;
  const turned = turnAround(line, line.raw.slice(bare.start));
  if (turned === undefined) return undefined;
  const { lineIndex } = place;
  const stop = bare.start + turned.length;
  const edit = replace(analysis.uri, { lineIndex, start: bare.start, stop }, turned.text);
  if (!mendsLine(analysis, edit)) return undefined;
  return { typed: line.raw.slice(bare.start, stop), way: { text: turned.text, edit } };
}

interface Turned {
  readonly text: string;
  /** How much of the line it stands for. */
  readonly length: number;
}

/** Measures with their words behind them at the start of a text, as many as there are. */
function turnAround(line: ReadLine, text: string): Turned | undefined {
  const words = [...text.matchAll(/\S+/gu)];
  const turned: string[] = [];
  let length = 0;
  let measure: string[] = [];
  for (const { 0: typed, index } of words) {
    const word = measure.length === 0 ? undefined : wordMeant(line, typed);
    if (word !== undefined) {
      turned.push(`${word} ${measure.join(" ")}`);
      length = index + typed.length;
      measure = [];
    } else if (splitNumber(typed) !== undefined || findUnit(typed) !== undefined) measure.push(typed);
    else break;
  }
  return turned.length === 0 ? undefined : { text: turned.join(" "), length };
}

/** A word of the line that takes a measure, as it is or as the trade says it. */
function wordMeant(line: ReadLine, typed: string): string | undefined {
  const item = rowOf(line)?.words.get(typed.toLowerCase());
  if (item !== undefined) return item.type.kind === "quantity" ? item.word : undefined;
  return wordOfTrade(line, typed);
}
