import { describe, test } from "vitest";
import { dedent } from "../harness/markers.ts";
import { checkDay, checkFile, checkFixOf, checkTrolling } from "./check-day.ts";

test.each([
  "05:09 sonar bottom 70 ft\n05:10 move P1 out 62 ft",
  "05:09 sonar bottom 62 ft\n05:10 move P1 out 62 ft on-bottom",
  "05:09 sonar bottom 62 ft\n05:10 move P1 out 62 ft sure",
  // No bottom read within the hour, or not since the boat ran.
  "05:09 sonar bottom 40 ft\n05:12 move P1 out 30 ft\n06:10 surface speed 2.4 mph\n06:11 move P1 out 62 ft",
  "05:09 sonar bottom 40 ft\n05:10 pull all\n05:11 run\n05:40 set P1 out 62 ft",
  // Light and far back it may as well run clear of the bottom.
  "05:09 sonar bottom 13 ft\n05:10 move P1 out 5 ft setback 80 ft",
  `
  05:09 sonar bottom 62 ft
  05:10 move P1 out 62 ft
                ^^^^^^^^^ touching-bottom The ball is about 59 ft down; bottom last read 62 ft, 1 min ago.
  `,
  `
  05:10 sonar bottom 50 ft
  05:10 move P1 out 62 ft
                ^^^^^^^^^ touching-bottom The ball is on the bottom; bottom last read 50 ft, just now.
  `,
])("%s", (source) => {
  checkTrolling(source);
});

describe("the bottom comes up under lines that are out", () => {
  test.each([
    "06:20 sonar bottom 100 ft\n06:30 sonar bottom 75 ft",
    // Seen to within five minutes: taken up, or out of the water.
    "06:30 sonar bottom 45 ft\n06:33 move P1 out 35 ft",
    "06:30 sonar bottom 45 ft\n06:33 pull all",
    // Not out any more, or with a fish on.
    "06:10 pull P1\n06:30 sonar bottom 45 ft",
    "06:29 strike P1\n06:30 sonar bottom 45 ft\n06:35 lost P1 fish",
    "06:10 move P1 out 60 ft on-bottom\n06:30 sonar bottom 45 ft",
    "06:30 sonar bottom 45 ft sure",
    `
    06:20 sonar bottom 100 ft
    06:30 sonar bottom 60 ft
                ^^^^^^^^^^^^ touching-bottom The bottom has come up to 60 ft: P1's ball, set at 05:00, is about 58 ft down.
    `,
    // Once until it moves, then as it goes out, or where it comes up once more.
    `
    06:30 sonar bottom 58 ft
                ^^^^^^^^^^^^ touching-bottom The bottom has come up to 58 ft: P1's ball, set at 05:00, is about 58 ft down.
    06:40 sonar bottom 50 ft
    06:50 sonar bottom 80 ft
    06:51 move P1 out 70 ft
    06:55 surface speed 2.4 mph
    07:30 sonar bottom 60 ft
                ^^^^^^^^^^^^ touching-bottom The bottom has come up to 60 ft: P1's ball, moved at 06:51, is on the bottom.
    `,
    // Told as it went out.
    `
    06:30 sonar bottom 70 ft
    06:31 move P1 out 72 ft
                  ^^^^^^^^^ touching-bottom
    06:50 sonar bottom 60 ft
    `,
    // One message for all of them; a ball once for all the rods on it.
    `
    06:00 set P1U above 20 ft setback 15 ft lure glow-spoon
    06:01 set S1 out 50 ft setback 15 ft lure glow-spoon
    06:02 set C1 out 30 ft setback 15 ft lure glow-spoon
    06:30 sonar bottom 45 ft
                ^^^^^^^^^^^^ touching-bottom The bottom has come up to 45 ft: P1's ball, set at 05:00, is on the bottom; S1's ball, set at 06:01, is on the bottom.
    `,
  ])("%s", (source) => {
    checkTrolling(source);
  });

  test("where the sounder lies below the water line both depths are named", () => {
    checkDay(
      `
    05:00 surface speed 2.4 mph
    05:09 sonar bottom 62 ft
    05:10 set P1 out 66 ft
                 ^^^^^^^^^ touching-bottom The ball is on the bottom; bottom last read 62 ft (64 ft of water), 1 min ago.
    05:20 set S1 out 50 ft
    05:30 sonar bottom 46 ft
                ^^^^^^^^^^^^ touching-bottom The bottom has come up to 46 ft (48 ft of water): S1's ball, set at 05:20, is on the bottom.
    `,
      { boat: "sounder 2 ft" },
    );
  });

  test("a day on the bottom", () => {
    checkFile(`
      trip 2031-06-21 "Bright Penny"
        method deep
      05:00 surface speed 2.4 mph
      05:10 set P1 out 60 ft
      05:40 sonar bottom 60 ft
    `);
  });
});

test("a plug dives below its ball", () => {
  checkDay(`
    lure night-plug plug 5 in pulls-down 12 ft
    05:00 surface speed 2.4 mph
    05:01 sonar bottom 62 ft
    05:10 set P1 out 60 ft setback 30 ft lure night-plug
                 ^^^^^^^^^ touching-bottom The lure is on the bottom; bottom last read 62 ft, 9 min ago.
  `);
});

test("a day on the bottom", () => {
  checkFile(`
    trip 2031-06-21 "Bright Penny"
      method deep
    05:00 surface speed 2.4 mph
    05:01 sonar bottom 60 ft
    05:10 set P1 out 60 ft
  `);
});

test.each([
  `
  05:01 sonar bottom 60 ft
  05:10 set P1 out 130 ft on-bottom
               ^^^^^^^^^^ touching-bottom 130 ft of cable over 60 ft of water: the ball would lie far from where it is let down. Is one of the two wrong?
  `,
  "05:01 sonar bottom 60 ft\n05:10 set P1 out 130 ft sure",
  "05:01 sonar bottom 60 ft\n05:10 set P1 out 115 ft on-bottom",
])("far too much cable, even for a ball that is meant to be on the bottom: %s", (source) => {
  checkFile(`
    trip 2031-06-21 "Bright Penny"
      method deep
    05:00 surface speed 2.4 mph
    ${dedent(source).replaceAll("\n", "\n    ")}
  `);
});

describe("fix", () => {
  test.each([
    ["05:10 move P1 out 62 ft", "05:10 move P1 out 62 ft on-bottom"],
    ["05:10 again P1 out 62 ft  # why not", "05:10 again P1 out 62 ft on-bottom  # why not"],
  ])("%j", (before, after) => {
    const sonar = "05:09 sonar bottom 62 ft\n";
    checkFixOf("touching-bottom", "trolling", sonar + before, sonar + after);
  });
});
