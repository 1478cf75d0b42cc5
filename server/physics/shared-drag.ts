import { DEFAULTS } from "./defaults.ts";

/** What a fit found of one cable's drag. */
export interface FittedDrag {
  /** Logarithm of its drag multiplier, prior included. */
  readonly lnDrag: number;
  readonly lnDragSd: number;
}

/** What fitted cables say of the part of the drag that every line of the boat shares. */
interface SharedDrag {
  /** Mean of that part's logarithm; 0 where nothing was fitted. */
  readonly lnShift: number;
  /** Its standard deviation, never more than before. */
  readonly lnSd: number;
}

/**
 * The shared part of the drag (the speed sensor's scale, the water, the habit of strumming) as fitted cables tell
 * it. Each cable's ln drag is the default's plus the shared part plus the cable's own, of which the fit knows only
 * the sum; so a cable however well fitted leaves the shared part at no less than
 * sqrt(own2 shared2 / (own2 + shared2)). A new line's ln drag then has that variance plus its own. What a fit took
 * from the prior is taken out first, so that two cables do not count the prior twice. Source: normal model with two
 * variance components, docs/physics.md.
 */
export function sharedDragFrom(fits: readonly FittedDrag[]): SharedDrag {
  const sharedVar = DEFAULTS.sharedDrag.sd ** 2;
  const ownVar = DEFAULTS.cableDragMultiplier.sd ** 2;
  const lnDefault = Math.log(DEFAULTS.cableDragMultiplier.value);
  let precision = 1 / sharedVar;
  let pull = 0;
  for (const { lnDrag, lnDragSd } of fits) {
    const posterior = 1 / lnDragSd ** 2;
    const gained = posterior - 1 / (sharedVar + ownVar);
    if (!(gained > 0) || !Number.isFinite(lnDrag + gained)) continue;
    const readVar = 1 / gained;
    const read = (lnDrag - lnDefault) * posterior * readVar;
    precision += 1 / (ownVar + readVar);
    pull += read / (ownVar + readVar);
  }
  return { lnShift: pull / precision, lnSd: Math.sqrt(1 / precision) };
}
