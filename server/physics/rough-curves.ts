/** About where the lines of a rig run in a turn, for a small share of the work of drawing them. */
import type { Course } from "./course.ts";
import { type Curve, type CurvePoint, distanceM, pointAlong } from "./curve.ts";
import type { Downrigger, RodOnCable } from "./downrigger.ts";
import { buildCable, cableOutM, cableWith } from "./downrigger-cable.ts";
import { LONGEST_SHARE } from "./line-curve.ts";
import { type LongLine, towedLineOf } from "./long-line.ts";
import { lureLineOf } from "./lure.ts";
import type { Pull, RodLine } from "./rod-line.ts";
import { pulledLine } from "./rod-line-curve.ts";
import { rodPullIn } from "./rod-line-shear.ts";
import { type RoughLine, roughClimb } from "./rough-climb.ts";
import type { TowedLine } from "./towed-line.ts";
import { type Water, waterAt } from "./water.ts";

/**
 * What a rough drawing of a rig that reaches so far from where it is towed is off by at most, m: more than the worst of a
 * thousand drawn at random (`tests/physics/rough-curves.test.ts`).
 */
export function roughlyOffM(reachM: number): number {
  return 0.25 + 0.01 * reachM;
}

/** A place missed by less, m, is right enough. */
const NEAR_M = 0.8;
const MOST_CLIMBS = 6;

/**
 * The rods' pulls hang on where the cable brings their releases: it is climbed again with better ones, as long as the ball moves
 * by so much, m.
 */
const MOVES_M = 0.3;
const MOST_ROUNDS = 6;

/** Cable goes down by about this share of its length and astern by that one. */
const CABLE_DOWN = 0.93;
const CABLE_ASTERN = 0.3;

/** A cable that doesn't come down by this share of its length hangs on little: it has to be solved. */
const LEAST_DOWN = 0.8;

/** A rod's line is longer by this than the straight way from its tip to its release. */
const ROD_LONGER = 1.15;

/** A long line goes down by about a quarter of its length. */
const LONG_LINE_DOWN = 0.25;

/** A turn round a circle whose radius, m, is to starboard where it is positive. */
type Turn = Course & { readonly turnRadiusM: number };

/** An end that is sought: how far behind the upper end, and how deep below it, m. */
interface End {
  readonly behindM: number;
  readonly dropM: number;
}

/**
 * The lines of a downrigger in a turn; undefined where that can't be told roughly. No solver: each line is climbed
 * about once, from where its end about is.
 */
export function roughDownriggerCurves(rig: Downrigger, turn: Turn, top: CurvePoint): Curve[] | undefined {
  const water = waterAt(rig.waterTemperatureC, rig.salinityPsu);
  if (!water.ok) return undefined;
  const lengthM = cableOutM(rig);
  const releases = rig.rods.map((rod) => {
    const alongM = Math.max(0, lengthM - rod.releaseAboveBallM);
    return { behindM: CABLE_ASTERN * alongM, acrossM: top.acrossM, depthM: CABLE_DOWN * alongM };
  });
  const lures: RoughLine[] = [];
  for (const [i, rod] of rig.rods.entries()) {
    const lure = hung(lureLineOf(rod, water), water, turn, releases[i] ?? top, {
      behindM: rod.setbackM,
      dropM: 0,
    });
    if (lure === undefined) return undefined;
    lures.push(lure);
  }
  const lurePulls = lures.map((lure) => ({
    topForceXN: Math.hypot(lure.forceXN, lure.forceYN),
    topForceZN: lure.forceZN,
  }));
  const bare = buildCable(rig, water);
  let end: End = { behindM: CABLE_ASTERN * lengthM, dropM: CABLE_DOWN * lengthM };
  let pulls: Pull[] = [];
  let cable: Curve = [];
  let ball = top;
  for (let round = 0, movedM = Number.POSITIVE_INFINITY; movedM > MOVES_M; round++) {
    if (round >= MOST_ROUNDS) return undefined;
    pulls = rig.rods.map((rod, i) => pullOn(rod, releases[i] ?? top, rig, top, water));
    const hangs = hung(cableWith(bare, lurePulls, pulls), water, turn, top, end);
    if (hangs === undefined) return undefined;
    cable = hangs.points;
    for (const [i, rod] of rig.rods.entries())
      releases[i] = pointAlong(cable, Math.max(0, 1 - rod.releaseAboveBallM / lengthM));
    const before = ball;
    ball = cable.at(-1) ?? top;
    movedM = rig.rods.length === 0 ? 0 : distanceM(before, ball);
    end = { behindM: levelM(ball, top), dropM: ball.depthM - top.depthM };
  }
  if (ball.depthM < LEAST_DOWN * lengthM) return undefined;
  const curves = [cable];
  for (const [i, rod] of rig.rods.entries()) {
    const release = releases[i] ?? top;
    const lure = lureBelow(rod, lures[i], release, turn, water);
    if (lure === undefined) return undefined;
    curves.push(lure);
    const pull = pulls[i];
    if (rod.rodLine !== undefined && pull !== undefined)
      curves.push(rodLineRoughly(rod.rodLine, pull, water, turn, top, release));
  }
  return isWide(curves, top, turn) ? curves : undefined;
}

/** A lure's line on the release where it came to be: hung anew, since it was hung on where the release was thought to be. */
function lureBelow(
  rod: RodOnCable,
  before: RoughLine | undefined,
  release: CurvePoint,
  turn: Turn,
  water: Water,
): Curve | undefined {
  if (rod.setbackM === 0 || before === undefined) return [release];
  const { points } = before;
  const dropM = (points.at(-1)?.depthM ?? 0) - (points[0]?.depthM ?? 0);
  return hung(lureLineOf(rod, water), water, turn, release, { behindM: rod.setbackM, dropM })?.points;
}

/** How far one place is from another on the level, m. */
function levelM(one: CurvePoint, other: CurvePoint): number {
  return Math.hypot(one.behindM - other.behindM, one.acrossM - other.acrossM);
}

/** The pull of a rod as if its release were as far straight behind. */
function pullOn(rod: RodOnCable, release: CurvePoint, rig: Downrigger, top: CurvePoint, water: Water): Pull {
  const pull: Pull = { forceXN: 0, forceZN: 0 };
  if (rod.rodLine !== undefined)
    rodPullIn(pull, rod.rodLine, levelM(release, top), Math.max(0, release.depthM), rig.flow, water);
  return pull;
}

/** True where the circle is wide enough for rough drawings to hold. */
function isWide(curves: readonly Curve[], top: CurvePoint, { turnRadiusM }: Turn): boolean {
  const mostM = LONGEST_SHARE * Math.abs(turnRadiusM - top.acrossM);
  return curves.every((curve) => distanceM(curve.at(-1) ?? top, top) <= mostM);
}

/** The same of a line that is on no downrigger; none where it is too long for the circle to have a steady place in it. */
export function roughLongLineCurves(line: LongLine, turn: Turn, top: CurvePoint): Curve[] | undefined {
  const water = waterAt(line.waterTemperatureC, line.salinityPsu);
  if (!water.ok) return undefined;
  const towed = towedLineOf(line, water);
  const straight = straightEnd(towed, water, turn);
  if (straight === undefined) return undefined;
  const mostM = LONGEST_SHARE * Math.abs(turn.turnRadiusM - top.acrossM);
  if (straight.behindM > mostM + NEAR_M) return [];
  if (straight.behindM > mostM - NEAR_M) return undefined;
  const hangs = hung(towed, water, turn, top, straight);
  return hangs === undefined ? undefined : [hangs.points];
}

/** A rod's line: climbed from its release to the water line, on to the tip straight, and what misses the tip spread over the height. */
function rodLineRoughly(
  rod: RodLine,
  pull: Pull,
  water: Water,
  turn: Turn,
  top: CurvePoint,
  release: CurvePoint,
): Curve {
  const tip = { behindM: top.behindM + rod.tipBehindM, acrossM: top.acrossM, depthM: -rod.tipHeightM };
  if (!(pull.forceZN < 0)) return [tip, release];
  const climbed = roughClimb(
    release,
    pulledLine(rod, pull, ROD_LONGER * distanceM(tip, release)),
    water,
    turn,
    0,
  );
  const last = climbed?.points[0];
  if (climbed === undefined || last === undefined || !(climbed.forceZN > 0)) return [tip, release];
  const upM = last.depthM - tip.depthM;
  const heightM = release.depthM - tip.depthM;
  const missM = tip.behindM - last.behindM + (upM * climbed.forceXN) / climbed.forceZN;
  const missAcrossM = tip.acrossM - last.acrossM + (upM * climbed.forceYN) / climbed.forceZN;
  const curve = climbed.points.map((point) => {
    const up = (release.depthM - point.depthM) / heightM;
    return {
      behindM: point.behindM + up * missM,
      acrossM: point.acrossM + up * missAcrossM,
      depthM: point.depthM,
    };
  });
  return [tip, ...curve];
}

/** Where a line's end about hangs going straight. */
function straightEnd(line: TowedLine, water: Water, { flow }: Course): End | undefined {
  const lengthM = line.segments.reduce((sum, segment) => sum + segment.lengthM, 0);
  let dropM = LONG_LINE_DOWN * lengthM;
  for (let climb = 0; climb < MOST_CLIMBS; climb++) {
    const top = roughClimb({ behindM: 0, acrossM: 0, depthM: dropM }, line, water, { flow })?.points[0];
    if (top === undefined) return undefined;
    dropM -= top.depthM;
    if (flow.type === "uniform" || Math.abs(top.depthM) < NEAR_M) return { behindM: -top.behindM, dropM };
  }
  return undefined;
}

/** A line in a turn below and behind its upper end; undefined where its lower end isn't found in a few climbs. */
function hung(line: TowedLine, water: Water, turn: Turn, top: CurvePoint, end: End): RoughLine | undefined {
  const { turnRadiusM } = turn;
  const radiusM = Math.hypot(top.behindM, turnRadiusM - top.acrossM);
  const side = Math.sign(turnRadiusM);
  let endRadiusM = Math.sqrt(Math.max(0, radiusM * radiusM - end.behindM * end.behindM));
  let depthM = top.depthM + end.dropM;
  for (let climb = 0; climb < MOST_CLIMBS; climb++) {
    const start = { behindM: 0, acrossM: turnRadiusM - side * endRadiusM, depthM };
    const climbed = roughClimb(start, line, water, turn);
    const upper = climbed?.points[0];
    if (climbed === undefined || upper === undefined) return undefined;
    const missM = Math.hypot(upper.behindM, turnRadiusM - upper.acrossM) - radiusM;
    const missZM = turn.flow.type === "uniform" ? 0 : upper.depthM - top.depthM;
    if (Math.abs(missM) < NEAR_M && Math.abs(missZM) < NEAR_M)
      return { ...climbed, points: broughtTo(top, climbed.points, turn) };
    endRadiusM -= missM;
    depthM -= missZM;
  }
  return undefined;
}

/** A line turned about the middle of the circle, and moved the little that is left, so that it begins at its upper end. */
function broughtTo(top: CurvePoint, points: Curve, { turnRadiusM }: Turn): Curve {
  const upper = points[0] ?? top;
  const angle =
    Math.atan2(top.acrossM - turnRadiusM, top.behindM) -
    Math.atan2(upper.acrossM - turnRadiusM, upper.behindM);
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  const behindM = top.behindM - cosine * upper.behindM + sine * (upper.acrossM - turnRadiusM);
  const acrossM = top.acrossM - sine * upper.behindM - cosine * (upper.acrossM - turnRadiusM);
  return points.map((point) => ({
    behindM: behindM + cosine * point.behindM - sine * (point.acrossM - turnRadiusM),
    acrossM: acrossM + sine * point.behindM + cosine * (point.acrossM - turnRadiusM),
    depthM: point.depthM - upper.depthM + top.depthM,
  }));
}
