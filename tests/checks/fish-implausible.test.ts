import { describe, expect, test } from "vitest";
import { checkDay, checkFixOf, checkTrolling, fixTitles } from "./check-day.ts";

test.each([
  "07:06 catch P1 king 35 lb 44 in kept",
  "07:06 catch P1 coho 9 oz 9 in released",
  "07:06 catch P1 chinook 180 lb kept sure",
  `
  07:06 catch P1 king 180 lb kept
                      ^^^^^^ fish-implausible 180 lb is beyond any chinook: up to 50 lb is believed. Was 18.0 lb meant?
  `,
  `
  07:06 catch P1 king 18 lb 64 in kept
                            ^^^^^ fish-implausible 64 in is beyond any chinook: up to 52 in is believed. Was 64 cm meant?
  `,
  `
  07:06 catch P1 king 18 lb 52.4 in kept
                            ^^^^^^^ fish-implausible 52.4 in is beyond any chinook: up to 52 in is believed. Was 52.4 cm meant?
  `,
  `
  07:06 catch P1 yellow-perch 9 lb kept
                              ^^^^ fish-implausible 9 lb is beyond any yellow-perch: up to 4.5 lb is believed. Was 9 oz meant?
  `,
  `
  07:06 catch P1 king weight 60 lb 5 oz kept
                      ^^^^^^^^^^^^^^^^^ fish-implausible 60 lb 5 oz is beyond any chinook: up to 50 lb is believed.
  `,
  `
  07:06 catch P1 coho 0 lb kept
                      ^^^^ fish-implausible A weight of 0 lb can't be.
  `,
])("%s", (source) => {
  checkTrolling(source);
});

test.each([
  "11:40 dock chinook 30 lb",
  "11:40 dock goldeye 300 lb sure",
  `
  11:40 dock coho -12 in
                  ^^^^^^ fish-implausible A length of -12 in can't be.
  `,
])("%s", (source) => {
  checkDay(source);
});

describe("fixes", () => {
  test.each([
    ["07:06 catch P1 king 180 lb kept", "07:06 catch P1 king 18.0 lb kept"],
    ["07:06 catch P1 king length 64 in kept", "07:06 catch P1 king length 64 cm kept"],
    ["07:06 catch P1 king 30 kg kept", "07:06 catch P1 king 30 lb kept"],
    ["07:06 catch P1 king 30 ft kept", "07:06 catch P1 king 30 in kept"],
  ])("%j → %j", (before, after) => {
    checkFixOf("fish-implausible", "trolling", before, after);
  });
  test("a unit is the one to take, a point only offered", () => {
    expect(fixTitles("fish-implausible", "trolling", "07:06 catch P1 king 64 in")).toEqual(["Write 64 cm*"]);
    expect(fixTitles("fish-implausible", "trolling", "07:06 catch P1 king 180 lb")).toEqual([
      "Write 18.0 lb",
    ]);
  });
});
