/** The depths of a line that is on no downrigger: leadcore, copper, wire, flat lines, divers, from rod tip or board. */
import type { Trip } from "../model/trip.ts";
import { type DepthMemo, solveLongLineTask } from "./depth-memo.ts";
import { placeOf } from "./depth-place.ts";
import type { LineDepth } from "./line-depth.ts";
import { type LongLineTask, longLineTask } from "./long-line-input.ts";
import { type NoTask, no } from "./no-task.ts";
import { refusalWords } from "./refusal-words.ts";
import { type DepthBase, waterAndSpeed, withoutDepth } from "./without-depth.ts";

/** Depths of one line. Its ball is null with a reason that says what kind of line it is. */
export function longLineDepth(trip: Trip, base: DepthBase, isTripped: boolean, memo: DepthMemo): LineDepth {
  const none = { ...withoutDepth(base, ""), sideM: sideOf(trip, base) };
  const task = taskOf(trip, base, isTripped);
  if (!task.ok) return { ...none, why: task.why, whyNoBall: task.why, lack: task.lack };
  const { calibration, sharedFrom } = task;
  const answer = solveLongLineTask(task, memo);
  if (!answer.ok) {
    const why = refusalWords(trip.gear, answer);
    const lack = { at: "number", value: answer.outside?.value } as const;
    return { ...none, calibration, why, whyNoBall: why, lack };
  }
  const waterM = base.bottom?.waterM;
  const { solved } = answer;
  return {
    ...none,
    whyNoBall: `${base.rig} is no downrigger and has no ball`,
    weight: task.jointIs === undefined ? null : placeOf(answer.joint, waterM),
    weightIs: task.jointIs,
    lure: placeOf(answer.lure, waterM),
    backingM: solved.backingM,
    assumed: task.assumed,
    why: null,
    topAngleDeg: solved.topAngleDeg,
    surfaced: solved.surfaced,
    conditioning: solved.conditioning ?? null,
    otherBallDepthsM: solved.otherDepthsM,
    calibration,
    sharedFrom,
  };
}

function sideOf(trip: Trip, { rig, setting }: DepthBase): number | null {
  return setting.boardM ?? trip.gear.rigs.get(rig)?.boardM ?? null;
}

function taskOf(trip: Trip, base: DepthBase, isTripped: boolean): LongLineTask | NoTask {
  const { gear } = trip;
  const rig = gear.rigs.get(base.rig);
  if (rig === undefined) return no(`${base.rig} isn't in the gear book`);
  if (rig.kind === "stacked")
    return no(`${rig.name} is stacked on ${rig.stackedOn}, which is no downrigger in the gear book`);
  if (rig.kind === "jig") return no(`${rig.name} is cast or jigged, and hangs where it is let down`);
  if (rig.kind === "diver" && isTripped)
    return no(`${rig.name}'s diver was tripped by a fish and pulls again only after again`);
  const water = waterAndSpeed(base);
  return water.ok ? longLineTask(gear, rig, base.setting, water) : water;
}
