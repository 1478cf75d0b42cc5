import { test } from "vitest";
import { checkDay } from "./check-day.ts";

const FIRST = "05:45 gps course 130 at 44 46.1N 086 21.7W\n";

test.each([
  "05:45 gps course 310 at 44 46.1N 086 21.7W\n06:10 gps course 312 at 44 46.6N 086 22.5W",
  `${FIRST}05:50 turn right to 310\n06:10 gps course 312 at 44 46.6N 086 22.5W`,
  `${FIRST}06:10 gps course 312 at 44 46.6N 086 22.5W`,
  `${FIRST}06:16 gps course 132 at 44 46.6N 086 22.5W`,
  // Too near each other to tell.
  `${FIRST}06:10 gps course 132 at 44 46.2N 086 21.8W`,
  // Magnetic, and the boat's variation isn't stated.
  `${FIRST}06:10 gps course 132 magnetic at 44 46.6N 086 22.5W`,
  `${FIRST}06:10 gps course 132 at 44 46.6N 086 22.5W sure`,
  `
  05:45 gps course 130 at 44 46.1N 086 21.7W
  06:10 gps course 132 at 44 46.6N 086 22.5W
            ^^^^^^^^^^ course-disagrees Course 132, but the way from the position of 05:45 is 311.
  `,
  // A turn three minutes before the first position, or after the second: the boat may still have been on its way round.
  `05:42 turn left to 130\n${FIRST}06:10 gps course 132 at 44 46.6N 086 22.5W`,
  `${FIRST}06:10 gps course 132 at 44 46.6N 086 22.5W\n06:13 turn left to 130`,
  `
  05:41 turn left to 130
  05:45 gps course 130 at 44 46.1N 086 21.7W
  06:10 gps course 132 at 44 46.6N 086 22.5W
            ^^^^^^^^^^ course-disagrees Course 132, but the way from the position of 05:45 is 311.
  `,
  `
  05:45 gps course 130 at 44 46.1N 086 21.7W
  06:10 gps course 132 at 44 46.6N 086 22.5W
            ^^^^^^^^^^ course-disagrees Course 132, but the way from the position of 05:45 is 311.
  06:14 turn left to 130
  `,
  // Across the antimeridian.
  "05:45 gps course 090 at 44 46.1N 179 59.5E\n06:00 gps course 091 at 44 46.1N 179 59.5W",
])("%s", (source) => {
  checkDay(source);
});

const OFF = `
  05:45 gps course 130 at 44 46.1N 086 21.7W
  06:10 gps course 132 at 44 46.6N 086 22.5W
            ^^^^^^^^^^ course-disagrees Course 132, but the way from the position of 05:45 is 311.
`;

// 25 minutes and 1.4 km apart.
test.each([
  [OFF, "threshold course-disagrees-time 25 min"],
  [OFF.replace(/\n.*\^.*/u, ""), "threshold course-disagrees-time 24 min"],
  [OFF, "threshold course-disagrees-distance 1.3 km"],
  [OFF.replace(/\n.*\^.*/u, ""), "threshold course-disagrees-distance 1.5 km"],
])("%s with %s", (source, boat) => {
  checkDay(source, { boat });
});
