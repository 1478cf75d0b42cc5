/** How far the rods clipped to a cable lift its ball: their pull takes up some of what holds it down. */
import type { CableSpread, Timeline } from "../model/timeline.ts";
import type { Trip } from "../model/trip.ts";
import { type DepthMemo, solveTask } from "./depth-memo.ts";
import { placeOf } from "./depth-place.ts";
import { downriggerTask } from "./downrigger-input.ts";
import type { LineDepth } from "./line-depth.ts";
import { waterAndSpeed } from "./without-depth.ts";

/** What the rods on a line's cable do to its ball. */
export interface RodLift {
  readonly rods: readonly string[];
  /** How much deeper the bare ball would be, m. */
  readonly byM: number;
}

/** Solves the cable without its rods; undefined without a ball in the water, or where no rod is clipped. */
export function rodLift(
  { gear }: Trip,
  timeline: Timeline,
  depth: LineDepth,
  memo: DepthMemo,
): RodLift | undefined {
  const { cableRig, ball, event } = depth;
  const spread = timeline.spreadAfter.get(event.lineIndex);
  const water = waterAndSpeed(depth);
  if (cableRig === undefined || ball === null || ball.onBottom || spread === undefined || !water.ok)
    return undefined;
  const clipped = downriggerTask(gear, cableRig, spread, water);
  const bare = downriggerTask(gear, cableRig, unclipped(spread), water);
  if (!clipped.ok || !bare.ok || clipped.downrigger.rods.length === 0) return undefined;
  const answer = solveTask(bare, memo);
  if (!answer.ok) return undefined;
  const rods = clipped.downrigger.rods.map((rod) => rod.id);
  return { rods, byM: placeOf(answer.ball, depth.bottom?.waterM).depthM - ball.depthM };
}

function unclipped(spread: CableSpread): CableSpread {
  return new Map([...spread].map(([name, rod]) => [name, { ...rod, isClipped: false }]));
}
