import { expect, test } from "vitest";
import { closestApproach } from "../../server/physics/closest-approach.ts";
import { between, type Curve, type CurvePoint, distanceM } from "../../server/physics/curve.ts";

const at = (behindM: number, acrossM: number, depthM: number): CurvePoint => ({ behindM, acrossM, depthM });

/** A fixed sequence of numbers from 0 to 1. */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return state / 2_147_483_648;
  };
}

test.each<[string, Curve, Curve, number]>([
  ["two points", [at(0, 0, 0)], [at(3, 4, 12)], 13],
  ["a point beside a line", [at(5, 2, 0)], [at(0, 0, 0), at(10, 0, 0)], 2],
  ["a point beyond a line's end", [at(13, 4, 0)], [at(0, 0, 0), at(10, 0, 0)], 5],
  ["crossed at a height", [at(-1, 0, 0), at(1, 0, 0)], [at(0, -1, 0.7), at(0, 1, 0.7)], 0.7],
  ["crossed in one place", [at(-1, -1, 0), at(1, 1, 0)], [at(-1, 1, 0), at(1, -1, 0)], 0],
  ["side by side", [at(0, 0, 0), at(4, 0, 0)], [at(1, 1, 0), at(9, 1, 0)], 1],
  ["one behind the other", [at(0, 0, 0), at(4, 0, 0)], [at(7, 0, 0), at(9, 0, 0)], 3],
  ["the same line", [at(0, 0, 0), at(4, 0, 0)], [at(0, 0, 0), at(4, 0, 0)], 0],
  ["a line without length", [at(2, 0, 3), at(2, 0, 3)], [at(0, 0, 0), at(4, 0, 0)], 3],
])("%s", (_, one, other, expected) => {
  expect(closestApproach(one, other)?.distanceM).toBeCloseTo(expected, 12);
  expect(closestApproach(other, one)?.distanceM).toBeCloseTo(expected, 12);
});

test("a curve without points, or all of it too far away, has no answer", () => {
  expect(closestApproach([], [at(0, 0, 0)])).toBeUndefined();
  expect(closestApproach([at(0, 0, 0)], [at(0, 0, 2)], 1.9)).toBeUndefined();
  expect(closestApproach([at(0, 0, 0)], [at(0, 0, 2)], 2.1)?.distanceM).toBe(2);
});

test("agrees with every pair of many points", () => {
  const next = numbers(7);
  const curve = (): Curve =>
    Array.from({ length: 2 + Math.floor(4 * next()) }, () => at(10 * next(), 10 * next(), 10 * next()));
  const fine = (line: Curve): CurvePoint[] =>
    line.slice(1).flatMap((to, i) => {
      const from = line[i] ?? to;
      return Array.from({ length: 101 }, (_, k) => between(from, to, k / 100));
    });
  for (let round = 0; round < 60; round++) {
    const [one, other] = [curve(), curve()];
    const points = fine(other);
    const brute = Math.min(...fine(one).map((a) => Math.min(...points.map((b) => distanceM(a, b)))));
    const found = closestApproach(one, other);
    expect(found?.distanceM).toBeLessThanOrEqual(brute + 1e-9);
    expect(found?.distanceM).toBeGreaterThan(brute - 0.15);
    if (found !== undefined) expect(distanceM(found.one, found.other)).toBeCloseTo(found.distanceM, 9);
    expect(closestApproach(one, other, brute + 1e-6)?.distanceM).toBe(found?.distanceM);
  }
});
