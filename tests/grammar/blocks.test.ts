/** Blocks: property blocks, notes, indented events; and the three kinds of line end. */
import { describe, expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { printText } from "../../grammar/print.ts";
import { checkIssues } from "./check-grammar.ts";
import { describeIssues } from "./describe-issue.ts";
import { describeLine } from "./describe-line.ts";

/** Each line's tree, one under the other. */
const trees = (text: string): string[] => parse(text).journal.lines.map(describeLine);

describe("a property block", () => {
  const head = "trip 2031-06-21 Skiff";
  test.each<[string, string[], string[]]>([
    [
      "goes on over blank lines and comments",
      ["", "# c", "  anglers 2"],
      ["blank", "comment", "trip-property anglers 2"],
    ],
    [
      "goes on after a wrong property",
      ["  anglrs 2", "  mate Dov"],
      ["unreadable", "trip-property mate Dov"],
    ],
    ["ends at a line at the margin", ["drift", "  drift"], ["fact drift", "fact drift"]],
    [
      "ends at an indented line with a clock",
      ["  06:00 drift", "  drift"],
      ["fact 06:00 drift", "fact drift"],
    ],
    ["ends at a wrong line at the margin", ["drfit", "  drift"], ["unreadable", "fact drift"]],
    [
      "takes tabs and other blanks",
      ["\tmate A", "\u00a0mate B"],
      ["trip-property mate A", "trip-property mate B"],
    ],
    [
      "is another one after another opener",
      ["boat B", "  water salt"],
      ["fact boat B", "boat-property water salt"],
    ],
    [
      "may be of a dated boat line",
      ["2031-01-01 boat B", "  water salt"],
      ["fact 2031-01-01 boat B", "boat-property water salt"],
    ],
  ])("%s", (_, lines, wanted) => {
    expect(trees([head, ...lines].join("\n")).slice(1)).toEqual(wanted);
  });

  test("holds its own words only", () => {
    checkIssues(`
      boat Skiff
        harbor Lee
        ^^^^^^ out-of-place harbor belongs to trip
        pull P1
        ^^^^ out-of-place pull belongs to margin
        zone America/Detroit
      anglers 3
      ^^^^^^^ out-of-place anglers belongs to trip
        sounder 2 ft
        ^^^^^^^ out-of-place sounder belongs to boat
      trip 2031-06-21 Skiff
        06:00 pull P1
        06:01 anglers 3
              ^^^^^^^ out-of-place anglers belongs to trip
      trip 2031-06-21 Skiff
        2031-06-21 anglers 3
        ^^^^^^^^^^ stamp-in-property anglers
        event "Two Lights"
        zone
        ^^^^ missing-slot zone needs time zone
    `);
  });
});

describe("a note", () => {
  test.each<[string, string[], string[]]>([
    [
      "takes every indented line as it is",
      ["note", "  06:00 drift", "  # c", '  "open'],
      ["fact note", "note-text", "note-text", "note-text"],
    ],
    [
      "goes on over blank lines",
      ["note", "", "  text", "", "  more"],
      ["fact note", "blank", "note-text", "blank", "note-text"],
    ],
    [
      "goes on over a comment at the margin",
      ["note", "# c", "  text"],
      ["fact note", "comment", "note-text"],
    ],
    [
      "ends at the margin",
      ["note", "  text", "drift", "  drift"],
      ["fact note", "note-text", "fact drift", "fact drift"],
    ],
    ["may be indented itself", ["  06:00 note", "  text"], ["fact 06:00 note", "note-text"]],
    ["may be wrong itself", ["note nonsense", "  text"], ["fact note > unread nonsense", "note-text"]],
    [
      "is no property",
      ["trip 2031-06-21 S", "  note", "  mate A"],
      ["fact trip 2031-06-21 S", "unreadable", "trip-property mate A"],
    ],
  ])("%s", (_, lines, wanted) => {
    expect(trees(lines.join("\n"))).toEqual(wanted);
  });
});

describe("line ends", () => {
  test.each<[string, string[]]>([
    ["", [""]],
    ["drift", [""]],
    ["drift\n", ["\n", ""]],
    ["drift\r\n", ["\r\n", ""]],
    ["drift\r", ["\r", ""]],
    ["drift\n\r", ["\n", "\r", ""]],
    ["drift\r\r\n\ndrift", ["\r", "\r\n", "\n", ""]],
    ["drift\u2028drift\u0085drift", [""]],
  ])("%j", (text, ends) => {
    const { journal } = parse(text);
    expect(journal.lines.map((line) => line.end)).toEqual(ends);
    expect(printText(journal)).toBe(text);
  });

  test("do not change what is read", () => {
    const lines = ["trip 2031-06-21 S", "  anglers x", "", "pul P1", "note", "  text"];
    const [lf, ...others] = ["\n", "\r\n", "\r"].map((end) => {
      const text = lines.join(end);
      return { trees: trees(text), issues: describeIssues(parse(text)) };
    });
    for (const other of others) expect(other).toEqual(lf);
  });

  test("may be mixed, and are kept for each line", () => {
    const text = "drift\r\ndrift\rdrift\ndrift";
    expect(trees(text)).toEqual(["fact drift", "fact drift", "fact drift", "fact drift"]);
    expect(printText(parse(text).journal)).toBe(text);
  });
});

describe("a byte order mark", () => {
  test.each(["\ufeff", "\ufeffdrift", "\ufeff\n", "\ufeff\ufeffdrift"])("%j", (text) => {
    const { journal } = parse(text);
    expect(journal.bom).toBe(true);
    expect(printText(journal)).toBe(text);
  });

  test("is not part of the first line", () => {
    expect(parse("\ufefftrip 2031-06-21 S").journal.lines[0]).toEqual(
      parse("trip 2031-06-21 S").journal.lines[0],
    );
  });
});
