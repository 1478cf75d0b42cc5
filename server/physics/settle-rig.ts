import { climbLure } from "./climb-rig.ts";
import { cableWith } from "./downrigger-cable.ts";
import { SOLVER_TOLERANCE } from "./exactness.ts";
import { entriesIn, type HangingRig, hangOnce, placesIn } from "./hanging-rig.ts";
import { minusShareOfIdentity, type Settled, settle } from "./settle.ts";
import { solveChecked } from "./towed-line.ts";

/** Where a search starts. */
export interface SettleStart {
  readonly point: Float64Array;
  readonly inverse?: Float64Array;
}

/** The length that errors of places are a share of, m. */
export function spanM({ cable }: HangingRig): number {
  return Math.max(cable.lengthM, 1);
}

/** Goes round until all is where it was taken to be, within so many m. */
export function settleFrom(hanging: HangingRig, start: SettleStart, withinM: number): Settled {
  return settle((from, to) => hangOnce(hanging, from, to), start, withinM, 0.5 * spanM(hanging));
}

/** How often lures are hung anew on releases whose depth, and so whose speed, has moved. */
const MOST_HANGINGS = 6;
/** A release so near, as a share of the cable, to where its lure was hung for leaves the lure as it is. */
const NEAR_SHARE = 1e-4;

/**
 * For the few streams in which that does not settle, because a bend keeps the last digits from it or a lure hangs in so
 * steep a layer that it leaps from one depth to another: everything exactly, the lures by all their steady shapes and in
 * turn with the cable.
 */
export function settleHard(hanging: HangingRig, start: SettleStart, withinM: number): Settled {
  const exact: HangingRig = { ...hanging, tolerance: SOLVER_TOLERANCE, lureLines: [] };
  const { rig, cable, climbed } = exact;
  let from: SettleStart = { point: start.point.slice(0, entriesIn(exact)) };
  let isPlaced = !hanging.isSheared;
  let releasesM = rig.rods.map((rod) => 0.9 * Math.max(0, cable.lengthM - rod.releaseAboveBallM));
  for (let hangings = 1; ; hangings++) {
    hanging.why = hangAll(hanging, releasesM);
    if (hanging.why !== undefined) return withLures(hanging, from.point, false);
    if (!isPlaced) from = { point: placedByScan(exact, from.point) };
    isPlaced = true;
    const settled = settleFrom(exact, from, withinM);
    hanging.why = exact.why;
    const nowM = cable.releaseNodes.map((node) => climbed.zM[node] ?? 0);
    const isHung = nowM.every((m, i) => Math.abs(m - (releasesM[i] ?? 0)) <= NEAR_SHARE * cable.lengthM);
    if (hanging.lureLines.length === 0 || !settled.reached || isHung || hangings === MOST_HANGINGS)
      return withLures(hanging, settled.point, settled.reached);
    releasesM = nowM;
    from = settled;
  }
}

/** The point with the ball where the cable can hang deepest, the pulls being those of the point given. */
function placedByScan(exact: HangingRig, given: Float64Array): Float64Array {
  const { cable, lures, pulls, water, flow, tolerance } = exact;
  const [point, image] = [given.slice(), new Float64Array(given.length)];
  if (!hangOnce(exact, point, image)) return given;
  const line = solveChecked(cableWith(cable, lures, pulls), water, flow, { xM: 0, zM: 0 }, tolerance);
  if (!line.ok) return given;
  point[placesIn(exact)] = line.depthM;
  return hangOnce(exact, point, image) ? image : given;
}

/** Hangs the lures below releases at such depths, each in the deepest way it can; or why it cannot. */
function hangAll({ lureLines, lures, water, flow }: HangingRig, releasesM: readonly number[]) {
  for (const [i, line] of lureLines.entries()) {
    const lure = lures[i];
    if (lure === undefined) continue;
    const solved = solveChecked(line, water, flow, { xM: 0, zM: releasesM[i] ?? 0 }, SOLVER_TOLERANCE);
    const why = solved.ok ? climbLure(lure, line, water, flow, solved.depthM, SOLVER_TOLERANCE) : solved.why;
    if (why !== undefined) return why;
  }
  return undefined;
}

/** A point without lures with where they hang. */
function withLures({ lures, lureLines }: HangingRig, places: Float64Array, reached: boolean): Settled {
  const point = new Float64Array(places.length + lureLines.length);
  point.set(places);
  for (let i = 0; i < lureLines.length; i++) point[places.length + i] = lures[i]?.endZM ?? 0;
  return { point, inverse: minusShareOfIdentity(point.length, 1), reached, rounds: 0 };
}
