/**
 * The longest part of a list that never falls, by patience sorting (Fredman 1975, Discrete Mathematics 11:29-35).
 * Returns the places of its values; where there is a choice the earlier value is kept.
 */
export function longestRising(values: readonly number[]): Set<number> {
  /** `piles[k]`: where the part of k + 1 values begins that leaves the most room before it. Filled from the end. */
  const piles: number[] = [];
  const after: (number | undefined)[] = [];
  for (let i = values.length - 1; i >= 0; i--) {
    const value = values[i] ?? Number.NaN;
    const pile = firstBelow(piles, values, value);
    after[i] = piles[pile - 1];
    piles[pile] = i;
  }
  const kept = new Set<number>();
  for (let at = piles.at(-1); at !== undefined; at = after[at]) kept.add(at);
  return kept;
}

/** The first pile whose value is below `value`; the piles' values fall. */
function firstBelow(piles: readonly number[], values: readonly number[], value: number): number {
  let low = 0;
  let high = piles.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((values[piles[middle] ?? 0] ?? Number.NaN) >= value) low = middle + 1;
    else high = middle;
  }
  return low;
}
