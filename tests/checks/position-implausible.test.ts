import { test } from "vitest";
import { checkDay, checkTrolling } from "./check-day.ts";

test.each([
  "05:45 gps at 44 46.1N 086 21.7W\n06:15 gps at 44 46.6N 086 22.5W",
  // A fast run.
  "05:45 gps at 44 46.1N 086 21.7W\n06:45 gps at 45 20.0N 086 21.7W",
  // Two positions of one minute, close by.
  "05:45 gps at 44 46.1N 086 21.7W\n05:45 birds some at 44 46.2N 086 21.7W",
  // Where it runs to is not where it is.
  '05:45 gps at 44 46.1N 086 21.7W\n05:46 run to "Far" at 45 46.1N 086 21.7W',
  // Across the antimeridian, and round the pole.
  "05:45 gps at 44 46.1N 179 59.9E\n05:55 gps at 44 46.1N 179 59.9W",
  "05:45 gps at 89 59.9N 010 00.0W\n05:55 gps at 89 59.9N 170 00.0E",
  "05:45 gps at 44 46.1N 086 21.7W\n06:15 gps at 46 46.6N 086 22.5W sure",
  `
  05:45 gps at 44 46.1N 086 21.7W
  06:15 gps at 46 46.6N 086 22.5W
            ^^^^^^^^^^^^^^^^^^^^^ position-implausible 121 nautical miles from the position of 05:45: that takes 277.4 mph, and a boat makes up to 50 mph.
  06:20 gps at 44 46.7N 086 22.5W
  `,
  `
  05:45 gps at 44 46.1N 086 21.7W
  06:15 gps at 46 46.6N 086 22.5W
            ^^^^^^^^^^^^^^^^^^^^^ position-implausible
  06:20 gps at 46 46.7N 086 22.5W
  `,
  // No speed worth a figure.
  `
  05:45 gps at 44 46.1N 086 21.7W
  05:46 gps at 44 46.1N 006 21.7W
            ^^^^^^^^^^^^^^^^^^^^^ position-implausible 3269 nautical miles from the position of 05:45, 1 min on: a boat makes up to 50 mph.
  06:20 gps at 44 46.7N 086 22.5W
  `,
  `
  05:45 gps at 44 46.1N 086 21.7W
  05:45 gps at 44 56.1N 086 21.7W
            ^^^^^^^^^^^^^^^^^^^^^ position-implausible 10 nautical miles from the position of 05:45: in the same minute.
  `,
])("%s", (source) => {
  checkDay(source);
});

test.each([
  "05:45 gps at 44 46.1N 086 21.7W\n07:14 gps at 44 50.0N 086 21.7W",
  // Fast with the current, over a few minutes, written to whole tenths.
  "05:45 gps at 44 46.1N 086 21.7W\n05:50 gps at 44 47.0N 086 21.7W",
  // The boat ran, or had nothing in for a while.
  "05:45 gps at 44 46.1N 086 21.7W\n06:00 run\n07:14 gps at 45 26.0N 086 21.7W",
  "05:45 gps at 44 46.1N 086 21.7W\n06:00 pull all\n07:10 set P1 out 60 ft sure\n07:14 gps at 45 26.0N 086 21.7W",
  "05:45 gps at 44 46.1N 086 21.7W\n07:14 gps at 45 26.0N 086 21.7W sure",
  `
  05:45 gps at 44 46.1N 086 21.7W
  07:14 gps at 45 26.1N 086 21.7W
            ^^^^^^^^^^^^^^^^^^^^^ position-implausible 40 nautical miles from the position of 05:45: that takes 31 mph, and with lines in the water all the while a boat makes up to 9 mph.
  07:20 gps at 44 47.1N 086 21.7W
  `,
])("at a troll: %s", (source) => {
  checkTrolling(source);
});
