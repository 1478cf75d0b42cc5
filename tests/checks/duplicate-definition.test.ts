import { describe, expect, test } from "vitest";
import { checkDay, checkFindings, checkFix, findingsIn, OPENER } from "./check-findings.ts";

test.each([
  `
  boat "Tin Cup"
  cable wire steel
  2031-08-09 cable wire braid
  ball wire 12 lb
  calibrate wire drag 1.1
  boat "Tin Mug"
  cable wire steel
  `,
  `
  boat "Tin Cup"
  cable wire steel diameter 0.9 mm
  cable wire steel diameter 0.7 mm
        ^^^^ duplicate-definition cable "wire" is defined twice, here and in line 2. Keep one, or start the newer with the date it holds from.
  2031-08-09 rig A1 downrigger
  2031-08-09 rig A1 flat
                 ^^ duplicate-definition rig "A1" is defined twice from 2031-08-09 on, here and in line 4. Keep one, or start the newer with the date it holds from.
  `,
  `
  boat "Tin Cup"
  line thin mono diameter 0.3 mm
  2031-08-09 line thin braid
  cable thin steel
        ^^^^ duplicate-definition cable "thin" is defined twice, here and in line 2. Keep one, or start the newer with the date it holds from.
  `,
  `
  lure fly-a fly
  boat "Tin Cup"
  lure fly-a fly
       ^^^^^ duplicate-definition
  boat "Tin Cup"
       ^^^^^^^^^ duplicate-definition boat "Tin Cup" is defined twice, here and in line 2. Open it once, and write all of its gear below.
  `,
])("%s", (source) => {
  checkFindings(source);
});

test("a trip's own gear against its boat's book, and no other's", () => {
  const source = `
    lure glow-spoon spoon 4 in
         ^^^^^^^^^^ duplicate-definition lure "glow-spoon" is defined twice, here and in line 7 of bright-penny.gear. Keep one, or start the newer with the date it holds from.
    lure new-spoon spoon 4 in
  `;
  checkDay(source);
  const book = 'boat "Tin Cup"\nrig Q1 downrigger\nlure glow-spoon spoon 4 in\n';
  checkFindings('lure glow-spoon spoon 4 in\ntrip 2031-06-21 "Tin Mug"\nboat "Tin Mug"', {
    books: { "file:///season/tin-cup.gear": book },
  });
});

test("a boat opened in two books is told at its first trip", () => {
  const books = {
    "file:///season/a.gear": 'boat "Bright Penny"\n',
    "file:///season/b.gear": '\nboat "Bright Penny"\n',
  };
  const [only, ...others] = findingsIn(OPENER + OPENER, { books });
  expect(others.filter((one) => one.slug === "duplicate-definition")).toEqual([]);
  expect(only?.message).toBe(
    'boat "Bright Penny" is defined twice, in line 1 of a.gear and in line 2 of b.gear. Open it once, and write all of its gear below.',
  );
  expect(only?.related.map((place) => `${place.uri} ${place.lineIndex}`)).toEqual([
    "file:///season/a.gear 0",
    "file:///season/b.gear 1",
  ]);
});

test.each<[string, string, string]>([
  [
    "file:///log/2030/boat.gear",
    "file:///log/2031/boat.gear",
    "line 1 of 2030/boat.gear and in line 1 of 2031/boat.gear",
  ],
  [
    "file:///log/boat.gear",
    "file:///log/old/boat.gear",
    "line 1 of log/boat.gear and in line 1 of old/boat.gear",
  ],
  [
    "file:///a/b/boat.gear",
    "file:///c/b/boat.gear",
    "line 1 of a/b/boat.gear and in line 1 of c/b/boat.gear",
  ],
  ["file:///boat.gear", "file:///log/boat.gear", "line 1 of boat.gear and in line 1 of log/boat.gear"],
  [
    "file:///log/Big%20Lake/boat.gear",
    "file:///log/River/boat.gear",
    "line 1 of Big Lake/boat.gear and in line 1 of River/boat.gear",
  ],
])("two books of one name are told apart by their folders: %s, %s", (one, other, words) => {
  const books = { [one]: 'boat "Bright Penny"\n', [other]: 'boat "Bright Penny"\n' };
  expect(findingsIn(OPENER, { books })[0]?.message).toContain(`is defined twice, in ${words}.`);
});

describe("fixes", () => {
  test("the second becomes a comment", () => {
    const before = 'boat "Tin Cup"\ncable wire steel\ncable wire braid  # new\n';
    const after = 'boat "Tin Cup"\ncable wire steel\n# cable wire braid  # new\n';
    checkFix("duplicate-definition", before, after);
  });
});

test("a guest's id given to two", () => {
  checkFindings(`
    trip 2031-06-21 "Bright Penny"
      guest G1 "Marv Tessler"
      guest G1 "Oona Pell"
            ^^ duplicate-definition guest "G1" is defined twice, here and in line 2. Give each guest an id of their own.
      guest G2
    trip 2031-06-22 "Bright Penny"
      guest G1 "Oona Pell"
  `);
});
