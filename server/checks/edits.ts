/** Edits that fixes are made of. */

import type { Issue } from "../../grammar/issues.ts";
import type { ReadLine } from "../../grammar/journal.ts";
import { quote } from "../../grammar/print.ts";
import { readLine } from "../../grammar/read-line.ts";
import { VOCABULARY } from "../../grammar/vocabulary.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import { FIX_TITLES } from "./catalog/titles.ts";
import type { Fix, FixEdit, Place } from "./check.ts";

/** Longer lines are not read again to try a fix. */
const LONGEST_TRIED = 2000;

/** A name as it is written on a line: in quotes only where it needs them. */
export function writtenName(name: string): string {
  return name === "" || /^[#"]|\s|,$/u.test(name) ? quote(name) : name;
}

/** Puts a text in a place of a file. */
export function replace(uri: string, place: Place, text: string): FixEdit {
  const { lineIndex, start, stop } = place;
  return { uri, lineIndex, start, stop, text };
}

/** Puts a text at one point of a line. */
export function insert(uri: string, lineIndex: number, at: number, text: string): FixEdit {
  return { uri, lineIndex, start: at, stop: at, text };
}

/** One fix for each word that may have been meant; the only one of them is preferred. */
export function renameFixes(uri: string, place: Place, words: readonly string[]): Fix[] {
  return words.map((word) => ({
    title: FIX_TITLES.change(writtenName(word)),
    edits: [replace(uri, place, writtenName(word))],
    isPreferred: words.length === 1,
  }));
}

/** Takes a stretch out of a line, with the blanks before it. */
export function remove(uri: string, line: { raw: string }, place: Place): FixEdit {
  const start = line.raw.slice(0, place.start).trimEnd().length;
  return replace(uri, { ...place, start: start === 0 ? place.start : start }, "");
}

/**
 * True when the edit leaves a line without an issue, or with one that was hidden behind the one it mends. Only for
 * edits of one line that don't change its block.
 */
export function mendsLine(analysis: JournalAnalysis, edit: FixEdit): boolean {
  const issue = issueAfter(analysis, edit);
  return issue !== undefined && (issue === null || issue.span[0] >= edit.start + edit.text.length);
}

/** What the reader would find wrong with a line after an edit; undefined for a line too long to try. */
export function issueAfter(analysis: JournalAnalysis, edit: FixEdit): Issue | null | undefined {
  const line = analysis.parse.journal.lines[edit.lineIndex];
  const block = analysis.parse.blocks[edit.lineIndex];
  if (line === undefined || block === undefined || line.raw.length > LONGEST_TRIED) return undefined;
  const raw = line.raw.slice(0, edit.start) + edit.text + line.raw.slice(edit.stop);
  return readLine(raw, line.end, block, VOCABULARY).issue;
}

/** The place of an attribute's value, without its word. */
export function valuePlace(lineIndex: number, item: ReadLine["items"][number]): Place {
  return { lineIndex, start: item.valueStart, stop: item.stop };
}
