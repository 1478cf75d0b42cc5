import { UNIT_MISSING } from "./catalog/language.ts";
import type { Rule } from "./check.ts";
import { unitFix, unitlessNumbers } from "./unitless.ts";

/** Flags a number without a unit where the boat's book states none of that kind. Never guessed. */
export const unitMissing: Rule = ({ analysis, report }) => {
  for (const unitless of unitlessNumbers(analysis)) {
    if (unitless.meant !== undefined) continue;
    const { number, word, units } = unitless;
    const fixes = units.map((unit) => unitFix(analysis.uri, unitless, unit, units.length === 1));
    report(UNIT_MISSING, unitless.place, { number, word, units }, { fixes });
  }
};
