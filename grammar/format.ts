/** The formatter: canonical lines where a line was read without an issue, every other byte as it was. */
import type { Journal } from "./journal.ts";
import type { Parse } from "./parse.ts";
import { canonicalLine, printText } from "./print.ts";

/** The canonical text of one line; a line with an issue stays untouched. */
export function formatLine(parsed: Parse, index: number): string {
  const line = parsed.journal.lines[index];
  if (line === undefined) return "";
  return parsed.issues[index] === null ? canonicalLine(line) : line.raw;
}

/** The canonical text of a whole file. */
export function formatText(parsed: Parse): string {
  const lines = parsed.journal.lines.map((line, index) => ({ ...line, raw: formatLine(parsed, index) }));
  return printText({ ...parsed.journal, lines } as Journal);
}
