/** Ways to mend a line that can't be read, where there is one that loses nothing. */

import { isRead } from "../../grammar/is-read.ts";
import type { Issue } from "../../grammar/issues.ts";
import type { Line } from "../../grammar/journal.ts";
import { canonicalClock, isCalendarDate } from "../../grammar/stamp.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import { FIX_TITLES } from "./catalog/titles.ts";
import type { Fix, FixEdit, Place } from "./check.ts";
import { insert, mendsLine, remove, replace } from "./edits.ts";
import { ownerOf } from "./owners.ts";
import { rowOf } from "./sound-lines.ts";
import { usualUnits } from "./usual-units.ts";

type SyntaxIssue = Extract<Issue, { code: "syntax" }>;
type Way = readonly [title: string, ...edits: FixEdit[]];

/** Fixes of one syntax issue; only those after which the line can be read. The only one is preferred. */
export function syntaxFixes(analysis: JournalAnalysis, issue: SyntaxIssue, place: Place): Fix[] {
  const line = analysis.parse.journal.lines[place.lineIndex];
  if (line === undefined) return [];
  const ways = waysOut(analysis, issue, line, place).filter(([, ...edits]) => isMended(analysis, edits));
  return ways.map(([title, ...edits]) => ({ title, edits, isPreferred: ways.length === 1 }));
}

function isMended(analysis: JournalAnalysis, edits: readonly FixEdit[]): boolean {
  const [edit] = edits;
  return edit !== undefined && mendsLine(analysis, edit);
}

function waysOut(analysis: JournalAnalysis, issue: SyntaxIssue, line: Line, place: Place): Way[] {
  const { uri } = analysis;
  const text = line.raw.slice(place.start, place.stop);
  switch (issue.reason) {
    case "repeated":
      return [[FIX_TITLES.remove(text), remove(uri, line, place)]];
    case "stamp-in-property":
      return [[FIX_TITLES.remove(text), stampRemoval(uri, line, place)]];
    case "exclusive":
      return exclusiveWays(uri, issue.other, line, place);
    case "open-quote":
      return [[FIX_TITLES.closeQuote, insert(uri, place.lineIndex, line.raw.trimEnd().length, '"')]];
    case "bad-clock":
      return writeWay(uri, place, clockMeant(text));
    case "bad-date":
      return writeWay(uri, place, dateMeant(text));
    case "out-of-place":
      return indentWay(analysis, issue.belongs, line, place);
    case "stray-text":
      return commentWay(uri, line, place);
    case "which-measure":
      return measureWays(analysis, issue, line, place);
    default:
      return [];
  }
}

function stampRemoval(uri: string, line: Line, place: Place): FixEdit {
  const rest = line.raw.slice(place.stop);
  return replace(uri, { ...place, stop: line.raw.length - rest.trimStart().length }, "");
}

function exclusiveWays(uri: string, other: string, line: Line, place: Place): Way[] {
  const ways: Way[] = [
    [FIX_TITLES.remove(line.raw.slice(place.start, place.stop)), remove(uri, line, place)],
  ];
  const first = isRead(line) ? line.items.find((item) => item.word === other) : undefined;
  if (first !== undefined) {
    const { start, stop } = first;
    const edit = remove(uri, line, { lineIndex: place.lineIndex, start, stop });
    ways.push([FIX_TITLES.remove(line.raw.slice(start, stop)), edit]);
  }
  return ways;
}

function writeWay(uri: string, place: Place, meant: string | undefined): Way[] {
  return meant === undefined ? [] : [[FIX_TITLES.write(meant), replace(uri, place, meant)]];
}

/** `0514`, `5.14`, `5:14pm` and `5:14 in the afternoon` in one word. */
function clockMeant(text: string): string | undefined {
  const match = /^(~?)(\d{1,2})[:.h]?(\d{2})(am|pm)?$/iu.exec(text);
  if (match === null) return undefined;
  const [, approx = "", hours = "", minutes = "", half] = match;
  const isHalf = half !== undefined;
  if (isHalf && (Number(hours) < 1 || Number(hours) > 12)) return undefined;
  const hour = isHalf ? (Number(hours) % 12) + (half.toLowerCase() === "pm" ? 12 : 0) : Number(hours);
  const clock = canonicalClock(`${hour}:${minutes}`);
  return clock === undefined ? undefined : approx + clock.clock;
}

/** `2031-6-5`, `2031/06/05`, `2031.6.5`. */
function dateMeant(text: string): string | undefined {
  const match = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/u.exec(text);
  if (match === null) return undefined;
  const [, year = "", month = "", day = ""] = match;
  const date = `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
  return isCalendarDate(date) ? date : undefined;
}

function indentWay(analysis: JournalAnalysis, belongs: string, line: Line, place: Place): Way[] {
  const { lineIndex } = place;
  const blanks = line.raw.length - line.raw.trimStart().length;
  if (belongs === "margin") {
    const edit = replace(analysis.uri, { lineIndex, start: 0, stop: blanks }, "");
    return blanks > 0 ? [[FIX_TITLES.unindent, edit]] : [];
  }
  const isBelow = blanks === 0 && analysis.parse.blocks[lineIndex] === belongs;
  return isBelow ? [[FIX_TITLES.indent, insert(analysis.uri, lineIndex, 0, "  ")]] : [];
}

function commentWay(uri: string, line: Line, place: Place): Way[] {
  const text = line.raw.slice(place.start, place.stop);
  const comment = isRead(line) ? line.comment : null;
  const end = line.raw.trimEnd().length;
  const added = insert(uri, place.lineIndex, end, comment === null ? `  # ${text}` : ` ${text}`);
  return [[FIX_TITLES.toComment(text), remove(uri, line, place), added]];
}

function measureWays(
  analysis: JournalAnalysis,
  issue: Extract<SyntaxIssue, { reason: "which-measure" }>,
  line: Line,
  place: Place,
): Way[] {
  if (!isRead(line)) return [];
  const row = rowOf(line);
  const defaults = ownerOf(analysis, place.lineIndex)?.gear.defaults;
  return issue.words.flatMap((word): Way[] => {
    const type = row?.words.get(word)?.type;
    if (type?.kind !== "quantity" || type.dimension === "any") return [];
    const [unit = ""] = usualUnits(word, line.verb, type.dimension, defaults);
    const text = `${issue.number} ${unit}`;
    return [[FIX_TITLES.write(text), replace(analysis.uri, place, text)]];
  });
}
