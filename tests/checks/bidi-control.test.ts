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

test("no fix copies one into the gear book", () => {
  const titles = (text: string): string[] =>
    findingsIn(text)
      .filter((finding) => finding.slug.startsWith("unknown-"))
      .flatMap(({ fixes }) => fixes.map(({ title }) => title));
  const lure = (name: string): string => `${OPENER}05:14 set P1 out 70 ft lure ${name}`;
  expect(titles(lure("tin-slab"))).toEqual(['Add "lure tin-slab" to the gear book']);
  expect(titles(lure(`tin${OVERRIDE}slab`))).toEqual([]);
  const boat = (name: string): string => `trip 2031-06-21 "${name}"\n`;
  expect(titles(boat("Tin Cup"))).toEqual(['Open its gear here: boat "Tin Cup"']);
  expect(titles(boat(`Tin${MARK} Cup`))).toEqual([]);
});

test("the fix takes all of them out", () => {
  checkDayFix("bidi-control", `05:14 set P1 "${MARK}a${OVERRIDE}b"  # ${MARK}c`, '05:14 set P1 "ab"  # c');
});
