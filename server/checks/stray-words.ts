/** What words and numbers that say nothing on a line were probably meant to say. */
import { isRead } from "../../grammar/is-read.ts";
import type { Issue } from "../../grammar/issues.ts";
import type { Item, Line } from "../../grammar/journal.ts";
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
  if (issue.reason === "missing-value" || issue.reason === "repeated") {
    const behind = wordsBehind(analysis, line, place);
    if (behind !== undefined) return { typed: behind.typed, ways: [behind.way] };
  }
  const stray = strayMeasure(issue, line, place);
  const measure = stray === undefined ? undefined : measureIn(stray.text);
  if (stray === undefined || measure === undefined || !isRead(line)) return undefined;
  const items = (rowOf(line)?.items ?? []).filter(
    ({ word, type }) =>
      type.kind === "quantity" &&
      type.dimension === measure.dimension &&
      !line.items.some((item) => item.word === word),
  );
  const ways = items
    .map((item) => wayTo(analysis.uri, { ...place, stop: stray.stop }, `${item.word} ${measure.text}`))
    .filter(({ edit }) => mendsLine(analysis, edit));
  return { typed: measure.text, ways };
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

/** A text that is one number with its unit: `145ft`, `145 ft`. */
function measureIn(text: string): { text: string; dimension: Dimension } | undefined {
  const [first = "", second, ...rest] = text.split(/\s+/u);
  const split = splitNumber(first);
  if (split === undefined || rest.length > 0) return undefined;
  const unit = split.unit === "" ? second : second === undefined ? split.unit : undefined;
  const row = unit === undefined ? undefined : findUnit(unit);
  return row === undefined ? undefined : { text: `${split.number} ${row.unit}`, dimension: row.dimension };
}
