/** Depths kept by value: the same rig in the same water is solved once, whatever line asks. */
import { type BandedDownrigger, rigParameters, solveDownriggerBand } from "../physics/downrigger-band.ts";
import type { Refusal } from "../physics/refusal.ts";
import type { DownriggerTask } from "./downrigger-input.ts";

/** Solved downriggers by what they were solved from. */
export interface DepthMemo {
  readonly answers: Map<string, BandedDownrigger | Refusal>;
  /** How many were solved, for tests that count work. */
  solved: number;
}

/** A memo with nothing in it. */
export function createDepthMemo(): DepthMemo {
  return { answers: new Map(), solved: 0 };
}

/** Enough for ten seasons of one boat's settings; past it the memo starts anew. */
const MOST_ANSWERS = 20_000;

/** Solves a task, or gives the answer kept for an equal one. */
export function solveTask(task: DownriggerTask, memo: DepthMemo): BandedDownrigger | Refusal {
  const key = JSON.stringify([task.downrigger, task.spreads]);
  const known = memo.answers.get(key);
  if (known !== undefined) return known;
  const answer = solveDownriggerBand(task.downrigger, rigParameters(task.spreads));
  memo.solved++;
  if (memo.answers.size >= MOST_ANSWERS) memo.answers.clear();
  memo.answers.set(key, answer);
  return answer;
}
