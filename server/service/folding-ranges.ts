/** Folding: a trip or boat down to its last line, a note with its text, a run of comments. */
import { type FoldingRange, FoldingRangeKind } from "vscode-languageserver-types";
import type { Line } from "../../grammar/journal.ts";
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
  if (line.kind !== "comment" || lines[start - 1]?.kind === "comment") return undefined;
  const endLine = lastLine(lines, start, (next) => next.kind !== "comment", isBlank);
  return { endLine, kind: FoldingRangeKind.Comment };
}

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
