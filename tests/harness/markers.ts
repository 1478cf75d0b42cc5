/**
 * Reads the marks a test writes into a journal, and takes them out again: `<|>` is a cursor, `<|text|>` a range,
 * and a line of carets under a line is an expected diagnostic: `^^^^ slug message`. Caret lines stand under the
 * characters they mean, so column 0 can be marked; the language's own comments are not involved.
 */

/** A half-open stretch of the text, in UTF-16 code units. */
export type Range = readonly [start: number, stop: number];

/** A diagnostic on one line; columns are half-open and counted from 0. */
export interface LineDiagnostic {
  readonly line: number;
  readonly start: number;
  readonly stop: number;
  readonly slug: string;
  /** Left out of an expectation, any message will do. */
  readonly message?: string | undefined;
}

/** A text without its marks, and where they stood. */
export interface Marked {
  readonly text: string;
  readonly cursors: readonly number[];
  readonly ranges: readonly Range[];
  readonly expected: readonly LineDiagnostic[];
}

const MARK = /<\|>|<\||\|>/gu;
const CARETS = /^\s*\^+(?:\s|$)/u;
const CARET_LINE = /^(\s*)(\^+)\s+(\S+)(?:\s+(\S.*))?$/u;

/** Reads every mark. Throws when a range does not close, or carets stand under nothing. */
export function readMarks(source: string): Marked {
  const { lines, expected } = takeCarets(dedent(source).split("\n"));
  return { ...takeRanges(lines.join("\n")), expected };
}

/** A text with exactly one cursor in it. Throws otherwise. */
export function readCursor(source: string): { text: string; offset: number } {
  const { text, cursors, ranges, expected } = readMarks(source);
  const [offset] = cursors;
  if (offset === undefined || cursors.length > 1) throw new Error(`one <|> is needed in:\n${source}`);
  if (ranges.length + expected.length > 0) throw new Error(`only a <|> is read in:\n${source}`);
  return { text, offset };
}

/** A text with exactly one range in it. Throws otherwise. */
export function readRange(source: string): { text: string; start: number; stop: number } {
  const { text, cursors, ranges, expected } = readMarks(source);
  const [range] = ranges;
  if (range === undefined || ranges.length > 1) throw new Error(`one <|range|> is needed in:\n${source}`);
  if (cursors.length + expected.length > 0) throw new Error(`only a <|range|> is read in:\n${source}`);
  return { text, start: range[0], stop: range[1] };
}

/** Takes off a template's first and last empty lines and the blanks that all its lines start with. */
export function dedent(template: string): string {
  const lines = template.split("\n");
  if (lines.length > 1 && lines[0]?.trim() === "") lines.shift();
  if (lines.length > 1 && lines.at(-1)?.trim() === "") lines.pop();
  const filled = lines.filter((line) => line.trim() !== "");
  const margin = Math.min(...filled.map((line) => line.length - line.trimStart().length), 200);
  return lines.map((line) => line.slice(margin)).join("\n");
}

function takeCarets(source: readonly string[]): { lines: string[]; expected: LineDiagnostic[] } {
  const lines: string[] = [];
  const expected: LineDiagnostic[] = [];
  for (const text of source) {
    if (!CARETS.test(text)) {
      lines.push(text);
      continue;
    }
    const [, blanks = "", carets = "", slug, message] = CARET_LINE.exec(text) ?? [];
    const above = lines.at(-1);
    if (slug === undefined) throw new Error(`carets without a slug: ${text}`);
    if (above === undefined) throw new Error(`carets under no line: ${text}`);
    if (above.search(MARK) >= 0) throw new Error(`carets under a line with a mark: ${above}`);
    const start = blanks.length;
    expected.push({ line: lines.length - 1, start, stop: start + carets.length, slug, message });
  }
  return { lines, expected };
}

function takeRanges(source: string): { text: string; cursors: number[]; ranges: Range[] } {
  const cursors: number[] = [];
  const ranges: Range[] = [];
  let open: number | undefined;
  let text = "";
  let last = 0;
  for (const { 0: mark, index } of source.matchAll(MARK)) {
    text += source.slice(last, index);
    last = index + mark.length;
    if (mark === "<|>") cursors.push(text.length);
    else if ((mark === "<|") === (open !== undefined)) throw new Error(`unpaired ${mark} in:\n${source}`);
    else if (open === undefined) open = text.length;
    else {
      ranges.push([open, text.length]);
      open = undefined;
    }
  }
  if (open !== undefined) throw new Error(`unpaired <| in:\n${source}`);
  return { text: text + source.slice(last), cursors, ranges };
}
