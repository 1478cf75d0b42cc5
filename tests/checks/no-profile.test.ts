import { test } from "vitest";
import { checkFile } from "./check-day.ts";

const trip = (lines: string, target = "target chinook"): string =>
  `trip 2031-06-21 "Bright Penny"\n  ${target}\n\n04:59 surface temp 61 F speed 2.4 mph\n${lines}`;

test.each([
  [
    "a profile",
    trip(
      "05:00 profile 0 ft 61 F, 40 ft 55 F, 80 ft 45 F\n05:10 set C1 out 70 ft setback 20 ft lure glow-spoon",
    ),
  ],
  [
    "a profile that isn't deep enough",
    trip("05:00 profile 0 ft 61 F, 40 ft 55 F\n05:10 set C1 out 70 ft setback 20 ft lure glow-spoon"),
  ],
  ["near the surface", trip("05:10 set C1 out 8 ft setback 5 ft lure glow-spoon")],
  [
    "a probe at that depth",
    trip(
      "05:12 probe C1 depth 69 ft temp 47 F speed 2.4 mph\n05:14 set P1 out 71 ft setback 5 ft lure glow-spoon",
    ),
  ],
  ["no target", trip("05:10 set C1 out 70 ft setback 20 ft lure glow-spoon", "anglers 2")],
  ["a target without a band", trip("05:10 set C1 out 70 ft setback 20 ft lure glow-spoon", "target burbot")],
])("quiet: %s", (_, source) => {
  checkFile(source);
});

test("once for each gap", () => {
  checkFile(`
  trip 2031-06-21 "Bright Penny"
    target chinook

  03:50 surface temp 61 F speed 2.4 mph
  04:00 set C1 out 70 ft setback 20 ft lure glow-spoon
            ^^ no-profile No water temperature for C1, about 70 ft down: nothing was read in the 6 h before. A profile would tell.
  04:02 set P1 out 80 ft setback 20 ft lure glow-spoon
  05:30 profile 0 ft 61 F, 40 ft 55 F, 80 ft 45 F
  05:40 move P1 out 60 ft
  12:00 surface speed 2.4 mph
  12:10 move P1 out 75 ft
             ^^ no-profile
  `);
});
