/** One sentence for every way in which a line can fail to be read. */
import type { SyntaxReason } from "../../../grammar/issues.ts";
import { anyOf, shown, slotWords, valueWords } from "./sentences.ts";

type Reason = SyntaxReason["reason"];
type Of<R extends Reason> = Extract<SyntaxReason, { reason: R }>;

/** A reason, and the text it is about. */
export type SyntaxProblem = SyntaxReason & {
  readonly typed: string;
  /** What the line may have been meant to say there. */
  readonly meant?: readonly string[];
  /** The two that are typed are one, in two units. */
  readonly isOneMeasure?: boolean;
  /** It is indented as it should be, and other lines stand between it and the line that it belongs under. */
  readonly isParted?: boolean;
};

const SENTENCES: { readonly [R in Reason]: (problem: Of<R> & SyntaxProblem) => string } = {
  "missing-slot": ({ verb, label, before }) =>
    before === ""
      ? `${verb} needs ${slotWords(label).replace(/,$/u, "")}.`
      : `${verb} needs ${slotWords(label)} before ${before}.`,
  "missing-value": ({ word, wants, found, meant = [] }) =>
    meant.length > 0
      ? wordFirst(anyOf(meant))
      : `${word} needs ${valueWords(wants)}${found === "" ? "." : `; ${shown(found)} is none.`}`,
  "missing-item": ({ verb, needs, example }) =>
    needs.length > 1
      ? `Say what the ${verb} is: ${anyOf(needs)}, as in: ${example}`
      : `This ${verb} line says too little; it is written like: ${example}`,
  "nothing-happened": ({ typed }) => nothingHappened(typed),
  "stamp-in-property": ({ verb }) => `No date before ${verb}: what stands under a trip holds for all of it.`,
  "too-long": ({ length, longest }) =>
    `This line has ${length} characters; lines of more than ${longest} are kept as they are and not read.`,
  "open-quote": () => "A quote is opened here and never closed.",
  "stray-text": ({ text, verb, typed, meant = [] }) =>
    meant.length > 0 ? whatIs(typed, meant) : `Nothing on this ${verb} line takes ${shown(text)}.`,
  "no-range": ({ word }) => `${word} is one figure, not a range.`,
  exclusive: ({ word, other }) => `${other} and ${word} can't both be so; keep one.`,
  repeated: ({ word, typed, meant = [], isOneMeasure = false }) => {
    const [only, ...others] = meant;
    if (isOneMeasure) return `${typed} is ${anyOf(meant)}: write it so.`;
    if (only === undefined) return `${word} is said twice on this line; keep one.`;
    return others.length > 0 ? whatIs(typed, meant) : wordFirst(only);
  },
  "bad-clock": ({ text }) => `${shown(text)} is no time of day; write it like 05:14.`,
  "bad-date": ({ text }) => `${shown(text)} is no day of the calendar; write it like 2031-06-21.`,
  "bad-position": ({ text }) =>
    `${shown(text)} is no position; write it like 44 46.1N 086 21.7W or 44.7683 -86.3617.`,
  "bad-bearing": ({ text }) => `${shown(text)} is no course; one is written like 310, from 000 to 360.`,
  "bad-count": ({ text }) =>
    /^(?:[+-][\d.]+|\d+\.\d+)$/u.test(text)
      ? `${shown(text)} can't be; write a whole number above zero, like 6.`
      : `${shown(text)} is no plain number; write it without a unit, like 6.`,
  "out-of-place": ({ verb, belongs, isParted = false }) => {
    if (belongs === "margin")
      return `${verb} stands at the margin, or has a clock before it; here it is indented.`;
    return isParted
      ? `${verb} goes right under its ${belongs} line; move it up, above what stands between them.`
      : `${verb} belongs under a ${belongs} line, indented.`;
  },
  "by-how-much": ({ word, meant: [meant] = [] }) =>
    `Write the amount afterwards, not the change: ${meant ?? `like ${word} 90 ft`}.`,
  "which-measure": ({ number, words }) => `${number} of what: ${anyOf(words)}? Write its unit.`,
};

/** What is wrong with a line, and what was expected. */
export function syntaxSentence(problem: SyntaxProblem): string {
  const sentence = SENTENCES[problem.reason] as (problem: SyntaxProblem) => string;
  return sentence(problem);
}

const wordFirst = (meant: string): string => `Each word stands before its number: write ${meant}.`;
const whatIs = (typed: string, meant: readonly string[]): string =>
  `What is ${typed}? Write ${anyOf(meant)}.`;

function nothingHappened(typed: string): string {
  const stamp = typed.trim();
  if (/^~?\d{1,2}:\d{2}/u.test(stamp)) return `A clock alone: what happened at ${stamp}?`;
  if (/^\d{4}-\d{2}-\d{2}/u.test(stamp)) {
    const [day = "", clock] = stamp.split(/\s+/u);
    return clock === undefined
      ? `A date alone: what happened on ${day}?`
      : `A date and a clock alone: what happened on ${day} at ${clock}?`;
  }
  return `There is nothing here but ${shown(stamp)}.`;
}
