/** The rule of one kind of line: stamp, verb, names in their slots, and the words that row has. */
import type { IndexedRow, ItemRow } from "../vocabulary.ts";
import { DATE, END, eitherOf, NAME, named, type Rule, START, TIME } from "./rule.ts";

const STAMP_SCOPES: readonly Rule[] = [
  { name: "constant.other.date.deepwake" },
  { name: "constant.other.time.deepwake" },
];

/** A line from its first word to its end. Properties are indented and have no clock time. */
export function lineRule(row: IndexedRow, isProperty: boolean): Rule {
  return { ...beginning(row, isProperty), end: "$", patterns: rowPatterns(row) };
}

/** A note, with the indented lines below it; a comment at the margin does not end it. */
export function noteRule(row: IndexedRow): Rule {
  return {
    ...beginning(row, false),
    end: String.raw`^(?=[^\s#])`,
    patterns: [
      named("comment.line.number-sign.deepwake", "^#.*$"),
      named("string.unquoted.note.deepwake", String.raw`^\s+\S.*$`),
      ...rowPatterns(row),
    ],
  };
}

function beginning(row: IndexedRow, isProperty: boolean): Rule {
  const indent = isProperty ? String.raw`^\s+` : String.raw`^\s*`;
  const date = String.raw`(?:(${DATE}),?\s+)?`;
  const time = isProperty ? "()" : String.raw`(?:(${TIME}),?\s+)?`;
  const verb = `(${eitherOf([row.verb, ...row.aliases])})${END}`;
  const slots = row.slots.map(() => String.raw`(?:,?\s+(${NAME}))?`).join("");
  const scopes = [...STAMP_SCOPES, { name: "keyword.control.deepwake" }, ...row.slots.map(slotScope)];
  return {
    begin: indent + date + time + verb + slots,
    beginCaptures: Object.fromEntries(scopes.map((scope, index) => [index + 1, scope])),
  };
}

function slotScope({ of }: IndexedRow["slots"][number]): Rule {
  if (of === "date") return { name: "constant.other.date.deepwake" };
  if (of === "unit") return { name: "keyword.other.unit.deepwake" };
  if (of === "count") return { name: "constant.numeric.deepwake" };
  return { patterns: [{ include: "#name" }] };
}

function rowPatterns(row: IndexedRow): Rule[] {
  const isName = (item: ItemRow): boolean => item.type.kind === "name";
  const isFlag = (item: ItemRow): boolean => item.type.kind === "flag";
  const names = wordsOf(row.items.filter(isName));
  const flags = wordsOf(row.items.filter(isFlag));
  const others = wordsOf(row.items.filter((item) => !isName(item) && !isFlag(item)));
  const rules: Rule[] = [];
  if (names.length > 0) {
    rules.push({
      match: String.raw`${START}(${eitherOf(names)}),?\s+(${NAME})`,
      captures: {
        1: { name: "support.function.attribute.deepwake" },
        2: { patterns: [{ include: "#name" }] },
      },
    });
  }
  if (flags.length > 0) rules.push(named("constant.language.deepwake", START + eitherOf(flags) + END));
  if (others.length > 0) {
    rules.push(named("support.function.attribute.deepwake", START + eitherOf(others) + END));
  }
  if (row.slots.some((slot) => slot.of === "unit"))
    rules.push(named("keyword.other.unit.deepwake", START + NAME));
  return [...rules, { include: "#values" }];
}

function wordsOf(items: readonly ItemRow[]): string[] {
  return items.flatMap((item) => [item.word, ...item.aliases]);
}
