import { describe, expect, test } from "vitest";
import { resolveInstant } from "../../server/model/local-time.ts";
import {
  type ReadingAges,
  speedReadings,
  temperatureReadings,
  valueAt,
} from "../../server/model/readings.ts";
import { readTrip } from "./read-trip.ts";

const MPH = 0.44704;
const at = (clock: string): number => resolveInstant("2031-06-21", clock, null, "America/Detroit").utcMs;

/** What one instrument says at a minute: `2.4 between 15`, in mph, with the age in minutes; null for nothing. */
function speedAt(lines: string, clock: string, ages?: ReadingAges): string | null {
  const found = valueAt(speedReadings(readTrip(lines)), at(clock), ages);
  if (found === undefined) return null;
  return `${Number((found.value / MPH).toFixed(3))} ${found.how} ${found.ageMs / 60_000}`;
}

const TWO = "06:00 surface speed 2 mph\n06:40 surface speed 3 mph";

describe("a reading ages", () => {
  test.each<[string, string, string | null]>([
    // Read at that minute.
    [TWO, "06:00", "2 read 0"],
    [TWO, "06:40", "3 read 0"],
    // Between two, by the share of the time.
    [TWO, "06:10", "2.25 between 10"],
    [TWO, "06:30", "2.75 between 10"],
    // Held after the last, up to two hours.
    [TWO, "07:00", "3 held 20"],
    [TWO, "08:40", "3 held 120"],
    [TWO, "08:41", null],
    // The first serves up to an hour before it.
    [TWO, "05:30", "2 ahead 30"],
    [TWO, "05:00", "2 ahead 60"],
    [TWO, "04:59", null],
    // Too far apart to say what was between: held, then nothing, then the next one ahead.
    ["06:00 gps speed 2 mph\n07:00 gps speed 3 mph", "06:30", "2.5 between 30"],
    ["06:00 gps speed 2 mph\n07:01 gps speed 3 mph", "06:30", "2 held 30"],
    ["06:00 gps speed 2 mph\n10:00 gps speed 3 mph", "08:30", null],
    ["06:00 gps speed 2 mph\n10:00 gps speed 3 mph", "09:30", "3 ahead 30"],
    // Without a clock it is no reading of any minute.
    ["gps speed 2 mph", "06:00", null],
    ["06:00 gps course 310", "06:00", null],
    ["06:00 surface speed 2", "06:00", "2 read 0"],
  ])("%j at %s", (lines, clock, expected) => {
    expect(speedAt(lines, clock)).toBe(expected);
  });

  test("by the ages asked for", () => {
    const ages = { staleAfterMs: 5 * 60_000, unusedAfterMs: 20 * 60_000, aheadMs: 0 };
    expect(speedAt(TWO, "06:10", ages)).toBe("2 held 10");
    expect(speedAt(TWO, "06:21", ages)).toBeNull();
    expect(speedAt(TWO, "05:59", ages)).toBeNull();
  });
});

test("readings know their instrument, and stand in the order of time", () => {
  const trip = readTrip(
    "06:40 probe P1 temp 45 F speed 2.4 mph\n06:30 surface temp 61 F\n06:20 gps speed 2 mph",
  );
  expect(speedReadings(trip).map(({ source, rig }) => [source, rig])).toEqual([
    ["gps", undefined],
    ["probe", "P1"],
  ]);
  expect(temperatureReadings(trip).map(({ source }) => source)).toEqual(["surface", "probe"]);
});
