import { test } from "vitest";
import { checkDay } from "./check-day.ts";

test.each([
  "05:10 profile 0 ft 61 F, 30 ft 58 F, 50 ft 52 F",
  // In any order of writing.
  "05:10 profile 50 ft 52 F, 0 ft 61 F, 30 ft 58 F",
  // Spring: colder water floats on 39 F.
  "05:10 profile 0 ft 34 F, 30 ft 37 F, 100 ft 39 F",
  "05:10 profile 0 ft 38 F, 30 ft 40 F, 100 ft 39 F",
  // Within a degree.
  "05:10 profile 0 ft 61 F, 10 ft 61.9 F, 50 ft 52 F",
  "05:10 profile 0 ft 61 F, 30 ft 52 F, 50 ft 58 F sure",
  `
  05:10 profile 0 ft 61 F, 30 ft 52 F, 50 ft 58 F
                                       ^^^^^^^^^^ profile-upside-down 52 F at 30 ft is heavier water than 58 F at 50 ft below it: it would sink. Were two numbers swapped?
  `,
  // Warming from below 39 F is light on heavy; from above it is not.
  `
  05:10 profile 0 ft 42 F, 30 ft 46 F
                           ^^^^^^^^^^ profile-upside-down
  `,
])("%s", (source) => {
  checkDay(source);
});

test("salt water has no heaviest temperature above freezing", () => {
  checkDay(
    `
    05:10 profile 0 ft 34 F, 30 ft 38 F
                             ^^^^^^^^^^ profile-upside-down
    `,
    { boat: "water salt" },
  );
});
