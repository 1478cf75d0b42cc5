import { test } from "vitest";
import { checkDay } from "./check-day.ts";

test.each([
  "05:00 surface speed 2.4 mph\n05:10 set P1 out 60 ft",
  // The first reading serves lines up to an hour before it.
  "05:10 set P1 out 60 ft\n06:00 gps speed 2.4 mph",
  // A jig hangs still; a line without a clock shares no minute with a reading.
  "05:10 set J1 out 90 ft lure tin-slab",
  "set P1 out 60 ft",
  `
  05:10 set P1 out 60 ft
            ^^ reading-missing No depth at 05:10: no speed (probe, surface or gps) was read in the 2 h before or the 1 h after.
  05:20 set S1 out 60 ft
  05:30 move P1 out 70 ft
  `,
  // Once for each gap.
  `
  05:10 set P1 out 60 ft
            ^^ reading-missing
  07:00 surface speed 2.4 mph
  07:10 move P1 out 70 ft
  09:30 move P1 out 80 ft
             ^^ reading-missing
  `,
])("%s", (source) => {
  checkDay(source);
});

test("by the boat's own threshold", () => {
  const source = `
    05:10 set P1 out 60 ft
              ^^ reading-missing No depth at 05:10: no speed (probe, surface or gps) was read in the 2 h before or the 20 min after.
    05:40 surface speed 2.4 mph
  `;
  checkDay(source, { boat: "threshold reading-ahead 20 min" });
});
