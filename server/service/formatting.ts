/** Formatting as line edits: only lines that change are touched. */
import type { Range, TextEdit } from "vscode-languageserver-types";
import { formatLine } from "../../grammar/format.ts";
import type { Snapshot } from "./snapshot.ts";

/** Edits that bring a document, or the lines of a range, into canonical form. */
export function formatting(snapshot: Snapshot, range?: Range): TextEdit[] {
  const { lines } = snapshot.parse.journal;
  const first = range?.start.line ?? 0;
  const last = Math.min(range?.end.line ?? lines.length - 1, lines.length - 1);
  const edits: TextEdit[] = [];
  for (let line = first; line <= last; line++) {
    const raw = lines[line]?.raw ?? "";
    const newText = formatLine(snapshot.parse, line);
    const shift = line === 0 && snapshot.parse.journal.bom ? 1 : 0;
    if (newText !== raw) {
      edits.push({
        range: { start: { line, character: shift }, end: { line, character: raw.length + shift } },
        newText,
      });
    }
  }
  return edits;
}
