/** After a line break the line just left is tidied, and nothing else. */
import { describe, expect, test } from "vitest";
import { readCursor } from "../harness/markers.ts";
import { editText } from "./edit-text.ts";
import { openService, positionAt, URI } from "./open-service.ts";

function typed(source: string): string {
  const { text, offset } = readCursor(source);
  return editText(text, openService(text).onTypeFormatting(URI, positionAt(text, offset), "\n"));
}

describe("the line just left", () => {
  test.each([
    ["5:14 SET C1  out 90ft \n<|>", "05:14 set C1 out 90 ft\n"],
    ["05:14 set C1 out 90 ft\n<|>", "05:14 set C1 out 90 ft\n"],
    ["5:10 drift\n5:14 pull C1\n<|>", "5:10 drift\n05:14 pull C1\n"],
    ["trip 2031-06-21 b\n    anglers  4\n    <|>", "trip 2031-06-21 b\n  anglers 4\n    "],
    ["05:14 drift # a\n<|> remark", "05:14 drift  # a\n remark"],
    ["5:14 drift\r\n<|>5:15 drift", "05:14 drift\r\n5:15 drift"],
  ])("%j", (source, wanted) => expect(typed(source)).toBe(wanted));
});

describe("as it was", () => {
  test.each([
    "5:14 set C1 out 72,5 ft\n<|>",
    '5:14 drift "so\n<|>',
    "5:14 what\n<|>",
    "note\n  5:14   drift\n<|>",
    "#  a   remark\n<|>",
    "5:14 drift<|>",
    "05:14 drift\n   \n<|>",
  ])("%j", (source) => expect(typed(source)).toBe(source.replace("<|>", "")));
});

test("only the characters that differ are written", () => {
  const service = openService("5:14 set C1 out 90 ft\n");
  expect(service.onTypeFormatting(URI, { line: 1, character: 0 }, "\n")).toEqual([
    { range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, newText: "0" },
  ]);
  expect(service.onTypeFormatting(URI, { line: 1, character: 0 }, " ")).toEqual([]);
});
