import { test } from "vitest";
import { checkFile, checkFixOf, checkTrolling } from "./check-day.ts";

test.each([
  // The day is not over.
  "05:30 strike P1\n05:35 lost P1 fish",
  "10:00 pull all\n11:00 return",
  "10:00 pull P1\n11:00 return",
  // The last fish took it out, and nothing put it back.
  "10:00 catch P1 coho kept\n11:00 return",
  `
  05:50 set S1 out 60 ft
  11:00 return
        ^^^^^^ never-pulled 2 lines assumed pulled at return, 11:00: P1, S1.
  `,
  // A line after the return doesn't change what was in the water then.
  `
  11:00 return
        ^^^^^^ never-pulled 1 line assumed pulled at return, 11:00: P1.
  11:05 box coho 0
  `,
])("%s", (source) => {
  checkTrolling(source);
});

test("without a return the opener says it, once the day is over", () => {
  checkFile(`
    trip 2031-06-21 "Bright Penny"
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ never-pulled 1 line assumed pulled at the last line, 11:05: P1.
    05:00 surface speed 2.4 mph
    05:01 set P1 out 60 ft
    11:05 box coho 0
  `);
  checkFile(`
    trip 2031-06-21 "Bright Penny"
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ never-pulled
    05:00 surface speed 2.4 mph
    05:01 set P1 out 60 ft
    trip 2031-06-22 "Bright Penny"
  `);
});

test("the missing line goes above the return", () => {
  checkFixOf("never-pulled", "trolling", "11:00 return", "11:00 pull all\n11:00 return");
});
