import { describe, test } from "vitest";
import { checkDay, checkDayFix } from "./check-findings.ts";

const ON = { on: "unit-not-written" };

test("off unless it is asked for", () => {
  checkDay("05:14 set P1 out 72");
});

test.each([
  "05:14 set P1 out 72 ft",
  `
  05:14 set P1 out 72 setback 15 ft
                   ^^ unit-not-written out 72 means 72 ft only as long as the gear book says so. Write the unit, and a new book can't change this line.
  `,
  `
  06:14 catch P1 king 18 lb length 35
                                   ^^ unit-not-written length 35 means 35 in only as long as the gear book says so. Write the unit, and a new book can't change this line.
  `,
])("%s", (source) => {
  checkDay(source, ON);
});

describe("fixes", () => {
  test.each([
    ["05:14 set P1 out 72", "05:14 set P1 out 72 ft"],
    ["lure x plug pulls-down 4 to 8", "lure x plug pulls-down 4 to 8 ft"],
    ["lure x plug length 4", "lure x plug length 4 in"],
  ])("%s → %s", (before, after) => {
    checkDayFix("unit-not-written", before, after, ON);
  });
});
