/** Why there is no depth, in the boat's units and rounded. */
import { expect, test } from "vitest";
import { depthOf } from "./depth-of.ts";

const SET = "05:10 set P1 out 60 ft";

test.each([
  [
    "05:05 probe P1 speed 25 mph sure\n05:05 set P1 out 60 ft",
    "",
    "the speed is 25 mph, above the 22.4 mph that depths are computed up to",
  ],
  [
    "05:10 set P1 out 15000 ft",
    "",
    "the cable out on the counter is 15000 ft, above the 6560 ft that depths are computed up to",
  ],
  [
    SET,
    "cable rigger-wire steel diameter 0.9 ft",
    "the line's diameter is 274 mm, above the 20 mm that depths are computed up to (cable rigger-wire)",
  ],
  [
    SET,
    "ball round-12 sphere 900 lb",
    "the ball's mass is 900 lb, above the 441 lb that depths are computed up to",
  ],
  [
    "05:10 set CU out 9000 ft lure glow-spoon",
    "",
    "the line out is 9000 ft, above the 6560 ft that depths are computed up to",
  ],
  [
    "05:10 set P1 out 60 ft\n05:10 set P1 out 60 ft setback 15000 ft lure glow-spoon",
    "",
    "the setback of P1 is 15000 ft, above the 6560 ft that depths are computed up to",
  ],
])("%s %s", (lines, gear, why) => {
  expect(depthOf(lines, gear === "" ? "" : `2031-06-01 ${gear}`).why).toBe(why);
});
