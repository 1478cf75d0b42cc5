/**
 * The TextMate grammar, made from the vocabulary: each kind of line has a rule of its own, so that a rig called `out`
 * is colored as a name and `slider` as what it is on that line. Only generic scope names, which every theme knows.
 */
import { UNITS } from "../units.ts";
import { VOCABULARY } from "../vocabulary.ts";
import { lineRule, noteRule } from "./line-rules.ts";
import { DATE, END, eitherOf, NAME, named, type Rule, START, TIME } from "./rule.ts";

const UNIT = eitherOf(UNITS.flatMap((unit) => [unit.unit, ...unit.aliases]));
const NUMBER = String.raw`[+-]?(?:\d+(?:\.\d+)?|\.\d+)`;

/** What may stand on any line, after the line's own words. */
const VALUES: readonly Rule[] = [
  named("comment.line.number-sign.deepwake", `${START}#.*$`),
  {
    name: "string.quoted.double.deepwake",
    match: `${START}"(?:[^"]|"")*"${END}`,
    captures: { 0: { patterns: [named("constant.character.escape.deepwake", '(?<=.)""(?=.)')] } },
  },
  named("constant.other.date.deepwake", START + DATE + END),
  named("constant.other.time.deepwake", START + TIME + END),
  named("constant.numeric.position.deepwake", String.raw`${START}[\d.]+[°'′"″\d.]*(?i:[NSEW])${END}`),
  named("keyword.operator.range.deepwake", String.raw`${START}(?i:to)(?=\s+[+\-.\d])`),
  {
    match: String.raw`${START}(${NUMBER})(?:\s*(${UNIT}))?${END}`,
    captures: {
      1: { name: "constant.numeric.deepwake" },
      2: { name: "keyword.other.unit.deepwake" },
    },
  },
];

/** The whole grammar, as it is written to `deepwake.tmLanguage.json`. */
export function textmateGrammar(): Rule {
  const rows = VOCABULARY.rows.map((row) => [row, `${row.place}-${row.verb}`] as const);
  const isProperty = (place: string): boolean => place === "boat" || place === "trip";
  const note = rows.filter(([row]) => row.verb === "note");
  const properties = rows.filter(([row]) => isProperty(row.place));
  const others = rows.filter(([row]) => !isProperty(row.place) && row.verb !== "note");
  return {
    name: "Deepwake",
    scopeName: "source.deepwake",
    patterns: [...note, ...properties, ...others]
      .map(([, key]) => ({ include: `#${key}` }))
      .concat({ include: "#values" }),
    repository: {
      values: { patterns: VALUES },
      name: {
        patterns: [
          { match: '"(?:[^"]|"")*"', name: "string.quoted.double.deepwake" },
          { match: NAME, name: "variable.other.deepwake" },
        ],
      },
      ...Object.fromEntries(
        rows.map(([row, key]) => [
          key,
          row.verb === "note" ? noteRule(row) : lineRule(row, isProperty(row.place)),
        ]),
      ),
    },
  };
}
