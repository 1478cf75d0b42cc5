/** The curve through a profile: SciPy's answers, no overshoot, nothing outside. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { shapeCurve } from "../../server/physics/shape-preserving.ts";

/** SciPy 1.17.1, scipy.interpolate.PchipInterpolator. */
const PROFILE = shapeCurve([0, 30, 50, 70, 100], [61, 58, 52, 47, 43]);
const UNEVEN = shapeCurve([0, 1, 2.5, 4, 7], [3, 3, 1, 2, 8]);

describe("agrees with an independent routine", () => {
  test.each([
    [10, 60.56704980842912],
    [40, 55.293887147335425],
    [60, 49.26196880043034],
    [65, 48.02482853684777],
    [85, 44.57181952662722],
    [99, 43.06649859741398],
  ])("a profile at %d", (x, y) => {
    expect(PROFILE?.at(x)).toBeCloseTo(y, 11);
  });
  test.each([
    [0.5, 3],
    [1.7, 2.099851851851852],
    [3.1, 1.215578947368421],
    [5, 3.334632878492527],
    [6.5, 6.61825860948668],
  ])("uneven steps at %d", (x, y) => {
    expect(UNEVEN?.at(x)).toBeCloseTo(y, 11);
  });
  test.each([
    [0, 0],
    [40, -0.3430250783699059],
    [60, -0.26243948359332975],
    [100, -0.06333333333333334],
  ])("its slope at %d", (x, slope) => {
    expect(PROFILE?.slopeAt(x)).toBeCloseTo(slope, 11);
  });
});

test("has nothing outside of its points, and two points make a straight line", () => {
  expect(PROFILE?.at(-0.1)).toBeUndefined();
  expect(PROFILE?.at(100.1)).toBeUndefined();
  expect(shapeCurve([0, 10], [4, 8])?.at(2.5)).toBeCloseTo(5, 12);
});

test.each([
  [[], []],
  [[1], [2]],
  [
    [0, 1, 1],
    [1, 2, 3],
  ],
  [
    [0, 2, 1],
    [1, 2, 3],
  ],
  [
    [0, 1],
    [1, Number.NaN],
  ],
])("is none for %j, %j", (xs, ys) => {
  expect(shapeCurve(xs, ys)).toBeUndefined();
});

test("never leaves the span of the two points beside it", () => {
  const steps = fc.array(
    fc.tuple(fc.double({ min: 0.01, max: 50, noNaN: true }), fc.double({ min: -5, max: 80, noNaN: true })),
    {
      minLength: 2,
      maxLength: 12,
    },
  );
  fc.assert(
    fc.property(steps, fc.double({ min: 0, max: 1, noNaN: true }), (pairs, share) => {
      let x = 0;
      const xs = pairs.map(([step]) => (x += step));
      const ys = pairs.map(([, y]) => y);
      const at = (xs[0] ?? 0) + share * (x - (xs[0] ?? 0));
      const i = Math.max(
        1,
        xs.findIndex((one) => one >= at),
      );
      const [low, high] = [Math.min(ys[i - 1] ?? 0, ys[i] ?? 0), Math.max(ys[i - 1] ?? 0, ys[i] ?? 0)];
      const value = shapeCurve(xs, ys)?.at(Math.min(at, x)) ?? Number.NaN;
      expect(value).toBeGreaterThanOrEqual(low - 1e-9);
      expect(value).toBeLessThanOrEqual(high + 1e-9);
    }),
    { seed: 20310621, numRuns: 300 },
  );
});
