/**
 * The range of a catch rate that would fit a count as well: exact limits of a Poisson mean (Garwood 1936,
 * Biometrika 28:437-442), found from the Poisson sum itself.
 */

/** Limits of the mean of a count. */
export interface PoissonRange {
  readonly low: number;
  readonly high: number;
}

/** P(X <= n) for a Poisson mean of `mean`; n a whole number, 0 or more. */
function cumulative(n: number, mean: number): number {
  let logTerm = -mean;
  let sum = Math.exp(logTerm);
  for (let k = 1; k <= n; k++) {
    logTerm += Math.log(mean / k);
    sum += Math.exp(logTerm);
  }
  return Math.min(1, sum);
}

/**
 * Exact two-sided limits for a count `n` (a whole number, 0 to 100,000) at `coverage` (0.8 for 80 %): each tail
 * holds half of what is left. Undefined for other input.
 */
export function poissonRange(n: number, coverage: number): PoissonRange | undefined {
  if (!Number.isInteger(n) || n < 0 || n > 1e5 || !(coverage > 0 && coverage < 1)) return undefined;
  const tail = (1 - coverage) / 2;
  const low = n === 0 ? 0 : solve((mean) => 1 - cumulative(n - 1, mean) - tail, n);
  return { low, high: solve((mean) => tail - cumulative(n, mean), n) };
}

/** The root of a function that grows with the mean, by bisection. */
function solve(grows: (mean: number) => number, n: number): number {
  let low = 0;
  let high = n + 10 * Math.sqrt(n + 1) + 20;
  for (let round = 0; round < 200 && high - low > 1e-12 * high; round++) {
    const middle = (low + high) / 2;
    if (grows(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
