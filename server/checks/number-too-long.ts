import type { Part, Value } from "../../grammar/journal.ts";
import { NUMBER_FORMAT } from "./catalog/language.ts";
import type { Place, Rule } from "./check.ts";
import { allUnderOpeners, onEachLine } from "./under-openers.ts";

/** Flags a number of so many digits that nothing can be reckoned with it. */
export const numberTooLong: Rule = ({ analysis, report }) => {
  for (const { number, ...place } of allUnderOpeners(analysis, endlessIn))
    report(NUMBER_FORMAT, place, { text: number, mend: null, example: "72.5" });
};

const endlessIn = onEachLine(({ line, lineIndex }): (Place & { readonly number: string })[] =>
  line.items.flatMap(({ value, start, stop }) => {
    const number = numbersOf(value).find((one) => !Number.isFinite(Number(one)));
    return number === undefined ? [] : [{ lineIndex, start, stop, number }];
  }),
);

function numbersOf(value: Value): string[] {
  const ofParts = (parts: readonly Part[]): string[] => parts.map(({ number }) => number);
  switch (value.kind) {
    case "number":
      return [value.number];
    case "quantity":
      return ofParts(value.parts);
    case "range":
      return ofParts([...value.low, ...value.high]);
    case "point":
      return ofParts([...value.depth, ...value.temp]);
    default:
      return [];
  }
}
