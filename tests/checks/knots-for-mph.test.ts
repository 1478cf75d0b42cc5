import { describe, expect, test } from "vitest";
import { checkFixOf, checkTrolling, fixTitles } from "./check-day.ts";

const STEADY = `05:40 surface speed 2.0 mph
05:40 gps speed 2.3 mph course 310
06:40 surface speed 2.2 mph
06:40 gps speed 2.5 mph course 130
07:40 surface speed 2.1 mph
07:40 gps speed 2.4 mph course 310
`;

test("a steady ratio on every course", () => {
  checkTrolling(`
  05:40 surface speed 2.0 mph
                ^^^^^^^^^^^^^ knots-for-mph All 3 times the speed on top is 1.15 times less than that over ground, on every course: is it in knots?
  05:40 gps speed 2.3 mph course 310
  06:40 surface speed 2.2 mph
  06:40 gps speed 2.5 mph course 130
  07:40 surface speed 2.1 mph
  07:40 gps speed 2.4 mph course 310
  `);
});

test.each([
  ["two pairs only", STEADY.split("\n").slice(0, 4).join("\n")],
  ["one course", STEADY.replaceAll(/course \d+/gu, "course 310")],
  ["a ratio that wanders", STEADY.replace("2.5 mph", "2.0 mph")],
  ["knots written", STEADY.replaceAll(/surface speed (\S+) mph/gu, "surface speed $1 kn")],
])("quiet: %s", (_, source) => {
  checkTrolling(source);
});

describe("its fix", () => {
  test("writes the unit on all lines", () => {
    expect(fixTitles("knots-for-mph", "trolling", STEADY)).toEqual(["Write all 3 in knots"]);
    checkFixOf(
      "knots-for-mph",
      "trolling",
      STEADY,
      STEADY.replaceAll(/surface speed (\S+) mph/gu, "surface speed $1 kn"),
    );
  });
  test("of a GPS that shows knots", () => {
    const swapped = `05:40 surface speed 2.3 mph
05:40 gps speed 2.0 mph course 310
06:40 surface speed 2.5 mph
06:40 gps speed 2.2 mph course 130
07:40 surface speed 2.4 mph
07:40 gps speed 2.1 mph course 310
`;
    checkFixOf(
      "knots-for-mph",
      "trolling",
      swapped,
      swapped.replaceAll(/gps speed (\S+) mph/gu, "gps speed $1 kn"),
    );
  });
});
