/** Folding: a trip or boat, a note with its text, a run of comments. */
import { type FoldingRange, FoldingRangeKind } from "vscode-languageserver-types";
import type { Line } from "../../grammar/journal.ts";
import type { Snapshot } from "./snapshot.ts";

/** Ranges of a document that fold. */
export function foldingRanges(snapshot: Snapshot): FoldingRange[] {
  const { lines } = snapshot.parse.journal;
  const ranges: FoldingRange[] = [];
  const push = (startLine: number, endLine: number, kind?: FoldingRangeKind): void => {
    if (endLine > startLine) ranges.push({ startLine, endLine, ...(kind === undefined ? {} : { kind }) });
  };
  lines.forEach((line, index) => {
    if (line.kind === "fact" && (line.verb === "trip" || line.verb === "boat")) {
      push(
        index,
        endBefore(
          lines,
          index + 1,
          (next) => next.kind === "fact" && (next.verb === "trip" || next.verb === "boat"),
        ),
      );
    } else if (line.kind === "fact" && line.verb === "note") {
      push(
        index,
        endBefore(lines, index + 1, (next) => next.kind !== "note-text" && next.kind !== "blank"),
      );
    } else if (line.kind === "comment" && lines[index - 1]?.kind !== "comment") {
      push(
        index,
        endBefore(lines, index + 1, (next) => next.kind !== "comment"),
        FoldingRangeKind.Comment,
      );
    }
  });
  return ranges;
}

/** The last line before one that stops, without the blanks at its end. */
function endBefore(lines: readonly Line[], from: number, stops: (line: Line) => boolean): number {
  let last = from - 1;
  for (let index = from; index < lines.length; index++) {
    const line = lines[index];
    if (line === undefined || stops(line)) break;
    if (line.kind !== "blank") last = index;
  }
  return last;
}
