/** Breaks lines at blanks. */
import { textWidth } from "./text-width.ts";

/**
 * A line as lines of at most `width` columns; all but the first start with `hang` blanks. A word longer than that
 * stays whole. The blanks a line starts with are kept, and those between words on one line too.
 */
export function wrap(line: string, width: number, hang = 0): string[] {
  if (textWidth(line) <= width) return [line];
  const lines: string[] = [];
  let current = /^\s*/u.exec(line)?.[0] ?? "";
  let isEmpty = true;
  for (const [, gap = "", word = ""] of line.trimStart().matchAll(/(\s*)(\S+)/gu)) {
    if (!isEmpty && textWidth(current) + gap.length + textWidth(word) > width) {
      lines.push(current);
      current = " ".repeat(hang) + word;
    } else {
      current += isEmpty ? word : gap + word;
    }
    isEmpty = false;
  }
  return [...lines, current];
}
