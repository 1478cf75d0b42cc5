import { between, type Curve, type CurvePoint } from "./curve.ts";

/** Where two lines come nearest to each other. */
export interface Approach {
  readonly distanceM: number;
  /** The point of the first line and that of the second. */
  readonly one: CurvePoint;
  readonly other: CurvePoint;
}

/**
 * The least distance between two lines of straight pieces, with where it is: a curve of one point is that point.
 * Answers `undefined` where one has no point, or where they stay farther apart than `withinM`. Balls around the pieces
 * are compared first, so that pieces far apart cost next to nothing.
 */
export function closestApproach(
  one: Curve,
  other: Curve,
  withinM = Number.POSITIVE_INFINITY,
): Approach | undefined {
  const best: Best = { square: withinM * withinM, i: -1, j: -1, s: 0, t: 0 };
  const pieces = piecesOf(one);
  const others = piecesOf(other);
  let reachM = withinM;
  for (const [i, piece] of pieces.entries()) {
    for (let j = 0; j < others.length; j++) {
      const against = others[j];
      if (against === undefined || isBeyond(piece, against, reachM)) continue;
      compare(best, piece, i, against, j);
      reachM = Math.sqrt(best.square);
    }
  }
  if (best.i < 0) return undefined;
  return { distanceM: reachM, one: pointAt(one, best.i, best.s), other: pointAt(other, best.j, best.t) };
}

/** The nearest so far: pieces i and j, at the shares s and t of their lengths. */
interface Best {
  square: number;
  i: number;
  j: number;
  s: number;
  t: number;
}

/** A straight piece: where it starts, how it runs, and the half of its length. */
interface Piece {
  readonly from: CurvePoint;
  readonly ux: number;
  readonly uy: number;
  readonly uz: number;
  readonly halfM: number;
}

function piecesOf(curve: Curve): Piece[] {
  const starts = curve.length === 1 ? curve : curve.slice(0, -1);
  return starts.map((from, i) => {
    const to = curve[i + 1] ?? from;
    const ux = to.behindM - from.behindM;
    const uy = to.acrossM - from.acrossM;
    const uz = to.depthM - from.depthM;
    return { from, ux, uy, uz, halfM: 0.5 * Math.sqrt(ux * ux + uy * uy + uz * uz) };
  });
}

/** The balls around two pieces are farther apart than that. */
function isBeyond(a: Piece, b: Piece, reachM: number): boolean {
  const x = a.from.behindM - b.from.behindM + 0.5 * (a.ux - b.ux);
  const y = a.from.acrossM - b.from.acrossM + 0.5 * (a.uy - b.uy);
  const z = a.from.depthM - b.from.depthM + 0.5 * (a.uz - b.uz);
  const farM = reachM + a.halfM + b.halfM;
  return x * x + y * y + z * z > farM * farM;
}

/**
 * Two straight pieces. The nearest points of two segments are either inside both, where the line between them stands
 * upright on both, or one of them is an end: the inside pair is tried where it exists, then the four ends. Parallel
 * pieces and pieces without length then need no case of their own. Source: derived.
 */
function compare(best: Best, a: Piece, i: number, b: Piece, j: number): void {
  const wx = a.from.behindM - b.from.behindM;
  const wy = a.from.acrossM - b.from.acrossM;
  const wz = a.from.depthM - b.from.depthM;
  const uu = a.ux * a.ux + a.uy * a.uy + a.uz * a.uz;
  const uv = a.ux * b.ux + a.uy * b.uy + a.uz * b.uz;
  const vv = b.ux * b.ux + b.uy * b.uy + b.uz * b.uz;
  const uw = a.ux * wx + a.uy * wy + a.uz * wz;
  const vw = b.ux * wx + b.uy * wy + b.uz * wz;
  const take = (s: number, t: number): void => {
    const x = wx + s * a.ux - t * b.ux;
    const y = wy + s * a.uy - t * b.uy;
    const z = wz + s * a.uz - t * b.uz;
    const square = x * x + y * y + z * z;
    if (square <= best.square) Object.assign(best, { square, i, j, s, t });
  };
  const determinant = uu * vv - uv * uv;
  if (determinant > PARALLEL * uu * vv) {
    const s = (uv * vw - vv * uw) / determinant;
    const t = (uu * vw - uv * uw) / determinant;
    if (s >= 0 && s <= 1 && t >= 0 && t <= 1) {
      take(s, t);
      return;
    }
  }
  take(0, share(vw, vv));
  take(1, share(vw + uv, vv));
  take(share(-uw, uu), 0);
  take(share(uv - uw, uu), 1);
}

/** The square of the sine of an angle below which two pieces are parallel for every purpose. */
const PARALLEL = 1e-12;

function share(part: number, whole: number): number {
  return whole > 0 ? Math.min(1, Math.max(0, part / whole)) : 0;
}

function pointAt(curve: Curve, index: number, along: number): CurvePoint {
  const from = curve[index] ?? { behindM: 0, acrossM: 0, depthM: 0 };
  return between(from, curve[index + 1] ?? from, along);
}
