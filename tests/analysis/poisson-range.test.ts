import { describe, expect, test } from "vitest";
import { poissonRange } from "../../server/analysis/poisson-range.ts";

/** A row of limits, with where it was printed. */
interface Row {
  readonly n: number;
  readonly coverage: number;
  readonly low: number;
  readonly high: number;
  readonly tolerance: number;
  readonly source: string;
}

const R_TEST = "R 4, poisson.test (exact, Garwood 1936, Biometrika 28:437-442), six decimals";
const exact = (n: number, low: number, high: number): Row => ({
  n,
  coverage: 0.95,
  low,
  high,
  tolerance: 6e-7,
  source: R_TEST,
});

const ROWS: readonly Row[] = [
  exact(0, 0, 3.688879),
  exact(1, 0.025318, 5.571643),
  exact(2, 0.242209, 7.224688),
  exact(3, 0.618672, 8.767273),
  exact(4, 1.089865, 10.241589),
  exact(5, 1.623486, 11.668332),
  exact(6, 2.201894, 13.059474),
  exact(7, 2.814363, 14.422675),
  exact(8, 3.453832, 15.763189),
  exact(9, 4.115373, 17.084803),
  exact(10, 4.795389, 18.390356),
  exact(15, 8.395386, 24.740219),
  exact(20, 12.21652, 30.888378),
  {
    n: 4,
    coverage: 0.95,
    low: 1.089865,
    high: 10.24153,
    tolerance: 6e-5,
    source: "R package survival, manual of cipoisson",
  },
  {
    n: 42,
    coverage: 0.95,
    low: 30.26991,
    high: 56.7718,
    tolerance: 6e-6,
    source: "stats.stackexchange.com/questions/10926",
  },
  {
    n: 42,
    coverage: 0.9,
    low: 31.93813,
    high: 54.32395,
    tolerance: 6e-6,
    source: "stats.stackexchange.com/questions/10926",
  },
  {
    n: 137,
    coverage: 0.95,
    low: 4.753125 * 24.19893,
    high: 6.692709 * 24.19893,
    tolerance: 2e-5,
    source: "R 4, example of poisson.test: 137 in 24.19893, rate 4.753125 to 6.692709",
  },
];

describe("limits of a count's mean", () => {
  test.each(ROWS)("$n at $coverage ($source)", ({ n, coverage, low, high, tolerance }) => {
    const range = poissonRange(n, coverage);
    expect(Math.abs((range?.low ?? Number.NaN) - low)).toBeLessThanOrEqual(tolerance);
    expect(Math.abs((range?.high ?? Number.NaN) - high)).toBeLessThanOrEqual(tolerance);
  });

  test("none, in closed form: the mean whose chance of none is the tail", () => {
    expect(poissonRange(0, 0.8)?.high).toBeCloseTo(-Math.log(0.1), 9);
  });

  test("of many are near the normal's, to one count", () => {
    const range = poissonRange(100_000, 0.8);
    const spread = 1.2815515655446004 * Math.sqrt(100_000);
    expect(Math.abs((range?.low ?? Number.NaN) - (100_000 - spread))).toBeLessThan(1);
    expect(Math.abs((range?.high ?? Number.NaN) - (100_000 + spread))).toBeLessThan(2);
  });

  test.each([
    [-1, 0.8],
    [1.5, 0.8],
    [Number.NaN, 0.8],
    [1e6, 0.8],
    [3, 0],
    [3, 1],
    [3, Number.NaN],
  ])("no count %d at %d", (n, coverage) => {
    expect(poissonRange(n, coverage)).toBeUndefined();
  });
});
