import { test } from "vitest";
import { checkDay, checkTrolling } from "./check-day.ts";

test.each([
  "05:29 move P1 out 70 ft",
  // Another reading is not far behind.
  "05:40 move P1 out 70 ft\n05:55 surface speed 2.5 mph",
  "05:40 set J1 out 90 ft lure tin-slab",
  `
  05:40 move P1 out 70 ft
             ^^ reading-stale The speed to go by is 2.4 mph on top, read at 04:59, 41 min old; past 30 min it is only a guess.
  05:50 move P1 out 80 ft
  `,
  `
  05:10 set C1 out 60 ft
  05:12 probe C1 speed 2.5 mph
  05:50 set SD out 90 ft
            ^^ reading-stale The speed to go by is 2.5 mph on C1's probe, read at 05:12, 38 min old; past 30 min it is only a guess.
  `,
])("%s", (source) => {
  checkTrolling(source, { boat: "water fresh" });
});

test("a speed over ground will do", () => {
  const source = `
    05:00 gps speed 2.2 mph
    05:41 set P1 out 70 ft
              ^^ reading-stale The speed to go by is 2.2 mph over ground, read at 05:00, 41 min old; past 30 min it is only a guess.
  `;
  checkDay(source, { boat: "water fresh" });
});

test("by the boat's own threshold, or not at all", () => {
  checkTrolling("05:40 move P1 out 70 ft", { boat: "threshold reading-stale 45 min" });
  checkTrolling("05:40 move P1 out 70 ft", { boat: "quiet reading-stale" });
});
