import { expect, test } from "vitest";
import { applyEdits } from "./apply-edits.ts";

const edit = (lineIndex: number, start: number, stop: number, text: string) => ({
  lineIndex,
  start,
  stop,
  text,
});

test.each([
  ["ab", [edit(0, 1, 2, "c")], "ac"],
  ["a\r\nb", [edit(1, 0, 0, "x\r\n")], "a\r\nx\r\nb"],
  ["a\nb", [edit(0, 0, 1, "b"), edit(1, 0, 1, "a")], "b\na"],
  ["15 60", [edit(0, 0, 2, "60"), edit(0, 3, 5, "15")], "60 15"],
  ["", [edit(0, 0, 0, "a")], "a"],
])("%j %j", (text, edits, after) => {
  expect(applyEdits(text, edits)).toBe(after);
});

test.each([
  ["an overlap", [edit(0, 0, 2, ""), edit(0, 1, 2, "")]],
  ["beyond the line", [edit(0, 3, 4, "")]],
  ["beyond the text", [edit(1, 0, 0, "")]],
])("throws on %s", (_, edits) => {
  expect(() => applyEdits("abc", edits)).toThrow();
});
