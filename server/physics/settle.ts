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

/** Rounds after which the point counts as not settled; the usual number is four to eight. */
const MOST_ROUNDS = 60;

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
  const inverse = start.inverse?.slice() ?? minusHalfIdentity(n);
  const residual = new Float64Array(n);
  const nextResidual = new Float64Array(n);
  const step = new Float64Array(n);
  const image = new Float64Array(n);
  if (!residualAt(map, point, image, residual)) return { point, inverse, reached: false, rounds: 0 };
  for (let round = 1; round <= MOST_ROUNDS; round++) {
    if (largest(residual) <= tolerance) return { point, inverse, reached: true, rounds: round };
    takeStep(inverse, residual, step, mostStep);
    for (let i = 0; i < n; i++) point[i] = at(point, i) + at(step, i);
    if (!residualAt(map, point, image, nextResidual)) break;
    improveInverse(inverse, step, residual, nextResidual);
    residual.set(nextResidual);
  }
  return { point, inverse, reached: false, rounds: MOST_ROUNDS };
}

function residualAt(map: VectorMap, point: Float64Array, image: Float64Array, out: Float64Array): boolean {
  if (!map(point, image)) return false;
  for (let i = 0; i < out.length; i++) out[i] = at(image, i) - at(point, i);
  return Number.isFinite(largest(out));
}

/** step = -inverse residual, shortened to `mostStep` where it is longer. */
function takeStep(inverse: Float64Array, residual: Float64Array, step: Float64Array, mostStep: number): void {
  const n = step.length;
  for (let i = 0; i < n; i++) {
    let sum = 0;
    for (let j = 0; j < n; j++) sum -= at(inverse, i * n + j) * at(residual, j);
    step[i] = sum;
  }
  const size = largest(step);
  if (size > mostStep) for (let i = 0; i < n; i++) step[i] = (at(step, i) * mostStep) / size;
}

/** Broyden's update by the formula of Sherman & Morrison: the new inverse maps the change seen onto the step taken. */
function improveInverse(
  inverse: Float64Array,
  step: Float64Array,
  residual: Float64Array,
  nextResidual: Float64Array,
): void {
  const n = step.length;
  const mapped = new Float64Array(n);
  const stepInverse = new Float64Array(n);
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

/** The first guess: half-way to the image, for a map that answers with about the opposite of a change. */
function minusHalfIdentity(n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let i = 0; i < n; i++) inverse[i * n + i] = -0.6;
  return inverse;
}

function largest(vector: Float64Array): number {
  let most = 0;
  for (const entry of vector) most = Math.max(most, Math.abs(entry));
  return most;
}

/** An entry that is known to be inside the array. */
function at(vector: Float64Array, index: number): number {
  return vector[index] ?? Number.NaN;
}
