/** What a figure is held to: a bound of its own, or a ratio to a peer measured in the same run. */
export type Goal =
  | { kind: "at-most"; bound: number }
  | { kind: "times-faster"; times: number }
  | { kind: "times-at-most"; times: number };

/** One line of a table: our figure, and the goal and the peer it is compared with. */
export interface Row {
  measure: string;
  unit: "ms" | "µs" | "MB" | "KB";
  /** Our figure; absent while the part that it measures is not built. */
  ours?: number | undefined;
  goal?: Goal;
  peer?: string;
  theirs?: number | undefined;
}

/** One table. */
export interface Area {
  title: string;
  rows: readonly Row[];
  /** What a reader must know before quoting the table, and why rows are empty. */
  notes: readonly string[];
}

/** How long the bench may take. */
export interface Effort {
  quick: boolean;
}

/** Whether the goal is met; nothing when there is no goal or a figure is absent. */
export function isMet(row: Row): boolean | undefined {
  const { goal, ours, theirs } = row;
  if (!goal || ours === undefined) return undefined;
  if (goal.kind === "at-most") return ours <= goal.bound;
  if (theirs === undefined) return undefined;
  return goal.kind === "times-faster" ? theirs >= goal.times * ours : ours <= goal.times * theirs;
}

/** The value below which a share of the samples lies, interpolated; absent without samples. */
export function quantile(samples: readonly number[], share: number): number | undefined {
  if (samples.length === 0) return undefined;
  const sorted = samples.toSorted((a, b) => a - b);
  const place = (sorted.length - 1) * share;
  const low = sorted[Math.floor(place)] ?? 0;
  const high = sorted[Math.ceil(place)] ?? low;
  return low + (high - low) * (place - Math.floor(place));
}

/** The middle of the samples; absent without samples. */
export function median(samples: readonly number[]): number | undefined {
  return quantile(samples, 0.5);
}
