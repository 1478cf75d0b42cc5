/** Where the boat went: legs, distance run, speed made good; positions at odd places and in odd order. */
import { describe, expect, test } from "vitest";
import { placeNear, trackOf } from "../../server/analysis/track.ts";
import { readTrip } from "../model/read-trip.ts";

const trackIn = (lines: string) => trackOf(readTrip(`${lines}\n`));

const TWO_LEGS = `05:00 gps speed 2.0 mph course 000 at 43 00.0N 086 00.0W
06:00 gps speed 2.0 mph course 002 at 43 02.0N 086 00.0W
06:10 turn right to 180
06:20 gps speed 2.2 mph course 181 at 43 02.0N 086 00.1W
07:20 gps speed 2.2 mph course 179 at 43 00.0N 086 00.1W`;

describe("legs", () => {
  test("are split by turns, each with its mean course", () => {
    const { legs } = trackIn(TWO_LEGS);
    expect(legs.map((leg) => Math.round(leg.course?.deg ?? -1))).toEqual([1, 180]);
  });
  test("speed and direction made good, from GeodSolve: two minutes of latitude at 43 N are 3703.2 m", () => {
    const [first] = trackIn(TWO_LEGS).legs;
    expect(first?.madeGoodM).toBeCloseTo(3703.2, 0);
    expect(first?.madeGoodMS).toBeCloseTo(3703.2 / 3600, 3);
    expect(first?.madeGoodDeg).toBeCloseTo(0, 3);
  });
  test("are split by a course that shows a turn nobody wrote", () => {
    expect(trackIn(TWO_LEGS.replace("06:10 turn right to 180\n", "")).legs).toHaveLength(2);
  });
  test("none where neither course nor position was written", () => {
    expect(trackIn("05:00 set P1 out 60 ft\n06:00 pull P1").legs).toEqual([]);
  });
});

describe("distance run", () => {
  test("along all positions, in the order of time", () => {
    const shuffled = TWO_LEGS.split("\n").reverse().join("\n");
    expect(trackIn(TWO_LEGS).distanceM).toBeCloseTo(2 * 3703.2 + 135.9, 0);
    expect(trackIn(shuffled).distanceM).toBeCloseTo(trackIn(TWO_LEGS).distanceM ?? 0, 6);
  });
  test("none from one position; nothing from the same one twice", () => {
    const one = "05:00 gps at 43 00.0N 086 00.0W";
    expect(trackIn(one).distanceM).toBeUndefined();
    expect(trackIn(`${one}\n${one}`).distanceM).toBe(0);
    expect(trackIn(`${one}\n${one}`).legs[0]?.madeGoodMS).toBeUndefined();
  });
  test("across the antimeridian", () => {
    const way = "05:00 gps at 45 00.0N 179 59.4E\n06:00 gps at 45 00.0N 179 59.4W";
    expect(trackIn(way).distanceM).toBeCloseTo(1576.9, 0);
  });
});

test("the place nearest to a minute", () => {
  const trip = readTrip(`${TWO_LEGS}\n`);
  const { fixes } = trackOf(trip);
  expect(placeNear(trip, fixes, fixes[1]?.timeMs ?? 0)?.latitudeDeg).toBeCloseTo(43 + 2 / 60, 9);
  expect(placeNear(trip, [], 0)).toBeUndefined();
});
