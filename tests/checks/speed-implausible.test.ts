import { describe, expect, test } from "vitest";
import { checkDay, checkFixOf, checkTrolling, fixTitles } from "./check-day.ts";

test.each([
  "05:43 surface speed 0.5 mph\n05:49 gps speed 6 mph",
  "05:43 gps speed 14 mph sure",
  // Running, with the lines up or on the way.
  "05:40 run\n05:43 gps speed 22 mph",
  "05:40 pull all\n05:43 gps speed 22 mph",
  "05:40 drift\n05:43 gps speed 0.2 mph",
  // With a fish on the boat may stand.
  "05:40 strike P1\n05:43 gps speed 0.3 mph\n05:45 catch P1 coho kept",
  "06:00 return\n      ^^^^^^ never-pulled\n06:10 gps speed 20 mph",
  `
  05:43 surface temp 66 F speed 14 mph
                          ^^^^^^^^^^^^ speed-implausible 14 mph with lines in the water; a troll is from 0.5 mph to 6 mph.
  `,
  `
  05:43 gps speed 0.2 mph
            ^^^^^^^^^^^^^ speed-implausible
  `,
  `
  05:43 gps speed 26 mph
            ^^^^^^^^^^^^ speed-implausible 26 mph with lines in the water can't be.
  `,
  // The next set ends a run.
  `
  05:40 pull all
  05:41 run
  05:55 set P1 out 60 ft
  06:00 gps speed 14 mph
            ^^^^^^^^^^^^ speed-implausible
  `,
])("%s", (source) => {
  checkTrolling(source);
});

test.each([
  "05:00 depart\n05:10 gps speed 30 mph",
  "05:00 set J1 out 90 ft lure tin-slab anglers 2\n05:10 gps speed 0.1 mph",
])("%j", (source) => {
  checkDay(source);
});

test("read while the boat lay, it is told where a line goes by it", () => {
  checkDay(`
  05:00 surface speed 0 mph
                ^^^^^^^^^^^ speed-implausible 0 mph is the speed that the depth at 05:05 goes by; a troll is from 0.5 mph to 6 mph.
  05:05 set P1 out 60 ft setback 15 ft lure glow-spoon
  `);
  checkDay("05:00 surface speed 0 mph\n05:05 surface speed 2.2 mph\n05:05 set P1 out 60 ft");
});

test("in the boat's own units and by its own thresholds", () => {
  const source = `
    05:43 gps speed 3.5 mph
              ^^^^^^^^^^^^^ speed-implausible 3.5 mph with lines in the water; a troll is from 0.5 mph to 3 mph.
  `;
  checkTrolling(source, { boat: "threshold fastest-troll 3 mph" });
});

describe("a point that is missing", () => {
  test("is put in", () => {
    checkFixOf("speed-implausible", "trolling", "05:43 gps speed 24 mph", "05:43 gps speed 2.4 mph");
  });
  test("is not where it would be no better", () => {
    expect(fixTitles("speed-implausible", "trolling", "05:43 gps speed 7 mph")).toEqual([]);
    expect(fixTitles("speed-implausible", "trolling", "05:43 gps speed 99 mph")).toEqual([]);
  });
});
