import { UNIT_NOT_WRITTEN } from "./catalog/language.ts";
import type { Rule } from "./check.ts";
import { unitFix, unitlessNumbers } from "./unitless.ts";

/** Points out numbers that take their unit from the gear book: a later edit of the book would change them. */
export const unitNotWritten: Rule = ({ analysis, report }) => {
  for (const unitless of unitlessNumbers(analysis)) {
    const { number, word, meant, place } = unitless;
    if (meant === undefined) continue;
    const fixes = [unitFix(analysis.uri, unitless, meant, true)];
    report(UNIT_NOT_WRITTEN, place, { number, word, unit: meant }, { fixes });
  }
};
