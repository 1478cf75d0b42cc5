/** Where a stacked rod is clipped for its lure to run at a depth, the ball staying where it is. */
import { cableRigOf } from "../model/trip.ts";
import { solveDownrigger } from "../physics/downrigger.ts";
import { findRoot } from "../physics/find-root.ts";
import { downriggerTask, type WaterAndSpeed } from "./downrigger-input.ts";
import type { LineToSet } from "./line-to-set.ts";

/** A clip is set to the foot at best, m. */
const WITHIN_M = 0.02;

/**
 * The clip's height above the ball (m, from 0 to the cable that is out) that brings the rod's lure to a depth (m).
 * Undefined where no clip does, where the rod has no lure out, and where the rig has no depth.
 */
export function clipForDepth(line: LineToSet, water: WaterAndSpeed, depthM: number): number | undefined {
  const { gear, rig, setting, rods } = line;
  const cableRig = cableRigOf(gear, rig.name);
  if (cableRig === undefined || rods === undefined || setting.setbackM === undefined) return undefined;
  const spread = new Map(rods).set(rig.name, { setting, isClipped: true });
  const task = downriggerTask(gear, cableRig, spread, water);
  if (!task.ok) return undefined;
  const { downrigger } = task;
  const lureAt = (releaseAboveBallM: number): number | undefined => {
    const clipped = downrigger.rods.map((rod) => (rod.id === rig.name ? { ...rod, releaseAboveBallM } : rod));
    const solved = solveDownrigger({ ...downrigger, rods: clipped });
    return solved.ok ? solved.rods.find(({ id }) => id === rig.name)?.lure.depthM : undefined;
  };
  const missAt = (aboveM: number): number | undefined => {
    const lureM = lureAt(aboveM);
    return lureM === undefined ? undefined : depthM - lureM;
  };
  // Nearer to the ball is deeper, so that only between these two is there a clip.
  const deepest = missAt(0);
  const start = setting.aboveM ?? 0;
  const highestM = downrigger.counterScale * downrigger.outM + downrigger.counterOffsetM;
  if (deepest === undefined || deepest > 0 || !(highestM > 0)) return undefined;
  return findRoot(missAt, Math.min(start, highestM), 0, highestM, highestM, WITHIN_M, 1, false)?.at;
}
