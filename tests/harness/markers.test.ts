import { describe, expect, test } from "vitest";
import { dedent, readCursor, readMarks, readRange } from "./markers.ts";

describe("marks are taken out and their places kept", () => {
  test.each([
    ["out <|>90 ft", { text: "out 90 ft", cursors: [4], ranges: [] }],
    ["<|>", { text: "", cursors: [0], ranges: [] }],
    ["out <|90|> ft", { text: "out 90 ft", cursors: [], ranges: [[4, 6]] }],
    [
      "<|a|> <|b|><|>",
      {
        text: "a b",
        cursors: [3],
        ranges: [
          [0, 1],
          [2, 3],
        ],
      },
    ],
    ["<|a\nb|>", { text: "a\nb", cursors: [], ranges: [[0, 3]] }],
    ["<|a<|>b|>", { text: "ab", cursors: [1], ranges: [[0, 2]] }],
  ])("%j", (source, wanted) => {
    expect(readMarks(source)).toEqual({ ...wanted, expected: [] });
  });
});

describe("carets", () => {
  test.each([
    ["ab\n^ one", [{ line: 0, start: 0, stop: 1, slug: "one" }]],
    ["ab\n ^ one two  three", [{ line: 0, start: 1, stop: 2, slug: "one", message: "two  three" }]],
    [
      "a\nbc\n^^ one\n ^ two\nd",
      [
        { line: 1, start: 0, stop: 2, slug: "one" },
        { line: 1, start: 1, stop: 2, slug: "two" },
      ],
    ],
  ])("%j", (source, expected) => {
    expect(readMarks(source).expected).toEqual(expected);
    expect(readMarks(source).text).not.toContain("^");
  });

  test("a caret inside of a text is text", () => {
    expect(readMarks("a ^b\n^^^x").text).toBe("a ^b\n^^^x");
  });
});

test.each([
  ["\n  a\n    b\n", "a\n  b"],
  ["\n  a\n\n  b\n  ", "a\n\nb"],
  ["a", "a"],
  ["", ""],
  ["  a", "a"],
])("dedent %j", (template, text) => {
  expect(dedent(template)).toBe(text);
});

describe("a mark that is needed and absent throws", () => {
  test.each([
    ["no cursor", () => readCursor("out 90 ft")],
    ["two cursors", () => readCursor("<|>out<|>")],
    ["a range where a cursor is read", () => readCursor("<|>a <|b|>")],
    ["no range", () => readRange("out 90 ft")],
    ["two ranges", () => readRange("<|a|><|b|>")],
    ["a cursor where a range is read", () => readRange("<|a|><|>")],
    ["an open range", () => readMarks("<|a")],
    ["a closed range", () => readMarks("a|>")],
    ["a range twice open", () => readMarks("<|a<|b|>")],
    ["carets under nothing", () => readMarks("^^ slug")],
    ["carets without a slug", () => readMarks("a\n^")],
    ["carets under a mark", () => readMarks("<|>a\n^ slug")],
  ])("%s", (_, read) => {
    expect(read).toThrow();
  });
});
