/** What the formatter makes of lines, done by the formatter. */
import { formatText } from "../../grammar/format.ts";
import { parse } from "../../grammar/parse.ts";
import { table } from "./generated-parts.ts";

/** One line for each thing the formatter does, and does not do. */
const TYPED: readonly (readonly [line: string, what: string])[] = [
  ["5:14   set C1   out 90 ft", "one blank between words, two digits in the hour"],
  ["SET C1 Out 90 Feet", "words and units in their one spelling"],
  ["set C1 out 72ft", "a blank between number and unit; digits and unit stay"],
  ["set C1, out 90 ft, lure white-fly", "separating commas go"],
  ["profile 0 ft 61 F 30 ft 58 F", "but stand between the points of a profile"],
  ["turn right to 5", "three digits in a course"],
  ["gps at 44°46.1'N 86°21.7'W", "a position without its marks"],
  ["catch P1 King 35 in 18 lb", "names and the order of words stay"],
  ["pull P1 # all in", "two blanks before a comment"],
  ["   06:00 drift", "events at the margin"],
  ["set P1 out 72,5 ft", "a line that can't be read stays as it is"],
];

/** A table of lines as typed and as formatted. */
export function formatTable(): string {
  return table(
    ["Typed", "Formatted", ""],
    TYPED.map(([line, what]) => [`\`${line}\``, `\`${formatText(parse(line))}\``, what]),
  );
}
