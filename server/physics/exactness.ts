/** How exactly lines are solved, decided here for everything; docs/decisions has why. */

/** How exactly to solve: the error allowed to each step of a line, and to settled places as a share of the line out. */
export interface Exactness {
  readonly tolerance: number;
  readonly share: number;
}

/** Of a towed line asked for by itself: the reference cases then come out within 2e-8 of its length, most within 1e-9. */
export const SOLVER_TOLERANCE = 1e-8;

/**
 * Of a journal's depths, which are shown in whole feet: within 1e-5 of the length of a cable or a long line and 5e-5 of
 * the few meters behind a release, which is 1 mm in 100 m (a test holds both).
 */
export const JOURNAL: Exactness = { tolerance: 1e-5, share: 1e-6 };

/**
 * Of a band's sides: what an input moves is within about 1 cm in 100 m as a rule and within 6 cm in all but one case of a
 * hundred (a test holds both), since a band is shown in whole feet. The places are those that the line comes to from the
 * last ones tried, which are off by ten times that at most (`rig-neighbours.ts`).
 */
export const SIDE: Exactness = { tolerance: 1e-4, share: 1e-3 };

/** Of the slopes for "ten feet more" and "a little faster", which are differences of near depths. */
export const SLOPE: Exactness = { tolerance: 1e-5, share: 1e-5 };
