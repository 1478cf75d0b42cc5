/** Depths kept by value: the same rig in the same water is solved once, whatever line asks. */
import { type BandedDownrigger, rigParameters, solveDownriggerBand } from "../physics/downrigger-band.ts";
import { type BandedLongLine, solveLongLineBand } from "../physics/long-line-band.ts";
import { longLineParameters } from "../physics/long-line-parameters.ts";
import type { Refusal } from "../physics/refusal.ts";
import type { SliderDepth } from "../physics/slider.ts";
import { type CurveMemo, createCurveMemo } from "./curve-memo.ts";
import type { DownriggerTask } from "./downrigger-input.ts";
import type { LongLineTask } from "./long-line-input.ts";

/** Solved rigs by what they were solved from. */
export interface DepthMemo {
  readonly answers: Map<string, BandedDownrigger | Refusal>;
  readonly longLines: Map<string, BandedLongLine | Refusal>;
  /** The same by the very task, which spares its key. */
  readonly ofTasks: WeakMap<DownriggerTask, BandedDownrigger | Refusal>;
  readonly ofLongLineTasks: WeakMap<LongLineTask, BandedLongLine | Refusal>;
  readonly sliders: Map<string, SliderDepth | Refusal>;
  /** Lines as drawn for the distances between them. */
  readonly curves: CurveMemo;
  /** How many were solved, for tests that count work. */
  solved: number;
}

/** A memo with nothing in it. */
export function createDepthMemo(): DepthMemo {
  return {
    answers: new Map(),
    longLines: new Map(),
    ofTasks: new WeakMap(),
    ofLongLineTasks: new WeakMap(),
    sliders: new Map(),
    curves: createCurveMemo(),
    solved: 0,
  };
}

/** Enough for ten seasons of one boat's settings; past it the memo starts anew. */
const MOST_ANSWERS = 20_000;

/** Solves a task, or gives the answer kept for the very same or an equal one. */
export function solveTask(task: DownriggerTask, memo: DepthMemo): BandedDownrigger | Refusal {
  const known = memo.ofTasks.get(task);
  if (known !== undefined) return known;
  const key = JSON.stringify([task.downrigger, task.spreads]);
  const answer = kept(memo.answers, key, memo, () =>
    solveDownriggerBand(task.downrigger, () => rigParameters(task.spreads)),
  );
  memo.ofTasks.set(task, answer);
  return answer;
}

/** The same for a line that is on no downrigger. */
export function solveLongLineTask(task: LongLineTask, memo: DepthMemo): BandedLongLine | Refusal {
  const known = memo.ofLongLineTasks.get(task);
  if (known !== undefined) return known;
  const key = JSON.stringify([task.line, task.spreads]);
  const answer = kept(memo.longLines, key, memo, () =>
    solveLongLineBand(task.line, () => longLineParameters(task.spreads)),
  );
  memo.ofLongLineTasks.set(task, answer);
  return answer;
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
