/** Lines, widths and tables. */
import { expect, test } from "vitest";
import { printable } from "../../client/cli/render/printable.ts";
import { table } from "../../client/cli/render/table.ts";
import { textWidth } from "../../client/cli/render/text-width.ts";
import { wrap } from "../../client/cli/render/wrap.ts";

test.each([
  ["short enough", "one two", 10, ["one two"]],
  ["broken at blanks", "one two three", 8, ["one two", "  three"]],
  ["a long word stays whole", "a verylongword b", 6, ["a", "  verylongword", "  b"]],
  ["its indent is kept", "    one two", 8, ["    one", "  two"]],
  ["a number keeps its unit", "as far as 33 ft back", 13, ["as far as", "  33 ft back"]],
  ["and a bracket before it", "about (8.5 m)", 9, ["about", "  (8.5 m)"]],
  ["no end to the line", "one two three", Number.POSITIVE_INFINITY, ["one two three"]],
  ["nothing", "", 10, [""]],
])("wrap: %s", (_, line, width, lines) => expect(wrap(line, width, 2)).toEqual(lines));

test.each([
  ["plain", 5],
  ["été", 3],
  ["e\u0301te\u0301", 3],
  ["日本", 4],
  ["🎣", 2],
  ["\u001b[31mred\u001b[39m", 3],
])("width of %s", (text, width) => expect(textWidth(text)).toBe(width));

test.each([
  ["\u001b[2J", "\\u{1b}[2J"],
  ["a\tb\nc", "a\\u{9}b\\u{a}c"],
  ["\ud800", "\\u{d800}"],
  ["\u202egnp.exe", "\\u{202e}gnp.exe"],
  ["été 日本 🎣", "été 日本 🎣"],
])("printable: %j", (text, shown) => expect(printable(text)).toBe(shown));

const COLUMNS = [{ head: "rig" }, { head: "out", side: "right" }] as const;
const ROWS = [{ cells: ["C1", "90 ft"] }, { cells: ["日本"], rest: "no depth at all" }];
const plain = (text: string): string => text;

test("a table, its last cells given over to a text", () => {
  expect(table(COLUMNS, ROWS, 14, plain)).toEqual([
    "rig     out",
    "C1    90 ft",
    "日本  no depth",
    "      at all",
  ]);
});

test("no table where it doesn't fit", () => expect(table(COLUMNS, ROWS, 10, plain)).toBeUndefined());
