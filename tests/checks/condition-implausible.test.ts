import { test } from "vitest";
import { checkDay } from "./check-day.ts";

test.each([
  "11:40 dock chinook 14 lb 32 in",
  // Spent, and fat.
  "11:40 dock chinook 9 lb 38 in",
  "11:40 dock lake-trout 20 lb 31 in",
  "11:40 dock yellow-perch 8 in 6 oz",
  // The weight may be of all of them.
  "11:40 dock coho count 9 30 lb 12 in",
  "11:40 dock chinook 34 lb",
  "11:40 dock chinook 34 lb 12 in sure",
  `
  11:40 dock chinook 34 lb 12 in
                     ^^^^^^^^^^^ condition-implausible 34 lb at 12 in can't be: a fish of 12 in weighs 3.1 lb at the most.
  `,
  `
  11:40 dock king 3 in 8 lb
                  ^^^^^^^^^ condition-implausible 8 lb at 3 in can't be: a fish of 3 in hardly weighs anything.
  `,
  `
  11:40 dock coho length 30 in weight 1 oz
                  ^^^^^^^^^^^^^^^^^^^^^^^^ condition-implausible
  `,
  // One alone is beyond belief: that is said.
  `
  11:40 dock chinook 180 lb 12 in
                     ^^^^^^ fish-implausible
  `,
])("%s", (source) => {
  checkDay(source);
});
