/** Distances on the WGS 84 ellipsoid against GeographicLib, Geoscience Australia, and Karney's test cases. */
import { describe, expect, test } from "vitest";
import { wayBetween } from "../../server/analysis/geodesic.ts";

const at = (latitudeDeg: number, longitudeDeg: number) => ({ latitudeDeg, longitudeDeg });

describe("published distances", () => {
  test.each([
    {
      name: "JFK to LHR, GeodSolve",
      from: at(40.6, -73.8),
      to: at(51.6, -0.5),
      m: 5551759.400319,
      deg: 51.198882846,
    },
    {
      name: "JFK to Singapore, GeodSolve manual",
      from: at(40 + 38 / 60 + 23 / 3600, -(73 + 46 / 60 + 44 / 3600)),
      to: at(1 + 21 / 60 + 33 / 3600, 103 + 59 / 60 + 22 / 3600),
      m: 15347627.6596,
      deg: 3.308305,
    },
    {
      name: "Flinders Peak to Buninyong, Geoscience Australia",
      from: at(-(37 + 57 / 60 + 3.7203 / 3600), 144 + 25 / 60 + 29.5244 / 3600),
      to: at(-(37 + 39 / 60 + 10.1561 / 3600), 143 + 55 / 60 + 35.3839 / 3600),
      m: 54972.271,
      deg: 306.868158,
    },
    {
      name: "Wellington to Salamanca, nearly antipodal",
      from: at(-41.32, 174.81),
      to: at(40.96, -5.5),
      m: 19959679.267,
      deg: 161.067669986,
    },
    { name: "a degree of latitude at 43", from: at(43, -86), to: at(44, -86), m: 111102.485674, deg: 0 },
    { name: "a degree of longitude at 43", from: at(43, -86), to: at(43, -85), m: 81540.486372, deg: 89.659 },
    {
      name: "a minute of latitude at 43.5 is no nautical mile",
      from: at(43.5 - 1 / 120, -86),
      to: at(43.5 + 1 / 120, -86),
      m: 1851.708,
      deg: 0,
    },
    {
      name: "Karney's test case 1",
      from: at(35.60777, -139.44815),
      to: at(-11.17491, -69.95921),
      m: 8935244.56048183,
      deg: 111.09874842956,
    },
    {
      name: "Karney's test case 2",
      from: at(55.52454, 106.05087),
      to: at(77.03196, 197.18234),
      m: 4105086.171392441,
      deg: 22.0200598809828,
    },
  ])("$name", ({ from, to, m, deg }) => {
    const way = wayBetween(from, to);
    expect(Math.abs((way?.distanceM ?? 0) - m)).toBeLessThan(0.002);
    expect(way?.bearingDeg).toBeCloseTo(deg, 2);
  });
});

describe("odd places", () => {
  test("across the antimeridian it is the short way", () => {
    expect(wayBetween(at(45, 179.99), at(45, -179.99))?.distanceM).toBeCloseTo(1576.94, 1);
  });
  test("at the pole every longitude is one place", () => {
    expect(wayBetween(at(90, 0), at(90, 120))?.distanceM).toBeCloseTo(0, 6);
    expect(wayBetween(at(89.9, 0), at(89.9, 180))?.distanceM).toBeGreaterThan(22_000);
  });
  test("the same place is no way", () => {
    expect(wayBetween(at(44, -86), at(44, -86))?.distanceM).toBe(0);
  });
  test("no place has no way", () => {
    expect(wayBetween(at(91, 0), at(44, -86))).toBeUndefined();
    expect(wayBetween(at(44, Number.NaN), at(44, -86))).toBeUndefined();
  });
});
