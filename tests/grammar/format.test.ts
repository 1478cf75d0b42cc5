/** The formatter. A case is what is typed and what becomes of it; every case is also formatted twice. */
import { describe, expect, test } from "vitest";
import { formatLine, formatText } from "../../grammar/format.ts";
import { isRead } from "../../grammar/is-read.ts";
import { parse } from "../../grammar/parse.ts";
import { canonicalLine } from "../../grammar/print.ts";
import { checkFormat } from "./check-grammar.ts";

describe("formats", () => {
  test.each([
    ["5:14   set  C1\tout 90ft", "05:14 set C1 out 90 ft"],
    ["05:14 SET c1 OUT 90 FEET ON-BOTTOM", "05:14 set c1 out 90 ft on-bottom"],
    ["set C1, out 90 ft, lure x,", "set C1 out 90 ft lure x"],
    ["~7:15 pull P1", "~07:15 pull P1"],
    ["01:30-05:00 pull P1", "01:30-05:00 pull P1"],
    ["2031-06-15, 0:20, pull P1", "2031-06-15 00:20 pull P1"],
    ["turn right to 5", "turn right to 005"],
    ["gps course 12.5", "gps course 012.5"],
    ["gps course 310", "gps course 310"],
    ["gps at 44 46.1n, 086 21.7w", "gps at 44 46.1N 086 21.7W"],
    ["gps at 44°46.1'N 86°21.7'W", "gps at 44 46.1N 86 21.7W"],
    ["gps at 44.7683, -86.3617", "gps at 44.7683 -86.3617"],
    ["profile 0 ft 61F 30 ft 58F", "profile 0 ft 61 F, 30 ft 58 F"],
    ["profile 0 ft, 61 F, 30 ft, 58 F", "profile 0 ft 61 F, 30 ft 58 F"],
    ["lure x 2.30IN", "lure x 2.30 in"],
    ["set PB out 5 colours", "set PB out 5 colors"],
    ["catch P1 King 17lb 8oz", "catch P1 King 17 lb 8 oz"],
    ["catch P1 King 17lb8oz", "catch P1 King 17 lb 8 oz"],
    ["catch P1 king 35 in weight 18 lb", "catch P1 king 35 in weight 18 lb"],
    ["LINE mono20  mono diameter 0.4mm", "line mono20 mono diameter 0.4 mm"],
    ["rig S2 flat centre", "rig S2 flat center"],
    ["weigh-in big 22 lb", "weigh-in biggest 22 lb"],
    ["weather waves 1 TO 2 FT", "weather waves 1 to 2 ft"],
    ["pull P1 # all in  ", "pull P1  # all in  "],
    ["pull P1     #all in", "pull P1  #all in"],
    ["  # a comment stays where it is", "  # a comment stays where it is"],
    ['lost P1 fish   "as  it  ""was"""', 'lost P1 fish "as  it  ""was"""'],
    ['set "P1" out 5 ft', 'set "P1" out 5 ft'],
    ["  06:00 drift", "06:00 drift"],
    ["drift   ", "drift"],
    ["  \t ", "  \t "],
    ["boat Skiff\n\twater fresh\n      zone  Europe/Oslo", "boat Skiff\n  water fresh\n  zone Europe/Oslo"],
    ["trip 2031-06-21 S\n harbour  Lee\n    6:00  drift", "trip 2031-06-21 S\n  harbor Lee\n06:00 drift"],
    ["trip 2031-06-21 S\n  official 6:00  to 13:00", "trip 2031-06-21 S\n  official 06:00 to 13:00"],
    ["note\n\t  as   it  is", "note\n\t  as   it  is"],
    ["drift\r\ndrift  \rdrift", "drift\r\ndrift\rdrift"],
    ["\ufeffDRIFT", "\ufeffdrift"],
  ])("%j", checkFormat);
});

describe("leaves a line with an issue as it is, and its neighbors are formatted", () => {
  test.each([
    "SET  out 72ft",
    "  PUL   P1",
    'pull  P1   "open',
    "set P1 out  72,5 ft   # c",
    "5:5  pull  P1",
  ])("%j", (wrong) => {
    checkFormat(`DRIFT\n${wrong}\nDRIFT`, `drift\n${wrong}\ndrift`);
  });
});

test("a line that was not read prints as it is", () => {
  for (const line of parse("\n # c\n  pul  P1\nnote\n  t").journal.lines) {
    if (!isRead(line)) expect(canonicalLine(line)).toBe(line.raw);
  }
});

test("a line past the end is empty", () => {
  expect(formatLine(parse("drift"), 1)).toBe("");
});

test("a line depends on itself and its block only", () => {
  const property = "   anglers   4";
  for (const before of ["trip 2031-06-21 S\n", "trip 2031-01-01 T charter\n  mate A\n\n# c\n  anglrs\n"]) {
    for (const after of ["", "\n  mate B", "\npul P1"]) {
      const parsed = parse(`${before}${property}${after}`);
      const index = parsed.journal.lines.findIndex((line) => line.raw === property);
      expect(formatLine(parsed, index)).toBe("  anglers 4");
      expect(formatText(parsed)).toContain("\n  anglers 4");
    }
  }
});
