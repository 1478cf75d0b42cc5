import { expect, test } from "vitest";
import { checkDayFix, findingsIn, OPENER } from "./check-findings.ts";

/** Written by number, for nobody would see them. */
const OVERRIDE = "\u202e";
const MARK = "\u200f";

const found = (text: string): [number, string][] =>
  findingsIn(text)
    .filter((finding) => finding.slug === "bidi-control")
    .map(({ lineIndex, start, message }) => [lineIndex, `${start} ${message}`]);

test.each([
  ["a remark", `05:14 set P1 "ab${OVERRIDE}cd"`, 16],
  ["a comment", `# ab${OVERRIDE}cd`, 4],
  ["a note", `note\n  ab${OVERRIDE}cd`, 4],
])("in %s", (_, text, start) => {
  expect(found(OPENER + text).map(([, message]) => message)).toEqual([
    `${start} An invisible character turns the reading direction here: the line may not say what it seems to.`,
  ]);
});

test("counted, once for a line", () => {
  expect(found(`# a${MARK}b${OVERRIDE}c\n# d`)).toEqual([
    [0, "3 2 invisible characters turn the reading direction here: the line may not say what it seems to."],
  ]);
});

test("settled by the word sure", () => {
  expect(found(`${OPENER}05:14 set P1 "ab${MARK}" sure`)).toEqual([]);
});

test("the fix takes all of them out", () => {
  checkDayFix("bidi-control", `05:14 set P1 "${MARK}a${OVERRIDE}b"  # ${MARK}c`, '05:14 set P1 "ab"  # c');
});
