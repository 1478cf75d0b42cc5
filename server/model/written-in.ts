/** A value written in another unit, so that it still means the same to the precision it was written with. */
import { fromSi, toSi, type UnitRow } from "../../grammar/units.ts";

/** A unit that needs more decimals than this for a value is none to write it in. */
const MOST_DECIMALS = 6;

/**
 * The number to write for a value in SI. `stepSi` is the step of the last place it was written with, SI. The last place
 * of the new number is the one nearest to it in size, or a finer one where rounding to that would change what was written.
 * Undefined where no reasonable number of decimals does.
 */
export function writtenIn(valueSi: number, stepSi: number, unit: UnitRow): string | undefined {
  const coarsest = Math.max(0, Math.round(-Math.log10(stepSi / unit.factor)));
  for (let decimals = coarsest; decimals <= MOST_DECIMALS; decimals++) {
    const text = fromSi(valueSi, unit).toFixed(decimals);
    const isSame = Math.abs(toSi(Number(text), unit) - valueSi) <= (stepSi / 2) * (1 + 1e-9);
    if (isSame) return Number(text) === 0 ? text.replace("-", "") : text;
  }
  return undefined;
}

/** The step of the last place of a number in a unit, SI: of `2.30 ft` a hundredth of a foot. */
export function stepOf(number: string, unit: UnitRow): number {
  const decimals = number.split(".")[1]?.length ?? 0;
  return unit.factor * 10 ** -decimals;
}
