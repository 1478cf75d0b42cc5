/**
 * The inverse of a small square matrix by rows, or `undefined` where it has none: Gauss and Jordan's elimination with the
 * largest pivot of each column. Source: any text on numerical linear algebra, e.g. Golub & Van Loan.
 */
export function inverted(matrix: Float64Array, n: number): Float64Array | undefined {
  const left = matrix.slice();
  const right = new Float64Array(n * n);
  for (let i = 0; i < n; i++) right[i * n + i] = 1;
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let row = column + 1; row < n; row++)
      if (Math.abs(at(left, row * n + column)) > Math.abs(at(left, pivot * n + column))) pivot = row;
    const size = at(left, pivot * n + column);
    if (!(Math.abs(size) > LEAST_PIVOT)) return undefined;
    for (const rows of [left, right]) {
      swapRows(rows, pivot, column, n);
      for (let j = 0; j < n; j++) rows[column * n + j] = at(rows, column * n + j) / size;
    }
    for (let row = 0; row < n; row++) {
      const times = row === column ? 0 : at(left, row * n + column);
      if (times === 0) continue;
      for (const rows of [left, right])
        for (let j = 0; j < n; j++)
          rows[row * n + j] = at(rows, row * n + j) - times * at(rows, column * n + j);
    }
  }
  return right;
}

/** Of matrices with entries around one: below this the answer would be noise. */
const LEAST_PIVOT = 1e-6;

function swapRows(rows: Float64Array, one: number, other: number, n: number): void {
  if (one === other) return;
  for (let j = 0; j < n; j++) {
    const kept = at(rows, one * n + j);
    rows[one * n + j] = at(rows, other * n + j);
    rows[other * n + j] = kept;
  }
}

function at(values: Float64Array, index: number): number {
  return values[index] ?? Number.NaN;
}
