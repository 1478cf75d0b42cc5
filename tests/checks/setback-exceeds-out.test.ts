import { describe, expect, test } from "vitest";
import { checkDay, checkFile, checkFixOf, checkTrolling, fixTitles } from "./check-day.ts";

const SPEED = "05:00 surface speed 2.4 mph\n";

test.each([
  `${SPEED}05:10 set P1 out 60 ft setback 60 ft`,
  `${SPEED}05:10 set P1 out 15 ft setback 60 ft shallow`,
  `${SPEED}05:10 set P1 out 15 ft setback 60 ft sure`,
  // One of the two stays as it was.
  `${SPEED}05:10 set P1 out 60 ft setback 15 ft\n05:20 move P1 out 20 ft\n05:30 move P1 setback 18 ft`,
  `${SPEED}05:10 set P1 out 60 ft setback 15 ft\n05:20 move P1 out 10 ft shallow\n05:30 change P1 lure mini-spoon`,
  // No downrigger.
  `${SPEED}05:10 set SD out 15 ft setback 60 ft`,
  // Swapped, there would be more cable than water.
  `05:00 sonar bottom 30 ft\n${SPEED}05:10 set P1 out 15 ft setback 60 ft`,
])("%j", (source) => {
  checkDay(source);
});

test.each([
  `
  05:32 move P1 out 15 ft setback 60 ft
                          ^^^^^^^^^^^^^ setback-exceeds-out The lure is 60 ft back on 15 ft of cable: are the two swapped?
  `,
  // The rig was set like that before: said once.
  `
  05:32 move P1 out 15 ft setback 60 ft
                          ^^^^^^^^^^^^^ setback-exceeds-out
  05:40 move P1 out 18 ft setback 70 ft
  05:50 move P1 out 50 ft setback 20 ft
  06:00 move P1 out 15 ft setback 60 ft
                          ^^^^^^^^^^^^^ setback-exceeds-out
  `,
  // A unit that isn't the boat's.
  `
  05:32 move P1 out 95 cm setback 60 ft
                ^^^^^^^^^ setback-exceeds-out The lure is 60 ft back on 95 cm of cable, which is 3 ft: is 95 ft meant?
  `,
  // Carried from the line before: 15 ft back since 05:00.
  `
  05:32 move P1 out 12 ft
                ^^^^^^^^^ setback-exceeds-out The lure is still 15 ft back, on 12 ft of cable now: is that meant?
  05:40 move P1 out 10 ft
  `,
  `
  05:32 move P1 setback 80 ft
                ^^^^^^^^^^^^^ setback-exceeds-out The lure is 80 ft back now, on 60 ft of cable as before: is that meant?
  05:40 move P1 out 100 ft
  06:00 lost P1 coho
  06:10 again P1 out 70 ft
                 ^^^^^^^^^ setback-exceeds-out The lure is still 80 ft back, on 70 ft of cable now: is that meant?
  `,
])("%s", (source) => {
  checkTrolling(source);
});

test("a shallow day", () => {
  checkFile(`
    trip 2031-04-26 "Bright Penny"
      method shallow
    05:00 surface speed 1.8 mph
    05:10 set P1 out 5 ft setback 80 ft
  `);
});

describe("the fix swaps the numbers as they were typed", () => {
  test.each([
    ["05:32 move P1 out 15 ft setback 60.0 ft", "05:32 move P1 out 60.0 ft setback 15 ft"],
    ["05:32 move P1 15 ft setback 10 fathoms", "05:32 move P1 10 fathoms setback 15 ft"],
  ])("%j", (before, after) => {
    checkFixOf("setback-exceeds-out", "trolling", before, after);
  });

  test("and is the one to take", () => {
    expect(fixTitles("setback-exceeds-out", "trolling", "05:32 move P1 out 15 ft setback 60 ft")).toEqual([
      "Swap the two numbers*",
    ]);
  });
});
