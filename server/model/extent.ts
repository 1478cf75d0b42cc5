/** The lowest and highest of some numbers, and how many there are. */
export interface Extent {
  readonly low: number;
  readonly high: number;
  readonly count: number;
}

/** The extent of a list of any length; null for an empty one. */
export function extentOf(values: readonly number[]): Extent | null {
  if (values.length === 0) return null;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return { low, high, count: values.length };
}
