/** Points of one temperature profile that can't both be: a depth twice, or a change too steep for any water. */

/** A temperature at a depth. */
interface DepthPoint {
  readonly depthM: number;
  readonly tempC: number;
}

/** Half a degree Fahrenheit: what two readings of one water may differ by (judgement). */
const ALIKE_C = 0.3;
/** Steeper than any thermocline of a lake, C per m: five degrees F in a foot (judgement). */
const STEEPEST_C_PER_M = 9;

/** True for two points of one profile that can't both be. */
export function isCrossing(one: DepthPoint, other: DepthPoint): boolean {
  const apartC = Math.abs(one.tempC - other.tempC);
  return apartC > ALIKE_C + STEEPEST_C_PER_M * Math.abs(one.depthM - other.depthM);
}

/** The points that none of the others speaks against. */
export function soundPoints<Point extends DepthPoint>(points: readonly Point[]): Point[] {
  return points.filter((point) => !points.some((other) => other !== point && isCrossing(point, other)));
}
