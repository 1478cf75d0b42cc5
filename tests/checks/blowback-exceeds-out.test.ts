import { test } from "vitest";
import { checkTrolling } from "./check-day.ts";

test.each([
  "05:34 probe P1 depth 55 ft behind 20 ft",
  "05:34 probe P1 depth 55 ft behind 60 ft",
  "05:34 touch P1 out 90 ft behind 80 ft",
  // How much is out isn't stated.
  "05:34 set S1\n05:35 probe S1 behind 80 ft",
  // The book's calibration says there is more cable out than the counter shows.
  "2031-06-01 calibrate P1 counter-scale 1.1\n05:34 probe P1 behind 65 ft",
  "05:34 probe P1 behind 80 ft sure",
  `
  05:34 probe P1 depth 55 ft behind 80 ft
                             ^^^^^^^^^^^^ blowback-exceeds-out 80 ft behind, but only 60 ft of cable is out: it can't trail farther than that.
  `,
  `
  05:34 touch P1 out 70 ft behind 80 ft
                           ^^^^^^^^^^^^ blowback-exceeds-out
  `,
])("%s", (source) => {
  checkTrolling(source);
});
