/** The course of a line through the water as points: astern of the boat, across it, and down. */

/** A point of a line, m, in a frame that moves with the boat. */
export interface CurvePoint {
  readonly behindM: number;
  /** To starboard of the boat's middle; port is negative. */
  readonly acrossM: number;
  /** Below the surface; negative in the air. */
  readonly depthM: number;
}

/** A line from its upper end down, as points joined by straight pieces. */
export type Curve = readonly CurvePoint[];

/** A curve moved astern and to starboard by so many m, with every depth made so many times as large. */
export function shiftedCurve(curve: Curve, behindM: number, acrossM: number, depthTimes = 1): Curve {
  return curve.map((point) => ({
    behindM: point.behindM + behindM,
    acrossM: point.acrossM + acrossM,
    depthM: point.depthM * depthTimes,
  }));
}

/** How far apart two points are, m. */
export function distanceM(one: CurvePoint, other: CurvePoint): number {
  return Math.hypot(one.behindM - other.behindM, one.acrossM - other.acrossM, one.depthM - other.depthM);
}

/** The point at a share of the way from one to another. */
export function between(from: CurvePoint, to: CurvePoint, share: number): CurvePoint {
  return {
    behindM: from.behindM + share * (to.behindM - from.behindM),
    acrossM: from.acrossM + share * (to.acrossM - from.acrossM),
    depthM: from.depthM + share * (to.depthM - from.depthM),
  };
}

/** The point at a share of a curve's length from its upper end. */
export function pointAlong(curve: Curve, share: number): CurvePoint {
  const lengths = curve.map((point, i) => (i === 0 ? 0 : distanceM(curve[i - 1] ?? point, point)));
  let leftM = share * lengths.reduce((sum, length) => sum + length, 0);
  for (let i = 1; i < curve.length; i++) {
    const [from, to] = [curve[i - 1], curve[i]];
    const lengthM = lengths[i] ?? 0;
    if (from === undefined || to === undefined) break;
    if (leftM <= lengthM) return between(from, to, lengthM === 0 ? 0 : leftM / lengthM);
    leftM -= lengthM;
  }
  return curve.at(-1) ?? { behindM: 0, acrossM: 0, depthM: 0 };
}
