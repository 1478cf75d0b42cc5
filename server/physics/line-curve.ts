import { type CurveState, climbCurve } from "./climb-curve.ts";
import type { Course } from "./course.ts";
import type { Curve, CurvePoint } from "./curve.ts";
import type { TowedLine } from "./towed-line.ts";
import type { Water } from "./water.ts";

/** Climbs until a line's upper end is where it should be; most settle in four. */
const MOST_CLIMBS = 12;
/** How near is near enough, m: far below the width of any margin. */
const NEAR_M = 0.02;
/** A line with more of its length behind the boat than this share of the circle's radius has no steady place in it. */
export const LONGEST_SHARE = 0.9;

/** How a line would hang going straight: its lower end from its upper one, m. */
interface HangsStraight {
  readonly behindM: number;
  readonly dropM: number;
}

/**
 * The steady course of a line from its upper end down: in one plane going straight, bent inward in a turn. Everything goes
 * round the turn's middle together, so one number is unknown there: the lower end's own radius. It is sought
 * until the upper end comes out on its radius (secant), and the whole is then turned to where the upper end is.
 * `undefined` where nothing steady was found, or the line is nearly as long as the circle is wide.
 *
 * Limits: quasi-steady, so a line is drawn where it comes to rest after about its own length of the turn; the weight of
 * the line's own way round (a hundredth of a m/s2) is left out; a current that differs with depth is taken to turn
 * with the boat.
 */
export function lineCurve(
  line: TowedLine,
  water: Water,
  course: Course,
  top: CurvePoint,
  hangs: HangsStraight,
): Curve | undefined {
  const radiusM = course.turnRadiusM;
  if (radiusM === undefined) return straightCurve(line, water, course, top, hangs);
  const topRadiusM = Math.hypot(top.behindM, radiusM - top.acrossM);
  if (hangs.behindM > LONGEST_SHARE * topRadiusM) return undefined;
  return turnedCurve(line, water, { ...course, turnRadiusM: radiusM }, top, hangs, topRadiusM);
}

function straightCurve(
  line: TowedLine,
  water: Water,
  course: Course,
  top: CurvePoint,
  hangs: HangsStraight,
): Curve | undefined {
  let endZM = top.depthM + hangs.dropM;
  for (let climb = 0; climb < MOST_CLIMBS; climb++) {
    const points = climbCurve({ xM: 0, yM: 0, zM: endZM }, line, water, course);
    const last = points?.at(-1);
    if (points === undefined || last === undefined) return undefined;
    const missM = last.zM - top.depthM;
    if (course.flow.type !== "uniform" && Math.abs(missM) > NEAR_M) {
      endZM -= missM;
      continue;
    }
    return points.reverse().map((point) => ({
      behindM: top.behindM + point.xM - last.xM,
      acrossM: top.acrossM,
      depthM: point.zM - missM,
    }));
  }
  return undefined;
}

function turnedCurve(
  line: TowedLine,
  water: Water,
  course: Course & { readonly turnRadiusM: number },
  top: CurvePoint,
  hangs: HangsStraight,
  topRadiusM: number,
): Curve | undefined {
  const side = Math.sign(course.turnRadiusM);
  let endZM = top.depthM + hangs.dropM;
  let endRadiusM = Math.sqrt(topRadiusM ** 2 - hangs.behindM ** 2);
  let before: { readonly radiusM: number; readonly missM: number } | undefined;
  for (let climb = 0; climb < MOST_CLIMBS; climb++) {
    const start = { xM: 0, yM: course.turnRadiusM - side * endRadiusM, zM: endZM };
    const points = climbCurve(start, line, water, course);
    const last = points?.at(-1);
    if (points === undefined || last === undefined) return undefined;
    const missM = Math.hypot(last.xM, course.turnRadiusM - last.yM) - topRadiusM;
    const missZM = last.zM - top.depthM;
    const isNearZ = course.flow.type === "uniform" || Math.abs(missZM) < NEAR_M;
    if (Math.abs(missM) < NEAR_M && isNearZ) return turnedTo(top, points, last, course.turnRadiusM);
    if (course.flow.type !== "uniform") endZM -= missZM;
    const slope = before === undefined ? 1 : (missM - before.missM) / (endRadiusM - before.radiusM);
    before = { radiusM: endRadiusM, missM };
    const nextM = endRadiusM - missM / (slope > LEAST_SLOPE && slope < MOST_SLOPE ? slope : 1);
    if (!(nextM > 0)) return undefined;
    endRadiusM = nextM;
  }
  return undefined;
}

/** A secant steeper or flatter than this is noise of the last digits. */
const LEAST_SLOPE = 0.2;
const MOST_SLOPE = 20;

/** The points turned about the middle of the circle so that the last is at the upper end, from there down. */
export function turnedTo(top: CurvePoint, points: CurveState[], last: CurveState, radiusM: number): Curve {
  const wanted = Math.atan2(top.acrossM - radiusM, top.behindM);
  const angle = wanted - Math.atan2(last.yM - radiusM, last.xM);
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  return points.reverse().map(({ xM, yM, zM }) => ({
    behindM: cosine * xM - sine * (yM - radiusM),
    acrossM: radiusM + sine * xM + cosine * (yM - radiusM),
    depthM: zM - last.zM + top.depthM,
  }));
}
