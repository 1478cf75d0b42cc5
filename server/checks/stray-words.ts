/** What words and numbers that say nothing on a line were probably meant to say. */
import { isRead } from "../../grammar/is-read.ts";
import type { Issue } from "../../grammar/issues.ts";
import type { Item, Line, ReadLine } from "../../grammar/journal.ts";
import { splitNumber } from "../../grammar/number-text.ts";
import { quote } from "../../grammar/print.ts";
import { type Dimension, findUnit } from "../../grammar/units.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import type { Fix, Place } from "./check.ts";
import { mendsLine, replace } from "./edits.ts";
import { rowOf } from "./sound-lines.ts";
import type { Way } from "./way.ts";
import { wordsBehind } from "./words-behind.ts";

/** True when a fix of one edit leaves a line that can be read. */
export function isMending(analysis: JournalAnalysis, { edits }: Fix): boolean {
  return edits.every((edit) => mendsLine(analysis, edit));
}

/** A text in quotes, and the change that puts it there. */
interface TextMeant extends Way {
  /** The stray words belong to the name before them; else they are a remark. */
  readonly isName: boolean;
}

const PLAIN_WORDS = /^[\p{L}\p{M}'’!?.,;-]+(?:\s+[\p{L}\p{M}'’!?.,;-]+)*$/u;
/** As names are written: `Otter Creek`. */
const CAPITALS = /^\p{Lu}\S*(?:\s+\p{Lu}\S*)*$/u;

/**
 * The stray words of a line in quotes, where all of them are plain words: with the name before them where that is one
 * that may have several words and they are capitalized like one, else as a remark where the line has none yet.
 */
export function textMeant(analysis: JournalAnalysis, line: Line, place: Place): TextMeant | undefined {
  const stray = strayItem(line, place);
  if (stray === undefined || !PLAIN_WORDS.test(stray.text)) return undefined;
  const nameStart = CAPITALS.test(stray.text) ? startOfName(line, place) : undefined;
  const isName = nameStart !== undefined;
  const start = nameStart ?? place.start;
  const text = quote(line.raw.slice(start, stray.item.stop));
  const edit = replace(analysis.uri, { ...place, start, stop: stray.item.stop }, text);
  return mendsLine(analysis, edit) ? { text, edit, isName } : undefined;
}

/** Names that people, boats and places have; those of gear are words of the book. */
const SPACED: ReadonlySet<string> = new Set(["boat", "place", "spot", "text", "guest"]);

/** Where a name without quotes starts that ends right before a place; undefined where another thing stands there. */
function startOfName(line: Line, { start }: Place): number | undefined {
  if (!isRead(line)) return undefined;
  const row = rowOf(line);
  const endsThere = (stop: number): boolean => stop < start && line.raw.slice(stop, start).trim() === "";
  const slotIndex = line.slots.findIndex((slot) => !slot.quoted && endsThere(slot.stop));
  const slot = line.slots[slotIndex];
  if (slot !== undefined) return SPACED.has(row?.slots[slotIndex]?.of ?? "") ? slot.start : undefined;
  const item = line.items.find(({ stop }) => endsThere(stop));
  if (item?.value.kind !== "name" || item.value.quoted) return undefined;
  const type = row?.words.get(item.word)?.type;
  return type?.kind === "name" && SPACED.has(type.of) ? item.valueStart : undefined;
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
  if (issue.reason === "missing-value" || issue.reason === "repeated") {
    const behind = wordsBehind(analysis, line, place);
    if (behind !== undefined) return { typed: behind.typed, ways: [behind.way] };
  }
  const stray = strayMeasure(issue, line, place);
  const measures = stray === undefined ? [] : measuresIn(stray.text);
  const [first, ...others] = measures;
  if (stray === undefined || first === undefined || !isRead(line)) return undefined;
  const open = openMeasures(line);
  const texts = open(first).map((word) => {
    const taken = new Set([word]);
    return [`${word} ${first.text}`, ...others.map((one) => worded(open, one, taken))].join(" ");
  });
  const ways = texts
    .map((text) => wayTo(analysis.uri, { ...place, stop: stray.stop }, text))
    .filter(({ edit }) => mendsLine(analysis, edit));
  return { typed: measures.map(({ text }) => text).join(" "), ways };
}

/** A number with its unit. */
interface Measure {
  readonly text: string;
  readonly dimension: Dimension;
}

/** Words of a line, not given yet, that take a measure. */
type OpenMeasures = (measure: Measure) => readonly string[];

function openMeasures(line: ReadLine): OpenMeasures {
  return ({ dimension }) =>
    (rowOf(line)?.items ?? []).flatMap(({ word, type }) =>
      type.kind === "quantity" &&
      type.dimension === dimension &&
      !line.items.some((item) => item.word === word)
        ? [word]
        : [],
    );
}

/** A measure with the first word that is left for it; by itself where none is. */
function worded(open: OpenMeasures, measure: Measure, taken: Set<string>): string {
  const word = open(measure).find((one) => !taken.has(one));
  if (word === undefined) return measure.text;
  taken.add(word);
  return `${word} ${measure.text}`;
}

function wayTo(uri: string, place: Place, text: string): Way {
  return { text, edit: replace(uri, place, text) };
}

/** A measure that nothing on the line takes, or a second one where the first was taken without its word. */
function strayMeasure(
  issue: Extract<Issue, { code: "syntax" }>,
  line: Line,
  place: Place,
): { readonly text: string; readonly stop: number } | undefined {
  if (issue.reason === "stray-text") {
    const stray = strayItem(line, place);
    return stray === undefined ? undefined : { text: stray.text, stop: stray.item.stop };
  }
  if (issue.reason !== "repeated" || !isRead(line)) return undefined;
  const second = line.items.find((item) => item.start === place.start && item.bare);
  return second === undefined
    ? undefined
    : { text: line.raw.slice(second.valueStart, second.stop), stop: second.stop };
}

/** The stretch of a line that was not read and starts there. */
function strayItem(line: Line, place: Place): { item: Item; text: string } | undefined {
  const item = isRead(line)
    ? line.items.find((one) => one.start === place.start && one.value.kind === "unread")
    : undefined;
  return item?.value.kind === "unread" ? { item, text: item.value.text } : undefined;
}

/** A text that is numbers with their units, one after another: `145ft`, `98 ft 44 F 2.4 mph`; empty where it is not. */
function measuresIn(text: string): Measure[] {
  const words = text.split(/\s+/u);
  const measures: Measure[] = [];
  for (let i = 0; i < words.length; i++) {
    const split = splitNumber(words[i] ?? "");
    if (split === undefined) return [];
    const row = findUnit(split.unit === "" ? (words[++i] ?? "") : split.unit);
    if (row === undefined) return [];
    measures.push({ text: `${split.number} ${row.unit}`, dimension: row.dimension });
  }
  return measures;
}
