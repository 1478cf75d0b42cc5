import { test } from "vitest";
import { checkTrolling } from "./check-day.ts";

test.each([
  "05:36 probe P1 depth 57 ft",
  // Whole feet on both instruments.
  "05:36 probe P1 depth 61 ft",
  "05:36 probe P1 depth 95 ft sure",
  // A ball lowered for a reading: nobody says how far.
  "05:36 pull P1\n05:40 probe P1 depth 95 ft",
  "05:36 probe P1 depth 65 ft\n2031-06-01 calibrate P1 counter-scale 1.1",
  // In what order it was moved and read can't be told.
  `
  05:40 move P1 out 120 ft
  05:50 birds some
  05:30 probe P1 depth 110 ft
  ^^^^^ time-backwards
  06:00 fleas some
  `,
  "05:36 touch P1 out 92 ft bottom 90 ft",
  // The sounder is under the boat, the ball behind it: slopes differ.
  "05:36 touch P1 out 92 ft\n05:37 sonar bottom 100 ft",
  "05:36 touch P1 out 92 ft\n05:50 sonar bottom 150 ft",
  `
  05:36 probe P1 depth 64 ft
                 ^^^^^^^^^^^ deeper-than-out The probe shows 64 ft, with 60 ft of cable out: does the counter read short?
  `,
  `
  05:36 probe P1 depth 73 ft
                 ^^^^^^^^^^^ deeper-than-out The probe shows 73 ft, with 60 ft of cable out: one of the two is wrong.
  `,
  // The probe rides above the ball, so the ball is deeper still.
  `
  05:36 set C1 out 60 ft
  05:38 probe C1 depth 60 ft
                 ^^^^^^^^^^^ deeper-than-out The probe shows 60 ft, 1 ft above the ball, with 60 ft of cable out: does the counter read short?
  `,
  `
  05:36 touch P1 out 92 ft bottom 95 ft
                           ^^^^^^^^^^^^ deeper-than-out The ball touched bottom in 95 ft, with 92 ft of cable out: does the counter read short?
  `,
  `
  05:36 touch P1 out 92 ft
              ^^ deeper-than-out The ball touched bottom in 120 ft, with 92 ft of cable out: does the counter read short?
  05:37 sonar bottom 120 ft
  `,
])("%s", (source) => {
  checkTrolling(source);
});
