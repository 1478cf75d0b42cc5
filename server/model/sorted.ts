/** How many items at the start of a list sorted by `key` have a key of at most `limit`, by bisection. */
export function countUpTo<T>(sorted: readonly T[], limit: number, key: (item: T) => number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (key(sorted[middle] as T) <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
}
