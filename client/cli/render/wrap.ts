/** Breaks lines at blanks. */
import { textWidth } from "./text-width.ts";

/** A word with the blanks before it; a number is one word with its unit. */
const WORD = /(\s*)((?:\(?[-+]?\d[\d.½]*\s)?\S+)/gu;

/**
 * A line as lines of at most `width` columns; all but the first start with `hang` blanks. A word longer than that
 * stays whole, and so does a number with what it counts, `33 ft`. The blanks a line starts with are kept, and those between words on one line too.
 */
export function wrap(line: string, width: number, hang = 0): string[] {
  if (textWidth(line) <= width) return [line];
  const lines: string[] = [];
  let current = /^\s*/u.exec(line)?.[0] ?? "";
  let isEmpty = true;
  for (const [, gap = "", word = ""] of line.trimStart().matchAll(WORD)) {
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
