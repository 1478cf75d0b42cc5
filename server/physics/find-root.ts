/** A function of one variable; `undefined` where it has no value. `isRough` asks for a quick, less exact one. */
export type Miss = (at: number, isRough: boolean) => number | undefined;

/** A zero of a function, and the function's slope there. */
export interface Root {
  readonly at: number;
  readonly slope: number;
}

/** Rounds after which a zero counts as not found; the usual number is four. */
const MOST_ROUNDS = 100;

/** Below this share of the scale two points are too near for a slope; farther apart where one value is rough. */
const NEAREST_SHARE = 1e-5;
const NEAREST_ROUGH_SHARE = 2e-3;

/** A miss larger than this share of the scale is worked out roughly. */
const ROUGH_SHARE = 1e-3;

/**
 * A zero of `miss` between `low`, where it is negative, and `high`, where it is positive, to within `within` of
 * its value: the secant from `start` with a first slope of 1, held inside the bracket by bisection. `scale` is the
 * size of the problem. The slope costs one more value where the search did not need it. Without `hasRough` all values
 * are exact. `undefined` when the function has no value where it is asked.
 */
export function findRoot(
  miss: Miss,
  start: number,
  low: number,
  high: number,
  scale: number,
  within: number,
  firstSlope = 1,
  hasRough = true,
): Root | undefined {
  let [lower, upper, at, slope] = [low, high, start, firstSlope];
  let [before, beforeMiss, isMeasured, isRough] = [Number.NaN, 0, false, hasRough];
  let beforeRough = hasRough;
  let slowRounds = 0;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const here = miss(at, isRough);
    if (here === undefined) return undefined;
    const nearest = beforeRough ? NEAREST_ROUGH_SHARE : NEAREST_SHARE;
    if (Math.abs(at - before) > nearest * scale) {
      slope = (here - beforeMiss) / (at - before);
      isMeasured = true;
    }
    if (Math.abs(here) <= within && !isRough)
      return { at, slope: isMeasured ? slope : slopeAt(miss, at, here, scale) };
    const isNear = Math.abs(here) <= ROUGH_SHARE * scale;
    const span = upper - lower;
    // A rough value says nothing of the side when it is nearly zero.
    if (!isRough || Math.abs(here) > 0.1 * ROUGH_SHARE * scale) {
      if (here < 0) lower = at;
      else upper = at;
    }
    slowRounds = upper - lower > 0.5 * span ? slowRounds + 1 : 0;
    beforeRough = isRough;
    if (isNear) isRough = false;
    before = at;
    beforeMiss = here;
    const next = at - here / slope;
    const isOutside = !(next > lower && next < upper);
    at = isOutside || slowRounds > 8 ? 0.5 * (lower + upper) : next;
    if (slowRounds > 8) slowRounds = 0;
    // The bracket has shrunk to rounding: this is as near as the function tells.
    if (upper - lower <= 1e-14 * scale) return { at, slope };
  }
  return undefined;
}

function slopeAt(miss: Miss, at: number, here: number, scale: number): number {
  const step = 1e-4 * scale;
  const ahead = miss(at + step, false);
  return ahead === undefined ? 1 : (ahead - here) / step;
}
