/** Where the boat went: legs, distance run, speed made good; positions at odd places and in odd order. */
import { describe, expect, test } from "vitest";
import { placeNear } from "../../server/analysis/positions.ts";
import { trackOf } from "../../server/analysis/track.ts";
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
  test("are split by the way from position to position where no course was written", () => {
    const bare = TWO_LEGS.replaceAll(/ course \d+/gu, "").replace("06:10 turn right to 180\n", "");
    const { legs } = trackIn(bare);
    // The third position is too near the second to tell a turn; with it the first leg is 3703 m north, 136 m west.
    expect(legs.map((leg) => Math.round(leg.madeGoodDeg ?? -1))).toEqual([358, 180]);
    expect(legs[1]?.madeGoodM).toBeGreaterThan(3700);
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
  test("a position across the lake is left out, and what leads to it adds nothing", () => {
    const lines = TWO_LEGS.split("\n");
    const stray = [...lines.slice(0, 1), "05:30 gps at 43 01.0N 084 00.0W", ...lines.slice(1)].join("\n");
    expect(trackIn(stray).distanceM).toBeCloseTo(trackIn(TWO_LEGS).distanceM ?? 0, 6);
    expect(trackIn(stray).legs[0]?.madeGoodM).toBeCloseTo(3703.2, 0);
    const last = "05:00 gps at 43 00.0N 086 00.0W\n05:10 gps at 43 00.0N 081 00.0W";
    expect(trackIn(last).distanceM).toBe(0);
    expect(trackIn(last).legs[0]?.madeGoodM).toBeUndefined();
  });
  test("over the pole", () => {
    // Six minutes of latitude on each side, from GeodSolve's degree of 111.69 km there.
    const way = "05:00 gps at 89 54.0N 000 00.0E\n08:00 gps at 89 54.0N 180 00.0E";
    expect(trackIn(way).distanceM).toBeCloseTo(22_338.8, 0);
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
