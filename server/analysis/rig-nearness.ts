/** How near the lines of two rigs come to each other, wherever both may stand and however deep both may run. */
import { closestApproach } from "../physics/closest-approach.ts";
import { shiftedCurve } from "../physics/curve.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import { type CurvePart, downriggerCurves, longLineCurves } from "../physics/rig-curves.ts";
import { type DrawnRig, drawnRig, keptApproach, type PartsApproach, towedKey } from "./curve-memo.ts";
import { type DepthMemo, solveLongLineTask, solveTask } from "./depth-memo.ts";
import type { WetRig, WetTask } from "./spread-at.ts";
import type { ShiftRange } from "./spread-geometry.ts";

/** A rig with what it hangs like and its lines drawn. */
export interface DrawnWetRig {
  readonly wet: WetRig;
  readonly task: WetTask;
  readonly drawn: DrawnRig;
}

/** Draws a rig's lines; `undefined` where they can't be solved or come up to the surface. */
export function drawWetRig(
  wet: WetRig,
  task: WetTask,
  turnRadiusM: number | undefined,
  memo: DepthMemo,
): DrawnWetRig | undefined {
  const { acrossM } = wet.place;
  const top = { behindM: 0, acrossM, depthM: 0 };
  const towed = task.kind === "downrigger" ? task.task.downrigger : task.task.line;
  const key = `${turnRadiusM} ${acrossM} ${towedKey(memo.curves, towed)}`;
  const drawn = drawnRig(memo.curves, key, () =>
    task.kind === "downrigger"
      ? downriggerCurves(task.task.downrigger, turnRadiusM, top)
      : longLineCurves(task.task.line, turnRadiusM, top),
  );
  return drawn === null ? undefined : { wet, task, drawn };
}

/**
 * Where two rigs come nearest, and the least distance that holds wherever both may stand and at both ends of the ranges
 * of both depths. Null where in one of these cases they stay farther apart than the margin.
 */
export function nearness(
  one: DrawnWetRig,
  other: DrawnWetRig,
  range: ShiftRange,
  marginM: number,
  memo: DepthMemo,
): PartsApproach | null {
  const key = [one.drawn.id, other.drawn.id, range.fromM, range.toM, marginM].join(" ");
  return keptApproach(memo.curves, key, () => {
    const usual = nearestParts(one.drawn.parts, other.drawn.parts, marginM, { acrossM: range.usualM });
    if (usual === undefined) return undefined;
    let farthestM = usual.distanceM;
    for (const otherwise of cases(one.task, other.task, range, memo)) {
      const parts = deeper(one.drawn.parts, otherwise.times ?? 1);
      const there = nearestParts(parts, other.drawn.parts, marginM, otherwise);
      if (there === undefined) return undefined;
      farthestM = Math.max(farthestM, there.distanceM);
    }
    return { ...usual, distanceM: farthestM };
  });
}

/** How the second rig is shifted against the first, m, and how many times as deep either is. */
interface Case {
  readonly acrossM: number;
  readonly behindM?: number;
  readonly times?: number;
  readonly otherTimes?: number;
}

/** Places tried between the two ends of a range of shifts. */
const PLACES = 5;

/** The likely case and each doubt by itself: the place across the boat, along it, and the two depths against each other. */
function* cases(one: WetTask, other: WetTask, range: ShiftRange, memo: DepthMemo): Generator<Case> {
  const { fromM, toM, usualM: acrossM } = range;
  for (let i = 0; i < PLACES; i++) yield { acrossM: fromM + (i / (PLACES - 1)) * (toM - fromM) };
  for (const way of [-1, 1]) yield { acrossM, behindM: way * DEFAULTS.rigSpacingM.value };
  const [share, otherShare] = [depthShare(one, memo), depthShare(other, memo)];
  for (const way of [-1, 1]) yield { acrossM, times: 1 + way * share, otherTimes: 1 - way * otherShare };
}

/** The nearest of all parts. */
function nearestParts(
  parts: readonly CurvePart[],
  others: readonly CurvePart[],
  withinM: number,
  { behindM = 0, acrossM, otherTimes = 1 }: Case,
): PartsApproach | undefined {
  let best: PartsApproach | undefined;
  for (const otherPart of others) {
    const curve = shiftedCurve(otherPart.curve, behindM, acrossM, otherTimes);
    for (const part of parts) {
      const found = closestApproach(part.curve, curve, best?.distanceM ?? withinM);
      if (found !== undefined) best = { ...found, part, otherPart };
    }
  }
  return best;
}

function deeper(parts: readonly CurvePart[], times: number): readonly CurvePart[] {
  return times === 1
    ? parts
    : parts.map((part) => ({ ...part, curve: shiftedCurve(part.curve, 0, 0, times) }));
}

/** How far a rig's depths may be off, as a share: the wider half of the 80 % range of its ball or lures. */
function depthShare({ kind, task }: WetTask, memo: DepthMemo): number {
  const answer = kind === "downrigger" ? solveTask(task, memo) : solveLongLineTask(task, memo);
  if (!answer.ok) return 0;
  const places = "rods" in answer ? [answer.ball, ...answer.rods.map((rod) => rod.lure)] : [answer.lure];
  return Math.max(
    ...places.map(({ depthM, lowM, highM }) =>
      depthM > 0 ? Math.max(depthM - lowM, highM - depthM) / depthM : 1,
    ),
  );
}
