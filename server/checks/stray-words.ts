/** What words and numbers that say nothing on a line were probably meant to say. */
import { isRead } from "../../grammar/is-read.ts";
import type { Issue } from "../../grammar/issues.ts";
import type { Item, Line } from "../../grammar/journal.ts";
import { splitNumber } from "../../grammar/number-text.ts";
import { quote } from "../../grammar/print.ts";
import { type Dimension, findUnit } from "../../grammar/units.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import { FIX_TITLES } from "./catalog/titles.ts";
import type { Fix, FixEdit, Place } from "./check.ts";
import { mendsLine, replace } from "./edits.ts";
import { rowOf } from "./sound-lines.ts";

/** A text to write, and the change that writes it. */
export interface Way {
  readonly text: string;
  readonly edit: FixEdit;
}

/** One fix for each way; the only one is preferred. */
export function writeFixes(ways: readonly Way[]): Fix[] {
  return ways.map(({ text, edit }) => ({
    title: FIX_TITLES.write(text),
    edits: [edit],
    isPreferred: ways.length === 1,
  }));
}

/** True when a fix of one edit leaves a line that can be read. */
export function isMending(analysis: JournalAnalysis, { edits }: Fix): boolean {
  return edits.every((edit) => mendsLine(analysis, edit));
}

/** The word of the line that a common word of the trade stands for: `setback` for `back`. */
export function wordOfTrade(line: Line, word: string): string | undefined {
  const row = isRead(line) ? rowOf(line) : undefined;
  return row?.items.find((item) => item.not.includes(word.toLowerCase()))?.word;
}

/** The stray words of a line in quotes, where all of them are plain words and the line has no remark yet. */
export function remarkMeant(analysis: JournalAnalysis, line: Line, place: Place): Way | undefined {
  const stray = strayItem(line, place);
  if (stray === undefined || !/^[\p{L}\p{M}'’!?.,;-]+(?:\s+[\p{L}\p{M}'’!?.,;-]+)*$/u.test(stray.text))
    return undefined;
  const text = quote(stray.text);
  const edit = replace(analysis.uri, { ...place, stop: stray.item.stop }, text);
  return mendsLine(analysis, edit) ? { text, edit } : undefined;
}

/**
 * A measure without its word, with each word of the line that would take it; or a word that stands behind its value.
 * Undefined where the issue is neither.
 */
export function measuresMeant(
  analysis: JournalAnalysis,
  issue: Extract<Issue, { code: "syntax" }>,
  line: Line,
  place: Place,
): { readonly typed: string; readonly ways: readonly Way[] } | undefined {
  if (issue.reason === "missing-value") return turnedAround(analysis, issue.word, line, place);
  const stray = issue.reason === "stray-text" ? strayItem(line, place) : undefined;
  const measure = stray === undefined ? undefined : measureIn(stray.text);
  if (stray === undefined || measure === undefined || !isRead(line)) return undefined;
  const items = (rowOf(line)?.items ?? []).filter(
    ({ word, type }) =>
      type.kind === "quantity" &&
      type.dimension === measure.dimension &&
      !line.items.some((item) => item.word === word),
  );
  const ways = items
    .map((item) => wayTo(analysis.uri, { ...place, stop: stray.item.stop }, `${item.word} ${measure.text}`))
    .filter(({ edit }) => mendsLine(analysis, edit));
  return { typed: measure.text, ways };
}

function wayTo(uri: string, place: Place, text: string): Way {
  return { text, edit: replace(uri, place, text) };
}

/** `80 ft out` for `out 80 ft`: the measure before was read without its word, and the word has nothing behind it. */
function turnedAround(
  analysis: JournalAnalysis,
  word: string,
  line: Line,
  place: Place,
): { readonly typed: string; readonly ways: readonly Way[] } | undefined {
  if (!isRead(line)) return undefined;
  const before = line.items.find((item) => item.stop <= place.start && isAdjacent(line, item, place));
  if (before?.bare !== true || before.value.kind !== "quantity") return undefined;
  const value = line.raw.slice(before.valueStart, before.stop);
  const way = wayTo(analysis.uri, { ...place, start: before.start }, `${word} ${value}`);
  return mendsLine(analysis, way.edit) ? { typed: value, ways: [way] } : undefined;
}

function isAdjacent({ raw }: Line, item: Item, place: Place): boolean {
  return raw.slice(item.stop, place.start).trim() === "";
}

/** The stretch of a line that was not read and starts there. */
function strayItem(line: Line, place: Place): { item: Item; text: string } | undefined {
  const item = isRead(line)
    ? line.items.find((one) => one.start === place.start && one.value.kind === "unread")
    : undefined;
  return item?.value.kind === "unread" ? { item, text: item.value.text } : undefined;
}

/** A text that is one number with its unit: `145ft`, `145 ft`. */
function measureIn(text: string): { text: string; dimension: Dimension } | undefined {
  const [first = "", second, ...rest] = text.split(/\s+/u);
  const split = splitNumber(first);
  if (split === undefined || rest.length > 0) return undefined;
  const unit = split.unit === "" ? second : second === undefined ? split.unit : undefined;
  const row = unit === undefined ? undefined : findUnit(unit);
  return row === undefined ? undefined : { text: `${split.number} ${row.unit}`, dimension: row.dimension };
}
