import type { Curve } from "./curve.ts";

/** A box with sides along the boat, across it and down that holds a curve, m. */
export interface CurveBox {
  readonly curve: Curve;
  readonly least: readonly [behindM: number, acrossM: number, depthM: number];
  readonly most: readonly [behindM: number, acrossM: number, depthM: number];
}

/** The least box around a curve. */
export function boxAround(curve: Curve): CurveBox {
  const first = curve[0];
  let [leastX, leastY, leastZ] = [first?.behindM ?? 0, first?.acrossM ?? 0, first?.depthM ?? 0];
  let [mostX, mostY, mostZ] = [leastX, leastY, leastZ];
  for (const { behindM, acrossM, depthM } of curve) {
    if (behindM < leastX) leastX = behindM;
    if (behindM > mostX) mostX = behindM;
    if (acrossM < leastY) leastY = acrossM;
    if (acrossM > mostY) mostY = acrossM;
    if (depthM < leastZ) leastZ = depthM;
    if (depthM > mostZ) mostZ = depthM;
  }
  return { curve, least: [leastX, leastY, leastZ], most: [mostX, mostY, mostZ] };
}

/** How far two boxes are apart at least, m, with the second moved to starboard by so much. */
export function boxesApartM(one: CurveBox, other: CurveBox, acrossM: number): number {
  const gap = (axis: 0 | 1 | 2, byM: number): number =>
    Math.max(0, other.least[axis] + byM - one.most[axis], one.least[axis] - other.most[axis] - byM);
  return Math.hypot(gap(0, 0), gap(1, acrossM), gap(2, 0));
}
