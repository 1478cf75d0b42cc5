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
  ])("$name", ({ from, to, m, deg }) => {
    const way = wayBetween(from, to);
    expect(Math.abs((way?.distanceM ?? 0) - m)).toBeLessThan(0.002);
    expect(way?.bearingDeg).toBeCloseTo(deg, 2);
  });
});

/**
 * Cases of geographiclib's own test (geodesictest.js, commit 2a6853d9; seen), with its tolerances: 1e-8 m, and 1e-13
 * degrees for azimuths, which a bearing of 0 to 360 holds to 6e-14. The way back starts by the last azimuth turned round.
 */
describe("Karney's test cases, there and back", () => {
  test.each([
    {
      from: at(35.60777, -139.44815),
      to: at(-11.17491, -69.95921),
      m: 8935244.56048183,
      azimuths: [111.09874842956033, 129.28927088970877] as const,
    },
    {
      from: at(55.52454, 106.05087),
      to: at(77.03196, 197.18234),
      m: 4105086.171392441,
      azimuths: [22.0200598809828, 109.11204111067151] as const,
    },
    {
      from: at(-21.97856, 142.59065),
      to: at(41.84138, 98.56635),
      m: 8394328.894657671,
      azimuths: [-32.44456876433189, -41.84359951440466] as const,
    },
    {
      from: at(-66.99028, 112.2363),
      to: at(-12.70631, 285.90344),
      m: 11150344.231208025,
      azimuths: [173.73491240878403, 2.512956620913668] as const,
    },
  ])("$m m", ({ from, to, m, azimuths: [first, last] }) => {
    const there = wayBetween(from, to);
    const back = wayBetween(to, from);
    for (const way of [there, back]) expect(Math.abs((way?.distanceM ?? 0) - m)).toBeLessThan(1e-8);
    expect(offDeg(there?.bearingDeg, first)).toBeLessThan(1e-13 + 6e-14);
    expect(offDeg(back?.bearingDeg, last + 180)).toBeLessThan(1e-13 + 6e-14);
  });
});

describe("azimuths at the far end, from the way back", () => {
  test.each([
    { name: "JFK to LHR, GeodSolve; run", from: at(40.6, -73.8), to: at(51.6, -0.5), last: 107.821776736 },
    {
      name: "Wellington to Salamanca, GeographicLib's documentation; run, places from memory",
      from: at(-41.32, 174.81),
      to: at(40.96, -5.5),
      last: 18.825195123,
    },
    {
      name: "JFK, 5500 km by 51 degrees, GeographicLib's direct problem; run",
      from: at(40.6, -73.8),
      to: at(51.884564506, -1.141172861),
      last: 107.189397163,
    },
  ])("$name", ({ from, to, last }) => {
    expect(offDeg(wayBetween(to, from)?.bearingDeg, last + 180)).toBeLessThan(1e-8);
  });

  test("Buninyong back to Flinders Peak, 127 10 25.07 (Geoscience Australia, seen)", () => {
    const back = wayBetween(
      at(-(37 + 39 / 60 + 10.1561 / 3600), 143 + 55 / 60 + 35.3839 / 3600),
      at(-(37 + 57 / 60 + 3.7203 / 3600), 144 + 25 / 60 + 29.5244 / 3600),
    );
    expect(offDeg(back?.bearingDeg, 127 + 10 / 60 + 25.07 / 3600)).toBeLessThan(0.005 / 3600);
  });

  test("JFK, 5500 km by 51 degrees, comes out where the direct problem's place is (run)", () => {
    const way = wayBetween(at(40.6, -73.8), at(51.884564506, -1.141172861));
    expect(Math.abs((way?.distanceM ?? 0) - 5_500_000)).toBeLessThan(1e-4);
    expect(offDeg(way?.bearingDeg, 51)).toBeLessThan(1e-9);
  });
});

/** How far a bearing is from another, degrees, whichever way round it is written. */
function offDeg(bearingDeg: number | undefined, wantedDeg: number): number {
  const turnDeg = (bearingDeg ?? Number.NaN) - wantedDeg;
  return Math.abs(turnDeg - 360 * Math.round(turnDeg / 360));
}

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
