/**
 * A curve through points that keeps their shape: it rises and falls only where they do. Piecewise cubic Hermite
 * with the slopes of Fritsch & Butland 1984, SIAM J. Sci. Stat. Comput. 5:300-304, as usual in PCHIP routines; at
 * the ends the three-point slope, limited so that it doesn't overshoot.
 */

/** Evaluates a curve between its first and last point; undefined outside of them. */
export interface ShapeCurve {
  /** The value at x. */
  at(x: number): number | undefined;
  /** The slope there, per unit of x. */
  slopeAt(x: number): number | undefined;
}

/** The curve through points with rising, distinct x; undefined for fewer than two, or for x that don't rise. */
export function shapeCurve(xs: readonly number[], ys: readonly number[]): ShapeCurve | undefined {
  const isRising = xs.every((x, i) => Number.isFinite(x) && (i === 0 || x > at(xs, i - 1)));
  if (xs.length < 2 || xs.length !== ys.length || !isRising || !ys.every(Number.isFinite)) return undefined;
  const slopes = slopesOf(xs, ys);
  const on = (x: number): Piece | undefined => pieceAt(xs, ys, slopes, x);
  return {
    at: (x) => valueOn(on(x)),
    slopeAt: (x) => slopeOn(on(x)),
  };
}

interface Piece {
  readonly stepX: number;
  /** Place within the piece, 0 to 1. */
  readonly share: number;
  readonly from: number;
  readonly to: number;
  readonly fromSlope: number;
  readonly toSlope: number;
}

const at = (values: readonly number[], index: number): number => values[index] ?? Number.NaN;

function pieceAt(
  xs: readonly number[],
  ys: readonly number[],
  slopes: readonly number[],
  x: number,
): Piece | undefined {
  const last = xs.length - 1;
  if (!(x >= at(xs, 0) && x <= at(xs, last))) return undefined;
  let i = 0;
  while (i < last - 1 && x > at(xs, i + 1)) i++;
  const stepX = at(xs, i + 1) - at(xs, i);
  return {
    stepX,
    share: (x - at(xs, i)) / stepX,
    from: at(ys, i),
    to: at(ys, i + 1),
    fromSlope: at(slopes, i),
    toSlope: at(slopes, i + 1),
  };
}

function valueOn(piece: Piece | undefined): number | undefined {
  if (piece === undefined) return undefined;
  const { share: t, stepX, from, to, fromSlope, toSlope } = piece;
  const u = 1 - t;
  const bend = u * u * t * fromSlope - u * t * t * toSlope;
  return from * u * u * (1 + 2 * t) + to * t * t * (3 - 2 * t) + stepX * bend;
}

function slopeOn(piece: Piece | undefined): number | undefined {
  if (piece === undefined) return undefined;
  const { share: t, stepX, from, to, fromSlope, toSlope } = piece;
  const chord = (to - from) / stepX;
  return 6 * t * (1 - t) * chord + (1 - t) * (1 - 3 * t) * fromSlope + t * (3 * t - 2) * toSlope;
}

function slopesOf(xs: readonly number[], ys: readonly number[]): number[] {
  const steps = xs.slice(1).map((x, i) => x - at(xs, i));
  const chords = steps.map((step, i) => (at(ys, i + 1) - at(ys, i)) / step);
  if (chords.length === 1) return [at(chords, 0), at(chords, 0)];
  const inner = chords
    .slice(1)
    .map((chord, i) => innerSlope(at(steps, i), at(steps, i + 1), at(chords, i), chord));
  const reversed = [steps.toReversed(), chords.toReversed()] as const;
  return [endSlope(steps, chords), ...inner, endSlope(...reversed)];
}

/** A weighted harmonic mean of the slopes on both sides; zero where they differ in sign. */
function innerSlope(stepBefore: number, stepAfter: number, before: number, after: number): number {
  if (before * after <= 0) return 0;
  const [w1, w2] = [2 * stepAfter + stepBefore, stepAfter + 2 * stepBefore];
  return (w1 + w2) / (w1 / before + w2 / after);
}

function endSlope([h0 = 1, h1 = 1]: readonly number[], [d0 = 0, d1 = 0]: readonly number[]): number {
  const slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
  if (slope * d0 <= 0) return 0;
  return d0 * d1 < 0 && Math.abs(slope) > 3 * Math.abs(d0) ? 3 * d0 : slope;
}
