/** Checks of the measures on a line of the day. */
import type { DayBound } from "../../model/day-bounds.ts";
import { check } from "../check.ts";

/** What is believed, by attribute. */
const BELIEVED: Readonly<Record<string, (most: string) => string>> = {
  board: (most) => `boards run up to ${most} to the side`,
  leader: (most) => `leaders are up to ${most} long`,
  fixed: (most) => `sliders are pinned up to ${most} above the release`,
  behind: (most) => `lines trail up to ${most} behind`,
  out: (most) => `up to ${most} of cable is let down`,
  bottom: (most) => `the lakes are up to ${most} deep`,
  marks: (most) => `the lakes are up to ${most} deep`,
  bait: (most) => `the lakes are up to ${most} deep`,
  point: (most) => `the lakes are up to ${most} deep`,
};

/** What a word of the day's lines is called in a sentence. */
const NOUNS: Readonly<Record<string, string>> = {
  above: "clip above the ball",
  fixed: "pin above the release",
  out: "length of cable out",
  behind: "distance behind",
  bottom: "bottom",
  marks: "depth of marks",
  bait: "depth of bait",
  point: "depth",
};

/** A length that can't be, or that nobody has. */
export const LENGTH_IMPLAUSIBLE = check<
  { written: string; bound: DayBound; slips: readonly string[] } & { isTooLittle: boolean }
>({
  slug: "length-implausible",
  severities: ["error", "warning"],
  summary: "A length or depth on a line of the day is below zero, or beyond any that is trolled or sounded.",
  quietWhen: "the measure has no unit; in salt water, however deep it is",
  isDoubt: true,
  isFixable: true,
  since: "0.1.0",
  message: ({ written, bound, slips, isTooLittle }) => {
    const { word, low, high, unit } = bound;
    const noun = NOUNS[word] ?? word;
    const meant = slips.length === 0 ? "" : ` Was ${slips.join(" or ")} meant?`;
    if (isTooLittle) {
      const least = low === 0 ? "it is zero or more" : `it is ${low} ${unit} or more`;
      return `A ${noun} of ${written} can't be: ${least}.${meant}`;
    }
    const believed = BELIEVED[word]?.(`${high} ${unit}`) ?? `up to ${high} ${unit} is believed`;
    return `A ${noun} of ${written} is doubtful: ${believed}.${meant}`;
  },
});
