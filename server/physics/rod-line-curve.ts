import { type CurveState, climbCurve } from "./climb-curve.ts";
import type { Course } from "./course.ts";
import type { Curve, CurvePoint } from "./curve.ts";
import { journalDrag } from "./drag.ts";
import type { Pull, RodLine } from "./rod-line.ts";
import type { TowedLine } from "./towed-line.ts";
import type { Water } from "./water.ts";

/** More line than a rod's could be, as a share of the straight way, so that a climb comes out of the water. */
const LONGER = 1.6;

/**
 * A rod's line from the tip to the release: climbed from the release with the pull that the cable feels there, up to
 * the water line, then straight to the tip. What the tip is missed by, in a turn above all, is spread evenly over the
 * height. `undefined` where the rod doesn't pull.
 */
export function rodLineCurve(
  rod: RodLine,
  pull: Pull,
  water: Water,
  course: Course,
  tip: CurvePoint,
  release: CurvePoint,
): Curve | undefined {
  if (!(pull.forceZN < 0)) return undefined;
  const wayM = Math.hypot(
    tip.behindM - release.behindM,
    tip.acrossM - release.acrossM,
    tip.depthM - release.depthM,
  );
  const start = { xM: release.behindM, yM: release.acrossM, zM: release.depthM };
  const points = climbCurve(start, pulledLine(rod, pull, LONGER * wayM), water, course);
  const wet = (points ?? []).filter((point) => point.zM >= 0);
  const last = wet.at(-1);
  if (last === undefined) return [tip, release];
  const miss = missAt(tip, last);
  const heightM = release.depthM - tip.depthM;
  const curve = wet.map((point) => {
    const up = (release.depthM - point.zM) / heightM;
    return {
      behindM: point.xM + up * miss.xM,
      acrossM: point.yM + up * miss.yM,
      depthM: point.zM,
    };
  });
  return [tip, ...curve.reverse()];
}

/** The line as it hangs from its tip, with the cable's pull as what is fixed to its end. */
export function pulledLine(rod: RodLine, pull: Pull, lengthM: number): TowedLine {
  const segment = {
    lengthM,
    diameterM: rod.diameterM,
    weightNPerM: 0,
    normalDrag: journalDrag(rod.dragMultiplier),
    tangentialCoefficient: 0,
  };
  const body = { weightN: -pull.forceZN, forceXN: -pull.forceXN, dragAreaM2: 0, liftAreaM2: 0 };
  return { segments: [segment], bodies: [{ node: 1, ...body }] };
}

/** How far from a point of the line, going straight on, the tip is passed. */
function missAt(tip: CurvePoint, last: CurveState): { readonly xM: number; readonly yM: number } {
  const upM = last.zM - tip.depthM;
  return {
    xM: tip.behindM - (last.xM - (upM * last.forceXN) / last.forceZN),
    yM: tip.acrossM - (last.yM - (upM * last.forceYN) / last.forceZN),
  };
}
