import { test } from "vitest";
import { checkDay } from "./check-day.ts";

const GEAR = `lure green-spoon spoon 4 in
cable lead-27 leadcore diameter 0.85 mm
cable copper-45 copper diameter 0.95 mm
cable backing-30 braid diameter 0.3 mm
rig PB leadcore cable lead-27 holds 10 colors
rig SB leadcore cable lead-27 holds 10 colors backing backing-30
rig CU copper cable copper-45 holds 300 ft
rig WW copper cable copper-45
05:00 surface speed 2.1 mph
`;

test.each([
  "05:10 set PB out 10 colors lure green-spoon",
  // The same length in feet.
  "05:10 set PB out 300 ft lure green-spoon",
  // The rest is backing.
  "05:10 set SB out 14 colors lure green-spoon",
  // What it holds isn't stated.
  "05:10 set WW out 900 ft lure green-spoon",
  "05:10 set CU out 320 ft lure green-spoon sure",
])("%s", (line) => {
  checkDay(GEAR + line);
});

test.each([
  `05:10 set PB out 12 colors lure green-spoon
             ^^^^^^^^^^^^^ line-too-long 12 colors out, but PB holds 10 colors; name its backing in the gear book if the rest is backing.`,
  `05:10 set CU out 200 ft lure green-spoon
05:20 move CU out 320 ft
              ^^^^^^^^^^ line-too-long 320 ft out, but CU holds 300 ft; name its backing in the gear book if the rest is backing.`,
  // Said of the length that is stated, not of lines that leave it as it was.
  `05:10 set PB out 10 colors 50 ft lure green-spoon
             ^^^^^^^^^^^^^^^^^^^ line-too-long 11.7 colors out, but PB holds 10 colors; name its backing in the gear book if the rest is backing.
05:20 again PB`,
])("%s", (lines) => {
  checkDay(GEAR + lines);
});
