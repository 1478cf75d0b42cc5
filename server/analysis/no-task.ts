/** Why a line has no depth: in words, and as what would have to be written, and where. */

/** What is missing, or can't be, for a depth. Undefined where another check speaks of it, or nothing can be written. */
export type DepthLack =
  /** A line of the gear book doesn't say enough: `word` is what it would have to have. */
  | { readonly at: "gear"; readonly of: "rig" | "cable"; readonly name: string; readonly word: string }
  /** A line of the gear book names a piece that no book describes. */
  | { readonly at: "name"; readonly of: "rig"; readonly name: string; readonly word: string }
  /** The line of the day doesn't say it. */
  | { readonly at: "line"; readonly rig: string; readonly word: string }
  /** A number beyond what depths are computed for, in SI; undefined where it is no single one. */
  | { readonly at: "number"; readonly value: number | undefined };

/** Why a depth can't be computed, as a sentence part without capital or stop. */
export interface NoTask {
  readonly ok: false;
  readonly why: string;
  readonly lack?: DepthLack;
}

/** Why a calibration's drag can't be used; undefined where it can. */
export function whyNoDrag(rig: string, dragRatio: number | undefined): NoTask | undefined {
  if (dragRatio === undefined || dragRatio > 0) return undefined;
  const why = `the drag on ${rig}'s calibrate line is ${dragRatio}, and a line's is above zero`;
  return no(why, { at: "number", value: dragRatio });
}

/** No depth, and why. */
export function no(why: string, lack?: DepthLack): NoTask {
  return lack === undefined ? { ok: false, why } : { ok: false, why, lack };
}
