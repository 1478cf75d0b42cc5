/** Depths kept by value: the same rig in the same water is solved once, whatever line asks. */
import { type BandedDownrigger, rigParameters, solveDownriggerBand } from "../physics/downrigger-band.ts";
import { type BandedLongLine, solveLongLineBand } from "../physics/long-line-band.ts";
import { longLineParameters } from "../physics/long-line-parameters.ts";
import type { Refusal } from "../physics/refusal.ts";
import type { SliderDepth } from "../physics/slider.ts";
import type { DownriggerTask } from "./downrigger-input.ts";
import type { LongLineTask } from "./long-line-input.ts";

/** Solved rigs by what they were solved from. */
export interface DepthMemo {
  readonly answers: Map<string, BandedDownrigger | Refusal>;
  readonly longLines: Map<string, BandedLongLine | Refusal>;
  readonly sliders: Map<string, SliderDepth | Refusal>;
  /** How many were solved, for tests that count work. */
  solved: number;
}

/** A memo with nothing in it. */
export function createDepthMemo(): DepthMemo {
  return { answers: new Map(), longLines: new Map(), sliders: new Map(), solved: 0 };
}

/** Enough for ten seasons of one boat's settings; past it the memo starts anew. */
const MOST_ANSWERS = 20_000;

/** Solves a task, or gives the answer kept for an equal one. */
export function solveTask(task: DownriggerTask, memo: DepthMemo): BandedDownrigger | Refusal {
  const key = JSON.stringify([task.downrigger, task.spreads]);
  return kept(memo.answers, key, memo, () =>
    solveDownriggerBand(task.downrigger, rigParameters(task.spreads)),
  );
}

/** The same for a line that is on no downrigger. */
export function solveLongLineTask(task: LongLineTask, memo: DepthMemo): BandedLongLine | Refusal {
  const key = JSON.stringify([task.line, task.spreads]);
  return kept(memo.longLines, key, memo, () =>
    solveLongLineBand(task.line, longLineParameters(task.spreads)),
  );
}

/** The answer kept under a key, or a new one. */
export function kept<T>(answers: Map<string, T>, key: string, memo: DepthMemo, solve: () => T): T {
  const known = answers.get(key);
  if (known !== undefined) return known;
  const answer = solve();
  memo.solved++;
  if (answers.size >= MOST_ANSWERS) answers.clear();
  answers.set(key, answer);
  return answer;
}
