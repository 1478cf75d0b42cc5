/** Applies a fix's edits to a text, as an editor does: all at once, none over another. */

/** A replacement within one line; columns are UTF-16 code units. */
export interface LineEdit {
  readonly lineIndex: number;
  readonly start: number;
  readonly stop: number;
  readonly text: string;
}

/** The text after the edits. Throws when two of them overlap or one lies outside its line. */
export function applyEdits(text: string, edits: readonly LineEdit[]): string {
  const lines = text.split(/(?<=\r\n|\n|\r(?!\n))/u);
  const inOrder = [...edits].sort((a, b) => a.lineIndex - b.lineIndex || a.start - b.start);
  inOrder.forEach((edit, i) => {
    const next = inOrder[i + 1];
    if (next?.lineIndex === edit.lineIndex && next.start < edit.stop) {
      throw new Error(`two edits overlap in line ${edit.lineIndex + 1}`);
    }
  });
  for (const { lineIndex, start, stop, text: fresh } of inOrder.reverse()) {
    const line = lines[lineIndex];
    const length = line?.replace(/[\r\n]+$/u, "").length ?? -1;
    if (line === undefined || start > stop || stop > length)
      throw new Error(`no place ${lineIndex}:${start}`);
    lines[lineIndex] = line.slice(0, start) + fresh + line.slice(stop);
  }
  return lines.join("");
}
