/** A small seeded source of numbers, so that every run of the bench writes the same bytes. */
export interface Random {
  /** The next number, at least 0 and below 1. */
  next(): number;
  /** A number between two bounds, rounded to a count of decimals. */
  between(low: number, high: number, decimals?: number): number;
  /** One element of a list, which must not be empty. */
  pick<const T>(list: readonly T[]): T;
  /** Whether an event of the given probability happens. */
  chance(probability: number): boolean;
}

/** Makes a source from a seed (the mulberry32 generator). */
export function makeRandom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return {
    next,
    between: (low, high, decimals = 0) => roundTo(low + next() * (high - low), decimals),
    pick<T>(list: readonly T[]): T {
      const picked = list[Math.floor(next() * list.length)];
      if (picked === undefined) throw new Error("Nothing to pick from.");
      return picked;
    },
    chance: (probability) => next() < probability,
  };
}

/** Rounds to a count of decimals. */
export function roundTo(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
