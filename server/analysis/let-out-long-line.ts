/** A line on no downrigger, asked for the length that brings its lure to a depth. */
import { solveLongLine } from "../physics/long-line.ts";
import { isOutOfReach, isTooShallow, longLineOutForDepth } from "../physics/long-line-out.ts";
import { type DepthMemo, solveLongLineTask } from "./depth-memo.ts";
import { placeOf } from "./depth-place.ts";
import type { WaterAndSpeed } from "./downrigger-input.ts";
import { type Invertible, type LineToSet, MOST_OUT_M } from "./line-to-set.ts";
import { type LongLineTask, longLineTask } from "./long-line-input.ts";
import type { NoTask } from "./no-task.ts";

const TOO_SHALLOW = "too shallow for it: it runs deeper with none of the line out";

/** The line, ready to be asked. Without backing it ends with what the rig holds. */
export function longLineLetOut(
  { gear, rig, setting }: LineToSet,
  water: WaterAndSpeed,
  memo: DepthMemo,
): Invertible | NoTask {
  if (rig.kind === "jig")
    return { ok: false, why: `${rig.name} is cast or jigged, and hangs where it is let down` };
  if (rig.kind === "stacked")
    return {
      ok: false,
      why: `${rig.name} is stacked on ${rig.stackedOn}, which is no downrigger in the gear book`,
    };
  const { holdsM, backing } = rig;
  const mostM =
    holdsM === undefined
      ? MOST_OUT_M.line
      : backing === undefined
        ? holdsM
        : Math.max(holdsM, MOST_OUT_M.line);
  const taskAt = (outM: number, outColorsM: number | undefined): LongLineTask | NoTask =>
    longLineTask(gear, rig, { ...setting, outM, outColorsM }, water);
  const longest = taskAt(mostM, undefined);
  if (!longest.ok) return longest;
  return {
    ok: true,
    of: "lure",
    mostM,
    lengthFor: (depthM) => {
      const found = longLineOutForDepth(longest.line, depthM, mostM);
      if (found.ok) return found;
      return isOutOfReach(found)
        ? undefined
        : { ok: false, why: isTooShallow(found) ? TOO_SHALLOW : found.why };
    },
    depthAt: (outM) => {
      const solved = solveLongLine({ ...longest.line, outM });
      return solved.ok ? solved.lure.depthM : undefined;
    },
    placeAt: ({ outM, colorsM }) => {
      const task = taskAt(outM, colorsM);
      const answer = task.ok ? solveLongLineTask(task, memo) : task;
      return answer.ok ? placeOf(answer.lure, undefined) : answer;
    },
  };
}
