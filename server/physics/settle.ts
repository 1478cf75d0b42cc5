/** A map of a vector onto another of the same length, written into `to`; false when it has no answer. */
type VectorMap = (from: Float64Array, to: Float64Array) => boolean;

/** What a settled point leaves for a neighbour to start from: the point, and how it answers to a change. */
export interface Settled {
  readonly point: Float64Array;
  /** Estimate of the inverse Jacobian of (map minus identity), by rows. */
  readonly inverse: Float64Array;
  /** Whether the last change was within what was asked. */
  readonly reached: boolean;
  readonly rounds: number;
}

/** Rounds after which the point counts as not settled; the usual number is three to six. */
const MOST_ROUNDS = 60;

/** What a search writes into on its way, used again by the next one; a map must not settle anything itself. */
let workspace = workspaceFor(8);

function workspaceFor(n: number) {
  const vector = (): Float64Array => new Float64Array(n);
  return {
    size: n,
    residual: vector(),
    nextResidual: vector(),
    step: vector(),
    image: vector(),
    mapped: vector(),
    stepInverse: vector(),
  };
}

/**
 * Finds a point that `map` leaves where it is, to within `tolerance` in every entry, by Broyden's method (Broyden
 * 1965, Math. Comp. 19:577), which plain repetition cannot match when the map swings back at nearly full size.
 * `start` may be the settled point of a neighbouring problem. No step is longer than `mostStep`.
 */
export function settle(
  map: VectorMap,
  start: { readonly point: Float64Array; readonly inverse?: Float64Array },
  tolerance: number,
  mostStep: number,
): Settled {
  const n = start.point.length;
  const point = start.point.slice();
  const inverse = start.inverse?.slice() ?? minusShareOfIdentity(n, HALF_WAY);
  if (workspace.size < n) workspace = workspaceFor(2 * n);
  const { step, image } = workspace;
  let { residual, nextResidual } = workspace;
  let reached = false;
  let rounds = 0;
  let isAnswered = residualAt(map, point, image, residual);
  while (isAnswered && rounds < MOST_ROUNDS) {
    rounds++;
    reached = largest(residual, n) <= tolerance;
    if (reached) break;
    takeStep(inverse, residual, step, n, mostStep);
    for (let i = 0; i < n; i++) point[i] = at(point, i) + at(step, i);
    isAnswered = residualAt(map, point, image, nextResidual);
    if (isAnswered) improveInverse(inverse, step, residual, nextResidual, n);
    [residual, nextResidual] = [nextResidual, residual];
  }
  return { point, inverse, reached, rounds };
}

function residualAt(map: VectorMap, point: Float64Array, image: Float64Array, out: Float64Array): boolean {
  if (!map(point, image)) return false;
  const n = point.length;
  for (let i = 0; i < n; i++) out[i] = at(image, i) - at(point, i);
  return Number.isFinite(largest(out, n));
}

/** step = -inverse residual, shortened to `mostStep` where it is longer. */
function takeStep(
  inverse: Float64Array,
  residual: Float64Array,
  step: Float64Array,
  n: number,
  mostStep: number,
): void {
  for (let i = 0; i < n; i++) {
    let sum = 0;
    for (let j = 0; j < n; j++) sum -= at(inverse, i * n + j) * at(residual, j);
    step[i] = sum;
  }
  const size = largest(step, n);
  if (size > mostStep) for (let i = 0; i < n; i++) step[i] = (at(step, i) * mostStep) / size;
}

/** Broyden's update by the formula of Sherman & Morrison: the new inverse maps the change seen onto the step taken. */
function improveInverse(
  inverse: Float64Array,
  step: Float64Array,
  residual: Float64Array,
  nextResidual: Float64Array,
  n: number,
): void {
  const { mapped, stepInverse } = workspace;
  mapped.fill(0, 0, n);
  stepInverse.fill(0, 0, n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const entry = at(inverse, i * n + j);
      mapped[i] = at(mapped, i) + entry * (at(nextResidual, j) - at(residual, j));
      stepInverse[j] = at(stepInverse, j) + entry * at(step, i);
    }
  let scale = 0;
  for (let i = 0; i < n; i++) scale += at(step, i) * at(mapped, i);
  if (Math.abs(scale) < 1e-300) return;
  for (let i = 0; i < n; i++) {
    const gain = (at(step, i) - at(mapped, i)) / scale;
    for (let j = 0; j < n; j++) inverse[i * n + j] = at(inverse, i * n + j) + gain * at(stepInverse, j);
  }
}

/** For a map that answers with about the opposite of a change. */
const HALF_WAY = 0.6;

/** A first guess at an inverse: each entry answers only to itself, a step being that share of the way to the image. */
export function minusShareOfIdentity(n: number, share: number): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let i = 0; i < n; i++) inverse[i * n + i] = -share;
  return inverse;
}

function largest(vector: Float64Array, n: number): number {
  let most = 0;
  for (let i = 0; i < n; i++) most = Math.max(most, Math.abs(at(vector, i)));
  return most;
}

/** An entry that is known to be inside the array. */
function at(vector: Float64Array, index: number): number {
  return vector[index] ?? Number.NaN;
}
