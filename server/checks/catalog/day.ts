/** Checks of what the day says: times, rigs, depths, readings, fish. */
import type { Gear } from "../../model/gear-types.ts";
import { check } from "../check.ts";
import { ageWords, lengthWords } from "../words.ts";

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
