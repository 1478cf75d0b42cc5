/** Formatting as edits: lines that change and no others, the whole file or what is selected. */
import { describe, expect, test } from "vitest";
import type { Range } from "vscode-languageserver-types";
import { dedent } from "../harness/markers.ts";
import { editText } from "./edit-text.ts";
import { openService, URI } from "./open-service.ts";

/** Formats, compares, and formats again: twice is once. */
function checkFormat(text: string, wanted: string, range?: Range): void {
  const after = editText(text, openService(text).formatting(URI, range));
  expect(after).toBe(wanted);
  expect(openService(after).formatting(URI, range)).toEqual([]);
}

const lines = (first: number, last: number, character = 1): Range => ({
  start: { line: first, character: 0 },
  end: { line: last, character },
});

const UNTIDY = "5:14  SET C1 out 90ft\n5:18  SET P1 out 72ft\n5:20  SET S1 out 60ft\n";

test("a whole file", () => {
  checkFormat(
    dedent(`
      TRIP 2031-06-21   "Bright Penny"
       anglers  4
      # a   remark
      5:14   set C1   out 90ft # deep

      note
        kept   as it   is
    `),
    dedent(`
      trip 2031-06-21 "Bright Penny"
        anglers 4
      # a   remark
      05:14 set C1 out 90 ft  # deep

      note
        kept   as it   is
    `),
  );
});

describe("a range", () => {
  test("the lines it touches", () => {
    checkFormat(UNTIDY, UNTIDY.replace("5:18  SET P1 out 72ft", "05:18 set P1 out 72 ft"), lines(1, 1));
  });
  test("not the line below a selection of whole lines", () => {
    checkFormat(UNTIDY, UNTIDY.replace("5:18  SET P1 out 72ft", "05:18 set P1 out 72 ft"), lines(1, 2, 0));
  });
  test("an empty one at a line's start", () => {
    checkFormat(UNTIDY, UNTIDY.replace("5:18  SET P1 out 72ft", "05:18 set P1 out 72 ft"), lines(1, 1, 0));
  });
  test("one that reaches beyond the end", () => {
    checkFormat(UNTIDY, UNTIDY.replace("5:20  SET S1 out 60ft", "05:20 set S1 out 60 ft"), lines(2, 99));
  });
});

test("a line with an issue stays, its neighbors don't", () => {
  checkFormat("5:14  SET C1 out 72,5ft\n5:18  pull C1\n", "5:14  SET C1 out 72,5ft\n05:18 pull C1\n");
});

test.each(["\r\n", "\r"])("line ends %j and a missing last one are kept", (end) => {
  checkFormat(`5:14 pull C1${end}5:15 pull P1`, `05:14 pull C1${end}05:15 pull P1`);
});

test("a byte order mark is kept", () => {
  checkFormat("\ufeff5:14 pull C1\n5:15 pull P1", "\ufeff05:14 pull C1\n05:15 pull P1");
});

test("only changed lines are edited", () => {
  expect(openService("05:14 pull C1\n5:15 pull P1\n").formatting(URI)).toEqual([
    {
      range: { start: { line: 1, character: 0 }, end: { line: 1, character: 12 } },
      newText: "05:15 pull P1",
    },
  ]);
});

test("several ranges at once, a line in two of them once", () => {
  const edits = openService(UNTIDY).rangesFormatting(URI, [lines(0, 1), lines(1, 1)]);
  expect(edits.map(({ range }) => range.start.line)).toEqual([0, 1]);
});
