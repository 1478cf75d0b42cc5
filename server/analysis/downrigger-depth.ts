/** The depths of a line that carries a ball or is clipped to the cable of one. */
import type { CableSpread } from "../model/timeline.ts";
import type { Trip } from "../model/trip.ts";
import { type DepthMemo, solveTask } from "./depth-memo.ts";
import { placeOf } from "./depth-place.ts";
import { type DownriggerTask, downriggerTask } from "./downrigger-input.ts";
import type { LineDepth } from "./line-depth.ts";
import type { NoTask } from "./no-task.ts";
import { refusalWords } from "./refusal-words.ts";
import { sliderPlace } from "./slider-depth.ts";
import { type DepthBase, waterAndSpeed, withoutDepth } from "./without-depth.ts";

/** Depths of one line on a cable whose rods are known. */
export function downriggerDepth(
  trip: Trip,
  base: DepthBase,
  rods: CableSpread | undefined,
  memo: DepthMemo,
): LineDepth {
  const task = taskOf(trip, base, rods);
  return task.ok ? solved(trip, base, task, memo) : withoutDepth(base, task.why, task.lack);
}

/** What to solve for a line on a cable. */
export function taskOf(trip: Trip, base: DepthBase, rods: CableSpread | undefined): DownriggerTask | NoTask {
  const { cableRig } = base;
  const rig = trip.gear.rigs.get(base.rig);
  if (rig === undefined) return { ok: false, why: `${base.rig} isn't in the gear book` };
  if (cableRig === undefined || rods === undefined) {
    return {
      ok: false,
      why: `${rig.name} is stacked on ${rig.stackedOn}, which is no downrigger in the gear book`,
    };
  }
  const water = waterAndSpeed(base);
  return water.ok ? downriggerTask(trip.gear, cableRig, rods, water) : water;
}

function solved(trip: Trip, base: DepthBase, task: DownriggerTask, memo: DepthMemo): LineDepth {
  const { calibration, sharedFrom } = task;
  const answer = solveTask(task, memo);
  if (!answer.ok) {
    const lack = { at: "number", value: answer.outside?.value } as const;
    return { ...withoutDepth(base, refusalWords(trip.gear, answer), lack), calibration };
  }
  const rod = answer.rods.find((one) => one.id === base.rig);
  const whyNoLure =
    rod === undefined
      ? "no lure is stated"
      : base.setting.setbackM === undefined
        ? "its setback behind the release isn't stated"
        : null;
  const waterM = base.bottom?.waterM;
  const onRod = rod === undefined ? undefined : { rod: rod.id, release: rod.release, waterM };
  return {
    ...withoutDepth(base, ""),
    ball: placeOf(answer.ball, waterM),
    whyNoBall: null,
    lure: rod === undefined || whyNoLure !== null ? null : placeOf(rod.lure, waterM),
    slider: onRod === undefined ? null : sliderPlace(trip.gear, base.setting, task, onRod, memo),
    releaseDepthM: rod?.release.depthM ?? null,
    why: null,
    whyNoLure,
    topAngleDeg: answer.solved.topAngleDeg,
    surfaced: answer.solved.surfaced,
    conditioning: answer.solved.conditioning ?? null,
    otherBallDepthsM: answer.solved.otherBallDepthsM ?? [],
    calibration,
    sharedFrom,
  };
}
