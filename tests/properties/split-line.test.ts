/** The short way through a plain line answers what the grammar answers. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { parseLine } from "../../grammar/parser.ts";
import { splitPlainLine } from "../../grammar/split-line.ts";
import { ALL_ROWS } from "../../grammar/vocabulary.ts";
import { anyText, applyEdit, edit } from "./arbitrary-text.ts";
import { EXAMPLES, SETTINGS } from "./grammar-settings.ts";

const LINES = [...EXAMPLES.flatMap((text) => text.split("\n")), ...ALL_ROWS.map((row) => row.example)];

/** Whatever decides where a piece ends, close together. */
const marks = fc
  .array(
    fc.constantFrom(
      ...['"', '""', '"a"', '"a b"', "#", ",", ",,", " ", "\t", "a", "é", "~", "-", ":", "Z", "7"],
      ...["5:25", "05:25:30", "~7:15", "01:30-05:00", "2031-06-21", "72.5", "\u00a0", "\u2013", "\v", "\0"],
    ),
    { maxLength: 12 },
  )
  .map((parts) => parts.join(""));

const edited = fc
  .tuple(fc.constantFrom(...LINES), edit, edit)
  .map(([line, ...edits]) => edits.reduce(applyEdit, line));

/** Lines of a text, cut as the reader cuts them. */
function linesOf(text: string): string[] {
  return text.split(/\r\n|\r|\n/u);
}

function isShort(line: string): boolean {
  const parts = splitPlainLine(line);
  if (parts !== undefined) expect(parts, JSON.stringify(line)).toEqual(parseLine(line));
  return parts !== undefined;
}

test("forty thousand lines are split as the grammar splits them, most of them the short way", () => {
  const lines = fc
    .sample(fc.oneof(marks, edited, anyText), { ...SETTINGS, numRuns: 40_000 })
    .flatMap(linesOf);
  const short = lines.filter(isShort).length;
  expect(short).toBeGreaterThan(lines.length / 2);
  expect(short).toBeLessThan(lines.length);
});

test("every example is split the short way, or says why not", () => {
  const others = LINES.filter((line) => !isShort(line));
  expect(others.filter((line) => !/[^\t -\u167f]|\u00a0/u.test(line))).toEqual([]);
});

test.each([
  ["a blank that is no space", '"a b"\u00a0set'],
  ["a blank behind a comma", '"a b",\u3000set'],
  ["a dash of print", "P1\u2013C1 out 72"],
  ["a control letter", "set\vP1"],
])("%s is left to the grammar", (_, line) => {
  expect(splitPlainLine(line)).toBeUndefined();
});
