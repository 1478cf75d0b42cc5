/** Applies LSP text edits to a text, for the tests of formatting and fixes. */
import type { TextEdit } from "vscode-languageserver-types";
import { applyEdits } from "../harness/apply-edits.ts";

/** The text after the edits, each of which stays within one line. */
export function editText(text: string, edits: readonly TextEdit[]): string {
  const lineEdits = edits.map(({ range: { start, end }, newText }) => {
    if (start.line !== end.line) throw new Error("an edit over two lines");
    return { lineIndex: start.line, start: start.character, stop: end.character, text: newText };
  });
  return applyEdits(text, lineEdits);
}
