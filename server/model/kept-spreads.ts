/** Spreads that say the very same are the very same object, so that what leans on one can be kept with it. */
import type { FactLine } from "../../grammar/journal.ts";
import type { CableSpread } from "./timeline.ts";
import type { TripEvent } from "./trip.ts";

/** The last spread where a new one says the very same. */
export function lastOrNew(last: CableSpread | undefined, fresh: CableSpread): CableSpread {
  return last !== undefined && isSameSpread(last, fresh) ? last : fresh;
}

/** Spreads by the lines that they hold after. */
class SpreadsByLine {
  readonly #kept = new WeakMap<FactLine, CableSpread>();

  /** The spread kept with a line where it is no other; else this one, which is kept from now on. */
  sameOrNew({ line }: TripEvent, spread: CableSpread): CableSpread {
    const known = this.#kept.get(line);
    if (known !== undefined && isSameSpread(known, spread)) return known;
    this.#kept.set(line, spread);
    return spread;
  }
}

/** Of the rods on one cable. */
export const spreadKept = new SpreadsByLine();
/** Of all that is in the water. */
export const wetKept = new SpreadsByLine();

/** The same rods in the same order, with the very same settings. */
function isSameSpread(one: CableSpread, other: CableSpread): boolean {
  if (one.size !== other.size) return false;
  const others = other.entries();
  for (const [name, { setting, isClipped }] of one) {
    const [otherName, rod] = others.next().value ?? [];
    if (name !== otherName || setting !== rod?.setting || isClipped !== rod.isClipped) return false;
  }
  return true;
}
