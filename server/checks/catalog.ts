/** The one table of checks. Message texts and severities live here and nowhere else. */
import type { Gear } from "../model/gear-types.ts";
import type { CheckRow } from "./check.ts";
import { ageWords, lengthWords } from "./words.ts";

const check = <Data>(row: CheckRow<Data>): CheckRow<Data> => row;

/** A ball or lure near the bottom. */
export const TOUCHING_BOTTOM = check<{
  gear: Gear;
  what: "ball" | "lure";
  depthM: number;
  bottomShownM: number;
  bottomAgeMs: number;
}>({
  slug: "touching-bottom",
  severities: ["warning"],
  summary: "The computed depth of a ball or lure comes within the margin of the bottom.",
  quietWhen: "the line says on-bottom, or no bottom was read within the hour",
  isDoubt: true,
  isFixable: true,
  since: "0.1.0",
  message: ({ gear, what, depthM, bottomShownM, bottomAgeMs }) =>
    `The ${what} is about ${lengthWords(gear, depthM)} down; bottom last read ${lengthWords(gear, bottomShownM)}, ${ageWords(bottomAgeMs)} ago.`,
});

/** Every check, sorted by slug. */
// biome-ignore lint/suspicious/noExplicitAny: rows of different data stand in one list
export const CATALOG: readonly CheckRow<any>[] = [TOUCHING_BOTTOM];
