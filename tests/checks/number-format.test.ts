import { describe, test } from "vitest";
import { checkDay, checkDayFix, checkFindings, checkFix } from "./check-findings.ts";

test.each([
  `
  05:22 move P1 out 72,5 ft
                    ^^^^ number-format Write 72.5 for "72,5": a number has digits and a point, nothing else.
  `,
  `
  04:45 depart engine 1,200 h
                      ^^^^^ number-format Write 1200 for "1,200": a number has digits and a point, nothing else.
  `,
  `
  05:24 sonar marks 70-95 ft
                    ^^^^^ number-format A range is written with "to": 70 to 95, not "70-95".
  `,
  // A range would be no better there.
  `
  05:24 sonar bottom 70-95 ft
                     ^^^^^ number-format bottom is one figure, not a range like "70-95".
  `,
  `
  05:22 move P1 out 7.2.5 ft
                    ^^^^^ number-format "7.2.5" can't be read as a number; write it like 72.5.
  `,
])("%s", (source) => {
  checkDay(source);
});

test("a number of hundreds of digits is none", () => {
  const digits = "9".repeat(400);
  checkDay(`
  05:22 move P1 out ${digits} ft
                ${"^".repeat(4 + digits.length + 3)} number-format "${"9".repeat(40)}…" can't be read as a number; write it like 72.5.
  `);
});

test.each([
  `
  boat "Tin Cup"
    threshold deeper-than-out-share ten
                                    ^^^ number-format "ten" can't be read as a number; write it like 0.1.
    threshold reading-stale 40min
                            ^^^^^ number-format Write 40 min for "40min": a number has digits and a point, nothing else.
    threshold bottom-held 1 h 30 min
                          ^^^^^^^^^^ number-format "1 h 30 min" can't be read as a number; write it like 60 min.
  `,
])("%s", (source) => {
  checkFindings(source);
});

describe("fixes", () => {
  test.each([
    ["05:22 move P1 out 72,5 ft", "05:22 move P1 out 72.5 ft"],
    ["04:45 depart engine 1,200 h", "04:45 depart engine 1200 h"],
    ["05:24 sonar marks 70-95 ft", "05:24 sonar marks 70 to 95 ft"],
    ["05:22 move P1 out 72. ft", "05:22 move P1 out 72 ft"],
    ["05:10 profile 0-61, 30 ft 58 F", "05:10 profile 0 ft 61 F, 30 ft 58 F"],
    ["05:22 sonar bottom 15/2 fathoms", "05:22 sonar bottom 7.5 fathoms"],
  ])("%s → %s", (before, after) => {
    checkDayFix("number-format", before, after);
  });

  test("of a threshold", () => {
    const [before, after] = ["0,2", "0.2"].map(
      (n) => `boat "Tin Cup"\n  threshold deeper-than-out-share ${n}`,
    );
    checkFix("number-format", before ?? "", after ?? "");
  });
});
