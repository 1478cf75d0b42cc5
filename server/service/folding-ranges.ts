/** Folding: a trip or boat down to its last line, a section of it, a note with its text, a run of comments. */
import { type FoldingRange, FoldingRangeKind } from "vscode-languageserver-types";
import type { Line } from "../../grammar/journal.ts";
import { kindDefined } from "../model/gear-lines.ts";
import type { Snapshot } from "./snapshot.ts";

/** Ranges of a document that fold. */
export function foldingRanges(snapshot: Snapshot): FoldingRange[] {
  const { lines } = snapshot.parse.journal;
  return lines.flatMap((line, startLine) => {
    const fold = foldFrom(lines, startLine, line);
    return fold === undefined || fold.endLine <= startLine ? [] : [{ startLine, ...fold }];
  });
}

function foldFrom(
  lines: readonly Line[],
  start: number,
  line: Line,
): { endLine: number; kind?: FoldingRangeKind } | undefined {
  // Remarks right above an opener speak of what it opens, and stay in sight with it.
  if (isOpener(line)) return { endLine: lastLine(lines, start, isOpener, isAside) };
  if (line.kind === "fact" && line.verb === "note")
    return {
      endLine: lastLine(lines, start, (next) => next.kind !== "note-text" && !isBlank(next), isBlank),
    };
  const section = sectionEnd(lines, start);
  if (section !== undefined) return { endLine: section };
  if (line.kind !== "comment" || lines[start - 1]?.kind === "comment") return undefined;
  const endLine = lastLine(lines, start, (next) => next.kind !== "comment", isBlank);
  return { endLine, kind: FoldingRangeKind.Comment };
}

/** Fewer lines than this are no section. */
const LEAST_IN_SECTION = 2;

/**
 * The last line of the section that folds at a line: lines set off by blank ones, under a remark, or gear lines. It folds
 * at its remark; at its first line under a remark of several lines, which folds by itself.
 */
function sectionEnd(lines: readonly Line[], start: number): number | undefined {
  const isRemark = lines[start]?.kind === "comment";
  const firstLine = isRemark ? start + 1 : start;
  const above = runAbove(lines, start);
  const isHeaded = isRemark || above > 1;
  if (!isAtMargin(lines[firstLine]) || (isRemark && above > 0) || (!isRemark && above === 1))
    return undefined;
  const before = lines[start - above - 1];
  if (before !== undefined && !isBlank(before)) return undefined;
  const endLine = paragraphEnd(lines, firstLine);
  const members = lines.slice(firstLine, endLine + 1).filter((line) => isAtMargin(line));
  if (members.length < LEAST_IN_SECTION || !(isHeaded || members.every(isGear))) return undefined;
  return endLine;
}

/** How many remarks stand right above a line. */
function runAbove(lines: readonly Line[], start: number): number {
  let above = 0;
  while (lines[start - above - 1]?.kind === "comment") above++;
  return above;
}

/** The line before the next blank one; blanks within the text of a note don't count. */
function paragraphEnd(lines: readonly Line[], start: number): number {
  let end = start;
  for (let index = start; index < lines.length; index++) {
    const line = lines[index];
    if (line === undefined || isOpener(line)) break;
    if (!isBlank(line)) end = index;
    else if (!isInNote(lines, index)) break;
  }
  return end;
}

function isInNote(lines: readonly Line[], blank: number): boolean {
  const next = lines.slice(blank).find((line) => !isBlank(line));
  return next?.kind === "note-text";
}

const isAtMargin = (line: Line | undefined): boolean => line?.kind === "fact" && !isOpener(line);

const isGear = (line: Line): boolean => line.kind === "fact" && kindDefined(line.verb) !== undefined;

function isOpener(line: Line): boolean {
  return line.kind === "fact" && (line.verb === "trip" || line.verb === "boat");
}

const isBlank = (line: Line): boolean => line.kind === "blank";
const isAside = (line: Line): boolean => isBlank(line) || line.kind === "comment";

/** The last line before one that stops, without those at its end that are skipped. */
function lastLine(
  lines: readonly Line[],
  start: number,
  stops: (line: Line) => boolean,
  isSkipped: (line: Line) => boolean,
): number {
  let last = start;
  for (let index = start + 1; index < lines.length; index++) {
    const line = lines[index];
    if (line === undefined || stops(line)) break;
    if (!isSkipped(line)) last = index;
  }
  return last;
}
