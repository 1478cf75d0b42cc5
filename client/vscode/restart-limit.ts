/** How often a server that ends by itself is started again. */

/** Starts within the time below; one more end, and it isn't started again by itself. */
const MOST_RESTARTS = 4;
/** How long an end counts, ms. */
export const COUNTED_MS = 3 * 60 * 1000;

/** Counts a server's ends, so that one that can't live isn't started for ever. */
export class RestartLimit {
  #ends: number[] = [];

  /** Notes an end at a time in ms; true where the server may be started once more. A refusal begins the count anew. */
  mayRestart(nowMs: number): boolean {
    this.#ends = [...this.#ends.filter((end) => nowMs - end < COUNTED_MS), nowMs];
    if (this.#ends.length <= MOST_RESTARTS) return true;
    this.#ends = [];
    return false;
  }
}
