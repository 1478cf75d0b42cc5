import type { Curve } from "./curve.ts";

/** A box with sides along the boat, across it and down that holds a curve, m. */
export interface CurveBox {
  readonly curve: Curve;
  readonly least: readonly [behindM: number, acrossM: number, depthM: number];
  readonly most: readonly [behindM: number, acrossM: number, depthM: number];
}

/** The least box around a curve. */
export function boxAround(curve: Curve): CurveBox {
  const least: [number, number, number] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
  ];
  const most: [number, number, number] = [
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (const { behindM, acrossM, depthM } of curve) {
    least[0] = Math.min(least[0], behindM);
    least[1] = Math.min(least[1], acrossM);
    least[2] = Math.min(least[2], depthM);
    most[0] = Math.max(most[0], behindM);
    most[1] = Math.max(most[1], acrossM);
    most[2] = Math.max(most[2], depthM);
  }
  return { curve, least, most };
}

/** How far two boxes are apart at least, m, with the second moved to starboard by so much. */
export function boxesApartM(one: CurveBox, other: CurveBox, acrossM: number): number {
  const gap = (axis: 0 | 1 | 2, byM: number): number =>
    Math.max(0, other.least[axis] + byM - one.most[axis], one.least[axis] - other.most[axis] - byM);
  return Math.hypot(gap(0, 0), gap(1, acrossM), gap(2, 0));
}
