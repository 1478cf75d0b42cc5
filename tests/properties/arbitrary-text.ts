/** Texts of every kind: any code units, soups of the language's own words, and mutated examples. */
import fc from "fast-check";
import { UNITS } from "../../grammar/units.ts";
import { ALL_ROWS } from "../../grammar/vocabulary.ts";
import { EXAMPLES } from "./grammar-settings.ts";

/** Any UTF-16 code units, halves of surrogate pairs and NUL among them. */
export const codeUnits: fc.Arbitrary<string> = fc
  .array(
    fc.oneof(fc.nat(0x7f), fc.nat(0xffff), fc.constantFrom(0, 9, 10, 13, 32, 34, 35, 44, 0xfeff, 0xd83d)),
    {
      maxLength: 80,
    },
  )
  .map((codes) => String.fromCharCode(...codes));

const WORDS = [
  ...new Set(ALL_ROWS.flatMap((row) => [row.verb, ...row.aliases, ...row.items.map((item) => item.word)])),
  ...UNITS.flatMap((unit) => [unit.unit, ...unit.aliases]),
];
const SCRAPS = [
  ..."to all P1 king 72 72ft 1,200 70-95 -1.5 .5 72. 44 46.1N 086 21.7W 44.7683 -86.3617 05:45 ~7:15".split(
    " ",
  ),
  ...'25:00 01:30-05:00 2031-06-21 2031-02-30 "open "a" """" # #c , ,, a,'.split(" "),
  '"two words"',
];
const SPACES = [" ", " ", " ", "  ", "\t", ", ", "\n", "\n  ", "\r\n", "\r", "\u00a0", ""];

/** The language's own words, numbers and marks, in no order. */
export const wordSoup: fc.Arbitrary<string> = fc
  .array(
    fc.tuple(fc.oneof(fc.constantFrom(...WORDS), fc.constantFrom(...SCRAPS)), fc.constantFrom(...SPACES)),
    {
      maxLength: 30,
    },
  )
  .map((pairs) => pairs.map(([word, space]) => word + space).join(""));

/** A few lines of an example. */
export const exampleLines: fc.Arbitrary<string> = fc
  .tuple(fc.constantFrom(...EXAMPLES), fc.nat(1000), fc.integer({ min: 1, max: 12 }))
  .map(([text, from, count]) => {
    const lines = text.split(/(?<=\n)/u);
    const start = from % lines.length;
    return lines.slice(start, start + count).join("");
  });

/** One change to a text: what is taken out at a place between 0 and 1, and what is put there. */
export type Edit = readonly [place: number, taken: number, put: string];

export const edit: fc.Arbitrary<Edit> = fc.tuple(
  fc.double({ min: 0, max: 1, noNaN: true }),
  fc.oneof(fc.nat(3), fc.nat(60)),
  fc.oneof(
    fc.constant(""),
    fc.constantFrom(...SCRAPS, ...SPACES, "trip ", "note\n", "boat B\n"),
    fc.constantFrom(...WORDS),
    codeUnits,
  ),
);

/** Does an edit. */
export function applyEdit(text: string, [place, taken, put]: Edit): string {
  const at = Math.floor(place * text.length);
  return text.slice(0, at) + put + text.slice(at + taken);
}

/** A few lines of an example, with a few edits. */
export const mutatedExample: fc.Arbitrary<string> = fc
  .tuple(exampleLines, fc.array(edit, { minLength: 1, maxLength: 5 }))
  .map(([text, edits]) => edits.reduce(applyEdit, text));

/** Any text at all. */
export const anyText: fc.Arbitrary<string> = fc.oneof(codeUnits, wordSoup, mutatedExample, exampleLines);
