/** Set and drift against published current triangles, and the fit of a current to speeds on several courses. */
import { describe, expect, test } from "vitest";
import {
  angleBetween,
  currentOf,
  directionOf,
  fitCurrent,
  type Look,
  minus,
  sdAlong,
  speedOf,
  type Velocity,
  velocityOf,
  widestSd,
} from "../../server/physics/current.ts";

const plus = (a: Velocity, b: Velocity): Velocity => ({
  northMS: a.northMS + b.northMS,
  eastMS: a.eastMS + b.eastMS,
});

/** Exact answers of the triangles; the plotted ones beside them are good to 5 degrees and 0.1 kn. */
describe("track from heading, speed and current", () => {
  test.each([
    { heading: 80, speed: 10, set: 140, drift: 2, track: 88.95, made: 11.14, source: "Pub. 9 (from memory)" },
    { heading: 82, speed: 8, set: 75, drift: 1, track: 81.22, made: 8.99, source: "examination wording" },
    { heading: 215, speed: 12, set: 0, drift: 2.3, track: 222.43, made: 10.2, source: "examination wording" },
    { heading: 0, speed: 9.5, set: 82, drift: 1.1, track: 6.44, made: 9.71, source: "examination wording" },
    { heading: 110, speed: 10, set: 350, drift: 2, track: 99.11, made: 9.17, source: "examination wording" },
  ])("$heading at $speed: $source", ({ heading, speed, set, drift, track, made }) => {
    const ground = plus(velocityOf(heading, speed), velocityOf(set, drift));
    expect(directionOf(ground)).toBeCloseTo(track, 1);
    expect(speedOf(ground)).toBeCloseTo(made, 1);
    const current = currentOf(ground, velocityOf(heading, speed));
    expect(directionOf(current)).toBeCloseTo(set % 360, 9);
    expect(speedOf(current)).toBeCloseTo(drift, 9);
  });
});

/** Course to steer and speed made good, chart-practice answer key (plotted by hand) with the exact values. */
describe("the current that a course made good tells", () => {
  test.each([
    { want: 90, speed: 5, set: 210, drift: 2, steer: 69.73, made: 3.69 },
    { want: 45, speed: 6.55, set: 135, drift: 2, steer: 27.22, made: 6.24 },
    { want: 235, speed: 6.2, set: 315, drift: 3.5, steer: 201.22, made: 5.76 },
    { want: 75, speed: 10, set: 30, drift: 2.5, steer: 85.18, made: 11.61 },
    { want: 95, speed: 12, set: 170, drift: 2.5, steer: 83.39, made: 12.4 },
    // Speed made good first, the speed to go through the water from it: Pub. 9 (from memory), and a sailors' forum.
    { want: 265, speed: 14.78, set: 185, drift: 3, steer: 276.53, made: 15 },
    { want: 270, speed: 10.44, set: 0, drift: 3, steer: 253.3, made: 10 },
  ])("$want wanted, set $set, drift $drift", ({ want, speed, set, drift, steer, made }) => {
    const current = currentOf(velocityOf(want, made), velocityOf(steer, speed));
    expect(angleBetween(directionOf(current), set)).toBeLessThan(0.3);
    expect(speedOf(current)).toBeCloseTo(drift, 1);
  });

  test("3-4-5: heading 090 at 3 kn, made good 143.13 at 5 kn, sets 180 at 4 kn", () => {
    const current = currentOf(velocityOf(143.130102, 5), velocityOf(90, 3));
    expect(directionOf(current)).toBeCloseTo(180, 6);
    expect(speedOf(current)).toBeCloseTo(4, 6);
  });
});

test("two miles south of where reckoning puts one in an hour: sets 180 at 2 kn (chart practice)", () => {
  const reckoned = velocityOf(37, 6);
  const fix = { northMS: reckoned.northMS - 2, eastMS: reckoned.eastMS };
  const current = currentOf(fix, reckoned);
  expect(directionOf(current)).toBeCloseTo(180, 9);
  expect(speedOf(current)).toBeCloseTo(2, 9);
});

const CURRENT = velocityOf(140, 0.3);
const look = (heading: number, speed = 1.1): Look => ({
  ground: plus(velocityOf(heading, speed), CURRENT),
  waterSpeedMS: speed,
  sdMS: 0.06,
});

describe("a current from several courses, the headings unknown", () => {
  test.each([[[0, 90]], [[310, 130, 40]], [[10, 100, 190, 280]]])("%j", (headings) => {
    const fitted = fitCurrent(headings.map((heading) => look(heading)));
    expect(fitted && directionOf(fitted)).toBeCloseTo(140, 6);
    expect(fitted && speedOf(fitted)).toBeCloseTo(0.3, 8);
  });

  test("its spread shrinks with looks, and is that of the speeds for two courses at right angles", () => {
    const still = { ...look(0), ground: velocityOf(0, 1.1) };
    const two = fitCurrent([still, { ...still, ground: velocityOf(90, 1.1) }]);
    expect(two && widestSd(two)).toBeCloseTo(0.06, 9);
    expect(two && sdAlong(two, 45)).toBeCloseTo(0.06, 9);
    const four = fitCurrent([0, 90, 180, 270].map((heading) => look(heading)));
    expect(four && widestSd(four)).toBeLessThan(0.045);
  });

  test.each([
    ["one look", [310]],
    ["one course", [310, 312, 305]],
    ["there and back", [310, 130]],
  ])("none from %s", (_, headings) => {
    expect(fitCurrent(headings.map((heading) => look(heading)))).toBeUndefined();
  });
});

test("angles across north", () => {
  expect(angleBetween(350, 10)).toBe(20);
  expect(angleBetween(10, 350)).toBe(20);
  expect(angleBetween(0, 180)).toBe(180);
  expect(minus(velocityOf(0, 1), velocityOf(0, 1)).northMS).toBe(0);
});
