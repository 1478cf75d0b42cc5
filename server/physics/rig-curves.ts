import type { HungLure } from "./climb-rig.ts";
import type { Course } from "./course.ts";
import { type Curve, type CurvePoint, pointAlong } from "./curve.ts";
import type { Downrigger, RodOnCable } from "./downrigger.ts";
import { buildCable, cableWith } from "./downrigger-cable.ts";
import { lineCurve } from "./line-curve.ts";
import { type LongLine, solveLongLine, towedLineOf } from "./long-line.ts";
import { lureLineOf } from "./lure.ts";
import type { Pull } from "./rod-line.ts";
import { rodLineCurve } from "./rod-line-curve.ts";
import { rodPullIn } from "./rod-line-shear.ts";
import { solveSettled } from "./settled-downrigger.ts";
import { type Water, waterAt } from "./water.ts";

/** What a stretch of a rig's line is called. */
type PartKind = "cable" | "lure line" | "rod line" | "line";

/** One part of a rig's lines, as it runs in the water. */
export interface CurvePart {
  readonly kind: PartKind;
  /** The rod it belongs to; left out for a cable or a long line. */
  readonly rod?: string;
  readonly curve: Curve;
}

/**
 * The curves of a downrigger, from the point at the water line where its cable goes in: the cable, each rod's line from its
 * release to its lure, and from the rod's tip to its release. `undefined` where it can't be solved. In a turn the
 * pulls of rods and lures on the cable are those of the straight tow, turned into the stream.
 */
export function downriggerCurves(
  rig: Downrigger,
  turnRadiusM: number | undefined,
  top: CurvePoint,
): readonly CurvePart[] | undefined {
  const water = waterAt(rig.waterTemperatureC, rig.salinityPsu);
  const solved = solveSettled(rig);
  if (!water.ok || !solved.ok || solved.answer.surfaced) return undefined;
  const course = courseOf(rig, turnRadiusM);
  const pulls = pullsOf(
    rig,
    solved.answer.rods.map((rod) => rod.release),
    water,
  );
  const cable = buildCable(rig, water);
  const { ball } = solved.answer;
  const cableCurve = lineCurve(cableWith(cable, solved.lures, pulls), water, course, top, {
    behindM: ball.behindM,
    dropM: ball.depthM,
  });
  if (cableCurve === undefined) return undefined;
  const parts: CurvePart[] = [{ kind: "cable", curve: cableCurve }];
  for (const [i, rod] of rig.rods.entries()) {
    const release = pointAlong(cableCurve, Math.max(0, 1 - rod.releaseAboveBallM / cable.lengthM));
    const lure = lureCurve(rod, solved.lures[i], water, course, release);
    if (lure === undefined) return undefined;
    parts.push({ kind: "lure line", rod: rod.id, curve: lure });
    const { rodLine } = rod;
    const pull = pulls[i];
    if (rodLine === undefined || pull === undefined) continue;
    const tip = {
      behindM: top.behindM + rodLine.tipBehindM,
      acrossM: top.acrossM,
      depthM: -rodLine.tipHeightM,
    };
    const line = rodLineCurve(rodLine, pull, water, course, tip, release);
    if (line !== undefined) parts.push({ kind: "rod line", rod: rod.id, curve: line });
  }
  return parts;
}

/** The curve of a line that is on no downrigger, from where it enters the water. */
export function longLineCurves(
  line: LongLine,
  turnRadiusM: number | undefined,
  top: CurvePoint,
): readonly CurvePart[] | undefined {
  const water = waterAt(line.waterTemperatureC, line.salinityPsu);
  const solved = solveLongLine(line);
  if (!water.ok || !solved.ok || solved.surfaced) return undefined;
  const hangs = { behindM: solved.lure.behindM, dropM: solved.lure.depthM };
  const curve = lineCurve(towedLineOf(line, water), water, courseOf(line, turnRadiusM), top, hangs);
  return curve === undefined ? undefined : [{ kind: "line", curve }];
}

function courseOf({ flow }: Pick<Downrigger, "flow">, turnRadiusM: number | undefined): Course {
  return turnRadiusM === undefined ? { flow } : { flow, turnRadiusM };
}

function pullsOf(
  rig: Downrigger,
  releases: readonly { readonly behindM: number; readonly depthM: number }[],
  water: Water,
): Pull[] {
  return rig.rods.map((rod, i) => {
    const pull: Pull = { forceXN: 0, forceZN: 0 };
    const at = releases[i];
    if (rod.rodLine !== undefined && at !== undefined)
      rodPullIn(pull, rod.rodLine, at.behindM, Math.max(0, at.depthM), rig.flow, water);
    return pull;
  });
}

function lureCurve(
  rod: RodOnCable,
  hung: HungLure | undefined,
  water: Water,
  course: Course,
  release: CurvePoint,
): Curve | undefined {
  if (rod.setbackM === 0) return [release];
  const hangs = { behindM: hung?.behindM ?? 0, dropM: hung?.depthM ?? 0 };
  return lineCurve(lureLineOf(rod, water), water, course, release, hangs);
}
