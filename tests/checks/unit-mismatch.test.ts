import { describe, test } from "vitest";
import { checkDay, checkDayFix, checkFindings, checkFix } from "./check-findings.ts";

test.each([
  `
  05:21 probe P1 depth 66 F
                       ^^^^ unit-mismatch depth needs a length, like 90 ft; F measures a temperature.
  `,
  `
  05:21 surface speed 61 F
                      ^^^^ unit-mismatch speed needs a speed, like 2.4 mph; F measures a temperature.
  `,
])("%s", (source) => {
  checkDay(source);
});

test.each([
  `
  boat "Tin Cup"
    threshold reading-stale 40 ft
                            ^^^^^ unit-mismatch reading-stale needs a stretch of time, like 4 min; ft measures a length.
    threshold deeper-than-out-share 10 ft
                                    ^^^^^ unit-mismatch deeper-than-out-share is a plain number; take ft away.
  `,
])("%s", (source) => {
  checkFindings(source);
});

describe("fixes", () => {
  test.each([
    ["05:21 probe P1 depth 66 F", "temp", "05:21 probe P1 temp 66 F"],
    ["05:21 probe P1 depth 66 F", "66 ft", "05:21 probe P1 depth 66 ft"],
    ["05:21 probe P1 depth 66 F temp 45 F", "66 ft", "05:21 probe P1 depth 66 ft temp 45 F"],
  ])("%s, %s → %s", (before, fix, after) => {
    checkDayFix("unit-mismatch", before, after, { fix });
  });

  test("of a threshold", () => {
    const [before = "", after = ""] = ["40 ft", "40 min"].map(
      (value) => `boat "Tin Cup"\n  threshold reading-stale ${value}`,
    );
    checkFix("unit-mismatch", before, after);
  });
});
