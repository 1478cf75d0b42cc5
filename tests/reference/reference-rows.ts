import { expect, test } from "vitest";

/** One published or independently computed value, with how close we must come and where it is from. */
export interface ReferenceRow<Input> {
  readonly name: string;
  readonly input: Input;
  readonly expected: number;
  /** In the unit of the expected value. */
  readonly tolerance: number;
  /**
   * Paper, table or script. "seen" was read in a stored copy, "run" computed with the tool named, "memory" is
   * recalled and not confirmed, "arithmetic" follows from the line itself.
   */
  readonly source: string;
}

/** A value that must lie in a band rather than on a point: a rule of thumb, or curves that differ among themselves. */
export interface BandRow<Input> {
  readonly name: string;
  readonly input: Input;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

/** Throws unless `actual` is a number within the row's tolerance. */
export function expectRow<Input>(row: ReferenceRow<Input>, actual: number): void {
  const miss = Math.abs(actual - row.expected);
  if (!(miss <= row.tolerance))
    throw new Error(
      `${row.name}: got ${actual}, expected ${row.expected} ± ${row.tolerance} (off by ${miss}; ${row.source})`,
    );
}

/** Throws unless `actual` is a number inside the row's band. */
export function expectBand<Input>(row: BandRow<Input>, actual: number): void {
  if (!(actual >= row.low && actual <= row.high))
    throw new Error(`${row.name}: got ${actual}, expected ${row.low} to ${row.high} (${row.source})`);
}

/** One test for each row. */
export function checkRows<Input>(
  rows: readonly ReferenceRow<Input>[],
  compute: (input: Input) => number,
): void {
  test.each(rows)("$name ($source)", (row) => {
    expectRow(row, compute(row.input));
    expect(row.source).not.toBe("");
  });
}

/** One test for each row. */
export function checkBands<Input>(rows: readonly BandRow<Input>[], compute: (input: Input) => number): void {
  test.each(rows)("$name ($source)", (row) => {
    expectBand(row, compute(row.input));
    expect(row.source).not.toBe("");
  });
}
