import { test } from "vitest";
import { checkTrolling } from "./check-day.ts";

test.each([
  // The boat did not change its speed.
  "05:40 surface speed 2.3 mph\n05:40 gps speed 2.0 mph course 310\n06:00 surface speed 2.3 mph\n06:00 gps speed 2.1 mph course 310\n06:20 surface speed 2.3 mph\n06:20 gps speed 2.2 mph course 310",
  // A current would do that on other courses.
  "05:40 surface speed 2.3 mph\n05:40 gps speed 2.0 mph course 310\n06:00 surface speed 2.3 mph\n06:00 gps speed 2.6 mph course 130\n06:20 surface speed 2.3 mph\n06:20 gps speed 2.0 mph course 310",
  // Twice is chance.
  "05:40 surface speed 2.3 mph\n05:40 gps speed 2.0 mph course 310\n06:00 surface speed 2.3 mph\n06:00 gps speed 2.6 mph course 310",
  `
  05:40 surface speed 2.3 mph
  05:40 gps speed 2.0 mph course 310
  06:00 surface speed 2.3 mph
  06:00 gps speed 2.3 mph course 312
  06:20 surface speed 2.3 mph
                ^^^^^^^^^^^^^ stuck-wheel 2.3 mph on top 3 times running, while the speed over ground on that course changed by 0.6 mph: does the wheel turn?
  06:20 gps speed 2.6 mph course 308
  `,
  `
  05:40 probe C1 speed 0 mph
                 ^^^^^^^^^^^ stuck-wheel No speed at C1's probe while the boat makes 2.2 mph over ground: is the wheel fouled?
  05:41 gps speed 2.2 mph
  `,
  // Without the GPS it is a speed nobody trolls at.
  `
  05:40 surface speed 0 mph
                ^^^^^^^^^^^ speed-implausible
  `,
])("%s", (source) => {
  checkTrolling(source);
});
