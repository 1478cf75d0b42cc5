/** Checks of a line's words, numbers and units. */
import type { Dimension } from "../../../grammar/units.ts";
import { check } from "../check.ts";
import { anyOf, didYouMean, measureNoun, measureWords, shown, withArticle } from "./sentences.ts";
import { type SyntaxProblem, syntaxSentence } from "./syntax-sentences.ts";

/** A line that can't be read as it stands. */
export const SYNTAX = check<SyntaxProblem>({
  slug: "syntax",
  severities: ["error"],
  summary: "A line can't be read as it stands.",
  quietWhen: "",
  isDoubt: false,
  isFixable: true,
  since: "0.1.0",
  message: syntaxSentence,
});

/** A word that the language doesn't have there. */
export const UNKNOWN_WORD = check<{
  role: "verb" | "item" | "unit" | "choice";
  word: string;
  verb: string;
  /** What could stand there, where that is a short list. */
  choices: readonly string[];
  near: readonly string[];
  /** The stray words in quotes, where they may be a remark, or the rest of a name. */
  quoted?: { readonly text: string; readonly isName: boolean } | undefined;
  /** Lines that say what an unknown verb says as an attribute. */
  saidOn?: readonly string[];
}>({
  slug: "unknown-word",
  severities: ["error"],
  summary: "A word is none of those that can stand there.",
  quietWhen: "",
  isDoubt: false,
  isFixable: true,
  since: "0.1.0",
  message: ({ role, word, verb, choices, near, quoted, saidOn = [] }) => {
    const said = {
      verb: verbLessSentence(word, saidOn),
      item: `${shown(word)} says nothing on ${withArticle(verb)} line.`,
      unit: `${shown(word)} is no unit.`,
      choice: `${shown(word)} can't follow ${verb}.`,
    }[role];
    const expected = choices.length === 0 || near.length > 0 ? "" : ` It takes ${anyOf(choices)}.`;
    return said + expected + didYouMean(near) + (quoted === undefined ? "" : quotedSentence(quoted));
  },
});

function verbLessSentence(word: string, saidOn: readonly string[]): string {
  if (saidOn.length > 0) return `${word} is said on ${withArticle(`${anyOf(saidOn)} line`)}.`;
  const isNumber = /^[+-]?[\d.]/u.test(word);
  return `No line starts with ${shown(word)}${isNumber ? ": first comes what happened, like set, catch or gps" : ""}.`;
}

function quotedSentence({ text, isName }: { readonly text: string; readonly isName: boolean }): string {
  return isName ? ` A name of several words goes in quotes: ${text}.` : ` A remark goes in quotes: ${text}.`;
}

/** A number that is not written as one. */
export const NUMBER_FORMAT = check<{
  text: string;
  mend: string | null;
  example: string;
  /** The attribute that takes no range, where one was written for it. */
  oneFigure?: string | undefined;
}>({
  slug: "number-format",
  severities: ["error"],
  summary: "A number has a comma, a dash or a slash in it, or is no number at all.",
  quietWhen: "",
  isDoubt: false,
  isFixable: true,
  since: "0.1.0",
  message: ({ text, mend, example, oneFigure }) => {
    if (oneFigure !== undefined) return `${oneFigure} is one figure, not a range like ${shown(text)}.`;
    if (mend === null) return `${shown(text)} can't be read as a number; write it like ${example}.`;
    if (mend.includes(" to ")) return `A range is written with "to": ${mend}, not ${shown(text)}.`;
    return `Write ${mend} for ${shown(text)}: a number has digits and a point, nothing else.`;
  },
});

/** A measure without a unit. */
interface UnitlessMeasure {
  readonly number: string;
  /** The attribute it belongs to; undefined where that isn't written. */
  readonly word: string | undefined;
}

const asWritten = ({ word, number }: UnitlessMeasure): string =>
  word === undefined ? number : `${word} ${number}`;

/** A number that could be anything. */
export const UNIT_MISSING = check<UnitlessMeasure & { units: readonly string[] }>({
  slug: "unit-missing",
  severities: ["error"],
  summary: "A number has no unit, and the gear book states none for it.",
  quietWhen: "the boat's units line has a unit of that kind; of leadcore, where it is too much to be colors",
  isDoubt: false,
  isFixable: true,
  since: "0.1.0",
  message: ({ units, ...measure }) =>
    `${asWritten(measure)} what? Write ${anyOf(units.map((unit) => `${measure.number} ${unit}`))}.`,
});

/** A number that leans on the book. */
export const UNIT_NOT_WRITTEN = check<UnitlessMeasure & { unit: string }>({
  slug: "unit-not-written",
  severities: ["hint"],
  summary: "A number takes its unit from the gear book.",
  quietWhen: "it is not switched on, or the unit is written",
  isDoubt: false,
  isFixable: true,
  isOffByDefault: true,
  since: "0.1.0",
  message: ({ unit, ...measure }) =>
    `${asWritten(measure)} means ${measure.number} ${unit} only as long as the gear book says so. Write the unit, and a new book can't change this line.`,
});

/** A length where a temperature belongs. */
export const UNIT_MISMATCH = check<{
  word: string;
  unit: string;
  found: Dimension;
  wants: Dimension | null;
}>({
  slug: "unit-mismatch",
  severities: ["error"],
  summary: "A unit measures something else than what is asked for.",
  quietWhen: "",
  isDoubt: false,
  isFixable: true,
  since: "0.1.0",
  message: ({ word, unit, found, wants }) =>
    wants === null
      ? `${word} is a plain number; take ${unit} away.`
      : `${word} needs ${measureWords(wants)}; ${unit} measures ${measureNoun(found)}.`,
});

/** Characters that turn the reading direction without being seen. */
export const BIDI_CONTROL = check<{ count: number }>({
  slug: "bidi-control",
  severities: ["warning"],
  summary: "A line holds invisible characters that change its reading direction.",
  quietWhen: "",
  isDoubt: true,
  isFixable: true,
  since: "0.1.0",
  message: ({ count }) =>
    `${count === 1 ? "An invisible character turns" : `${count} invisible characters turn`} the reading direction here: the line may not say what it seems to.`,
});
