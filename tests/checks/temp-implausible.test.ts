import { describe, expect, test } from "vitest";
import { checkDay, checkFixOf, fixTitles } from "./check-day.ts";

test.each([
  "05:44 surface temp 33 F",
  "05:44 surface temp 89 F",
  // The air may be what it likes.
  "05:44 weather air 4 F",
  "05:44 surface temp 18 F sure",
  `
  05:44 surface temp 30 F
                ^^^^^^^^^ temp-implausible Water of 30 F is doubtful: below 31 F it would be ice.
  `,
  `
  05:44 probe C1 temp 18 F
                 ^^^^^^^^^ temp-implausible Water of 18 F can't be: nothing below 28 F is a lake's.
  `,
  `
  05:44 surface temp 4.8 F
                ^^^^^^^^^^ temp-implausible Water of 4.8 F can't be: nothing below 28 F is a lake's.
  05:44 surface temp 90.4
                ^^^^^^^^^ temp-implausible Water of 90.4 F is doubtful: the lakes hardly get above 90 F.
  `,
  `
  05:44 surface temp 95 F
                ^^^^^^^^^ temp-implausible Water of 95 F is doubtful: the lakes hardly get above 90 F.
  `,
  `
  05:44 profile 0 ft 61 F, 30 ft 16 F, 50 ft 148 F
                           ^^^^^^^^^^ temp-implausible
                                       ^^^^^^^^^^^ temp-implausible Water of 148 F can't be: nothing above 110 F is a lake's.
  `,
  // In the boat's own units.
  `
  05:44 surface temp 45 C
                ^^^^^^^^^ temp-implausible Water of 45 C (113 F) can't be: nothing above 110 F is a lake's.
  `,
  // Upwelling takes hours; other depths are other water.
  "05:44 surface temp 61 F\n05:55 surface temp 50 F",
  "05:44 probe C1 depth 60 ft temp 50 F\n05:50 probe C1 depth 64 ft temp 41 F",
  "05:44 surface temp 61 F\n05:50 surface temp 54 F",
  `
  05:44 surface temp 61 F
  05:50 surface temp 51 F
                ^^^^^^^^^ temp-implausible Water of 51 F at 0 ft, where 05:44 has 61 F: one of the two is doubtful.
  `,
  `
  05:10 profile 0 ft 61 F, 50 ft 52 F, 100 ft 43 F
  05:15 probe C1 depth 50 ft temp 43 F
                             ^^^^^^^^^ temp-implausible Water of 43 F at 50 ft, where 05:10 has 52 F: one of the two is doubtful.
  `,
  // One depth twice: the same is no harm.
  "05:10 profile 0 ft 61 F, 50 ft 52 F, 50 ft 52 F",
  `
  05:10 profile 0 ft 61 F, 30 ft 52 F, 30.5 ft 45 F, 60 ft 44 F
                                       ^^^^^^^^^^^^ temp-implausible 52 F and 45 F within 0.5 ft at 31 ft: water doesn't change so fast, and neither is used.
  `,
  // A thermocline as sharp as they get.
  "05:10 profile 0 ft 61 F, 30 ft 58 F, 32 ft 50 F, 60 ft 44 F",
  `
  05:10 profile 0 ft 61 F, 50 ft 52 F, 50 ft 48 F
                                       ^^^^^^^^^^ temp-implausible This profile has 50 ft twice, with 52 F and 48 F: neither is used.
  `,
])("%s", (source) => {
  checkDay(source);
});

test("a jump is as quick as the boat's book says", () => {
  const boat = "threshold temperature-jump-time 5 min";
  checkDay("05:44 surface temp 61 F\n05:50 surface temp 50 F", { boat });
});

test("salt water is colder than ice of fresh", () => {
  checkDay("05:44 surface temp 29 F", { boat: "water salt" });
});

describe("the other scale", () => {
  test.each([
    ["05:44 surface temp 64 C", "05:44 surface temp 64 F"],
    ["05:44 surface temp 18.0 F", "05:44 surface temp 18.0 C"],
  ])("%j → %j", (before, after) => {
    checkFixOf("temp-implausible", "opener", before, after);
  });
  test("is the one to take where the boat reads in it", () => {
    expect(fixTitles("temp-implausible", "opener", "05:44 surface temp 64 C")).toEqual(["Write 64 F*"]);
    expect(fixTitles("temp-implausible", "opener", "05:44 surface temp 18 F")).toEqual(["Write 18 C"]);
    expect(fixTitles("temp-implausible", "opener", "05:44 surface temp 200 F")).toEqual([]);
  });
});
