/** Formatting as line edits: only lines that change are touched. */
import type { Range, TextEdit } from "vscode-languageserver-types";
import { formatLine } from "../../grammar/format.ts";
import type { Snapshot } from "./snapshot.ts";

/** Edits that bring a document, or the lines of a range, into canonical form. */
export function formatting(snapshot: Snapshot, range?: Range): TextEdit[] {
  const { lines } = snapshot.parse.journal;
  const first = range?.start.line ?? 0;
  const last = Math.min(range === undefined ? lines.length - 1 : lastLineOf(range), lines.length - 1);
  const edits: TextEdit[] = [];
  for (let line = first; line <= last; line++) {
    const raw = lines[line]?.raw ?? "";
    const newText = formatLine(snapshot.parse, line);
    if (newText !== raw) {
      edits.push({ range: { start: { line, character: 0 }, end: { line, character: raw.length } }, newText });
    }
  }
  return edits;
}

/** The same for the lines of several ranges; a line in two of them is formatted once. */
export function rangesFormatting(snapshot: Snapshot, ranges: readonly Range[]): TextEdit[] {
  const edits = ranges.flatMap((range) => formatting(snapshot, range));
  return [...new Map(edits.map((edit) => [edit.range.start.line, edit])).values()];
}

/** A selection of whole lines ends at the start of the line below, which isn't meant. */
function lastLineOf({ start, end }: Range): number {
  return end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
}
