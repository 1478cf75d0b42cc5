/** A downrigger's ball or the lure of a rod on its cable, asked for the length that brings it to a depth. */
import type { RodOnSpread } from "../model/timeline.ts";
import { cableRigOf } from "../model/trip.ts";
import { type SolvedDownrigger, solveDownrigger } from "../physics/downrigger.ts";
import { isOutOfReach, isTooShallow } from "../physics/long-line-out.ts";
import { counterForDepth } from "../physics/out-for-depth.ts";
import type { Settled } from "../physics/settle.ts";
import { type DepthMemo, solveTask } from "./depth-memo.ts";
import { placeOf } from "./depth-place.ts";
import { downriggerTask, type WaterAndSpeed } from "./downrigger-input.ts";
import { type Invertible, type LineToSet, MOST_OUT_M } from "./line-to-set.ts";
import type { NoTask } from "./no-task.ts";

const TOO_SHALLOW = "too shallow for it: a clip on the cable would come out of the water";

/** The line, ready to be asked; the rods on the same cable pull on it as they are set. */
export function cableLetOut(line: LineToSet, water: WaterAndSpeed, memo: DepthMemo): Invertible | NoTask {
  const { gear, rig, rods } = line;
  const cableRig = cableRigOf(gear, rig.name);
  if (cableRig === undefined || rods === undefined)
    return { ok: false, why: `${rig.name} is on no downrigger of the gear book` };
  const mostM = cableRig.holdsM ?? MOST_OUT_M.cable;
  const taskAt = (outM: number) => downriggerTask(gear, cableRig, withOut(line, cableRig.name, outM), water);
  const longest = taskAt(mostM);
  if (!longest.ok) return longest;
  const { downrigger } = longest;
  const hasLure = line.setting.setbackM !== undefined && downrigger.rods.some((rod) => rod.id === rig.name);
  if (!hasLure && rig.name !== cableRig.name)
    return {
      ok: false,
      why: `how far ${rig.name}'s lure is behind its release isn't stated (setback 20 ft)`,
    };
  const of = hasLure ? "lure" : "ball";
  let near: Settled | undefined;
  return {
    ok: true,
    of,
    mostM,
    lengthFor: (depthM) => {
      const found = counterForDepth(downrigger, hasLure ? rig.name : "ball", depthM, mostM, near);
      if (found.ok) {
        near = found.settled;
        return { ok: true, outM: found.outM };
      }
      return isOutOfReach(found)
        ? undefined
        : { ok: false, why: isTooShallow(found) ? TOO_SHALLOW : found.why };
    },
    depthAt: (outM) => {
      const solved = solveDownrigger({ ...downrigger, outM });
      return solved.ok ? placeIn(solved, hasLure ? rig.name : undefined)?.depthM : undefined;
    },
    placeAt: ({ outM }) => {
      const task = taskAt(outM);
      const answer = task.ok ? solveTask(task, memo) : task;
      if (!answer.ok) return answer;
      const rod = answer.rods.find(({ id }) => id === rig.name);
      return placeOf(hasLure && rod !== undefined ? rod.lure : answer.ball, undefined);
    },
  };
}

function placeIn(solved: SolvedDownrigger, rod: string | undefined): { depthM: number } | undefined {
  return rod === undefined ? solved.ball : solved.rods.find(({ id }) => id === rod)?.lure;
}

/** The rods with so much on the counter, this line's own clipped as it will be. */
function withOut({ rig, setting, rods }: LineToSet, cable: string, outM: number): Map<string, RodOnSpread> {
  const spread = new Map(rods).set(rig.name, { setting, isClipped: true });
  const carrier = spread.get(cable);
  if (carrier === undefined) return spread;
  return spread.set(cable, { ...carrier, setting: { ...carrier.setting, outM } });
}
