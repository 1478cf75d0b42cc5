/** Small symmetric matrices by rows, for fits of a few parameters. */

/** A square matrix by rows; `n` rows of `n`. */
export type Matrix = readonly number[];

/**
 * The lower Cholesky factor of a positive definite matrix, or `undefined` where it is not that. Source: any text on
 * numerical linear algebra, e.g. Golub & Van Loan.
 */
export function cholesky(matrix: Matrix, n: number): number[] | undefined {
  const factor = new Array<number>(n * n).fill(0);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = entry(matrix, i * n + j);
      for (let k = 0; k < j; k++) sum -= entry(factor, i * n + k) * entry(factor, j * n + k);
      if (i !== j) factor[i * n + j] = sum / entry(factor, j * n + j);
      else if (sum > 0) factor[i * n + i] = Math.sqrt(sum);
      else return undefined;
    }
  }
  return factor;
}

/** The solution of `matrix x = right` from the matrix's Cholesky factor. */
export function solveFactored(factor: Matrix, right: readonly number[]): number[] {
  const n = right.length;
  const x = right.slice();
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i] = entry(x, i) - entry(factor, i * n + k) * entry(x, k);
    x[i] = entry(x, i) / entry(factor, i * n + i);
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] = entry(x, i) - entry(factor, k * n + i) * entry(x, k);
    x[i] = entry(x, i) / entry(factor, i * n + i);
  }
  return x;
}

/** The inverse of a positive definite matrix, or `undefined` where it is not that. */
export function inverse(matrix: Matrix, n: number): number[] | undefined {
  const factor = cholesky(matrix, n);
  if (factor === undefined) return undefined;
  const inverted = new Array<number>(n * n).fill(0);
  for (let j = 0; j < n; j++) {
    const unit = Array.from({ length: n }, (_, i) => (i === j ? 1 : 0));
    solveFactored(factor, unit).forEach((value, i) => {
      inverted[i * n + j] = value;
    });
  }
  return inverted;
}

/** The variance of a linear combination: `weights` on both sides of a covariance. */
export function varianceOf(covariance: Matrix, weights: readonly number[]): number {
  const n = weights.length;
  let sum = 0;
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) sum += entry(weights, i) * entry(covariance, i * n + j) * entry(weights, j);
  return sum;
}

function entry(values: readonly number[], index: number): number {
  return values[index] ?? Number.NaN;
}
