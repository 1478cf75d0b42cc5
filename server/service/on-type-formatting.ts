/** Formatting while typing: a line that was just left by a line break gets its canonical form, nothing else is touched. */
import type { Position, TextEdit } from "vscode-languageserver-types";
import { formatLine } from "../../grammar/format.ts";
import type { Snapshot } from "./snapshot.ts";

/** The character after which the editor asks. */
export const LINE_BREAK = "\n";

/** Edits of the line above the cursor, after a line break was typed; as small as they can be. */
export function onTypeFormatting(
  snapshot: Snapshot,
  { line: cursorLine }: Position,
  typed: string,
): TextEdit[] {
  const line = cursorLine - 1;
  const raw = snapshot.parse.journal.lines[line]?.raw;
  if (typed !== LINE_BREAK || raw === undefined) return [];
  const wanted = formatLine(snapshot.parse, line);
  if (wanted === raw) return [];
  const { start, stop, text } = difference(raw, wanted);
  return [{ range: { start: { line, character: start }, end: { line, character: stop } }, newText: text }];
}

/** What to replace in a text to make another of it: all but what both start and end with. */
function difference(before: string, after: string): { start: number; stop: number; text: string } {
  const most = Math.min(before.length, after.length);
  let start = 0;
  while (start < most && before[start] === after[start]) start++;
  let tail = 0;
  while (tail < most - start && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail++;
  return { start, stop: before.length - tail, text: after.slice(start, after.length - tail) };
}
