/** How deep a line comes at all, and with how much of it. */

/** A depth and the length out that brings it, m. */
export interface Reach {
  readonly outM: number;
  readonly depthM: number;
}

const STEPS = 24;
/** Nobody lets out more line for less than this, m (half a foot). */
const WORTH_M = 0.15;

/** The least of some lengths up to `mostM` that comes within half a foot of the deepest. */
export function deepestReach(
  depthAt: (outM: number) => number | undefined,
  mostM: number,
): Reach | undefined {
  const reaches: Reach[] = [];
  for (let step = 1; step <= STEPS; step++) {
    const outM = (mostM * step) / STEPS;
    const depthM = depthAt(outM);
    if (depthM !== undefined) reaches.push({ outM, depthM });
  }
  const deepestM = Math.max(...reaches.map(({ depthM }) => depthM));
  return reaches.find(({ depthM }) => depthM >= deepestM - WORTH_M);
}
