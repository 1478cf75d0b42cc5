import { test } from "vitest";
import { checkDay, checkTrolling } from "./check-day.ts";

test.each([
  // What a boat in the waves shows, and said twice.
  "05:40 surface speed 2.0 mph\n05:40 surface speed 3.0 mph",
  "05:40 gps speed 2.4 mph\n05:40 gps speed 2.4 mph",
  // A minute later it may be so.
  "05:40 surface speed 2.0 mph\n05:41 surface speed 3.4 mph",
  "05:40 sonar bottom 165 ft\n05:41 sonar bottom 110 ft",
  "05:40 sonar bottom 165 ft\n05:40 sonar bottom 125 ft",
  // Something came between.
  "05:40 surface speed 2.0 mph\n05:40 turn left to 130\n05:40 surface speed 3.4 mph",
  "05:30 set C1 out 62 ft\n05:40 probe C1 depth 60 ft\n05:40 move C1 out 90 ft\n05:40 probe C1 depth 86 ft",
  // Other water, or another instrument: a current may be between them.
  "05:40 surface speed 2.0 mph\n05:40 gps speed 3.4 mph",
  "05:40 surface speed 2.0 mph\n05:40 probe C1 depth 60 ft speed 3.4 mph",
  "05:40 surface speed 2.0 mph\n05:40 surface speed 3.4 mph sure",
  `
  05:40 surface speed 2.0 mph
  05:40 surface speed 3.4 mph
                ^^^^^^^^^^^^^ readings-disagree A speed of 3.4 mph on top here, and of 2 mph on top at 05:40, within a minute: one of the two is a slip.
  `,
  `
  05:40 gps speed 2.4 mph
  05:40:30 gps speed 4.2 mph
               ^^^^^^^^^^^^^ readings-disagree A speed of 4.2 mph over ground here, and of 2.4 mph over ground at 05:40, within a minute: one of the two is a slip.
  `,
  // A probe at the surface is in the water on top, and two probes at one depth are in the same.
  `
  05:40 surface speed 2.0 mph
  05:40 probe C1 depth 2 ft speed 3.4 mph
                            ^^^^^^^^^^^^^ readings-disagree A speed of 3.4 mph at C1's probe here, and of 2 mph on top at 05:40, within a minute: one of the two is a slip.
  `,
  `
  05:40 probe P1 depth 56 ft speed 2.0 mph
  05:40 probe C1 depth 58 ft speed 3.6 mph
                             ^^^^^^^^^^^^^ readings-disagree
  `,
  `
  05:40 probe C1 depth 60 ft
  05:40 probe C1 depth 42 ft
                 ^^^^^^^^^^^ readings-disagree A depth of 42 ft at C1's probe here, and of 60 ft at C1's probe at 05:40, within a minute: one of the two is a slip.
  `,
  `
  05:40 sonar bottom 165 ft
  05:40 sonar bottom 65 ft
              ^^^^^^^^^^^^ readings-disagree A bottom of 65 ft here, and of 165 ft at 05:40, within a minute: one of the two is a slip.
  `,
])("%s", (source) => {
  checkTrolling(source);
});

test("before the lines are in, where their depths go by it", () => {
  checkDay(`
  05:00 surface speed 2.0 mph
  05:00 surface speed 3.4 mph
                ^^^^^^^^^^^^^ readings-disagree
  05:10 set P1 out 60 ft setback 15 ft lure glow-spoon
  `);
});

test("nothing trolled", () => {
  checkDay("05:40 gps speed 1.0 mph\n05:40 gps speed 22 mph");
});
