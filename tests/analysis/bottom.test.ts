import { expect, test } from "vitest";
import { bottomAt, bottomNear } from "../../server/analysis/bottom.ts";
import { resolveInstant } from "../../server/model/local-time.ts";
import { readTrip } from "../model/read-trip.ts";

const HOUR_MS = 3_600_000;
const at = (clock: string): number => resolveInstant("2031-06-21", clock, null, "America/Detroit").utcMs;
const feet = (m: number | undefined): number | null => (m === undefined ? null : Math.round(m / 0.3048));

const DAY =
  "05:00 sonar bottom 100 ft\n05:30 sonar bottom 120 ft\n05:40 run\n05:55 touch P1 out 70 ft bottom 60 ft";

test.each([
  ["04:59", null],
  ["05:00", 100],
  ["05:29", 100],
  ["05:30", 120],
  ["05:40", null],
  ["05:55", 60],
  ["06:55", 60],
  ["06:56", null],
])("the water under the boat at %s", (clock, expected) => {
  expect(feet(bottomAt(readTrip(DAY), at(clock), HOUR_MS)?.waterM)).toBe(expected);
});

test.each([
  ["04:55", 100],
  ["05:26", 120],
  ["05:20", null],
])("the reading next to %s", (clock, expected) => {
  expect(feet(bottomNear(readTrip(DAY), at(clock))?.waterM)).toBe(expected);
});

test("the sounder's face is below the water line", () => {
  const book = 'boat "Bright Penny"\n  sounder 2 ft\n';
  const reading = bottomAt(
    readTrip("05:00 sonar bottom 100 ft", "2031-06-21", book),
    Date.UTC(2031, 5, 21, 5),
    HOUR_MS,
  );
  expect([feet(reading?.shownM), feet(reading?.waterM)]).toEqual([100, 102]);
});
