/** The rows of a let-out table where nobody says which. */
import { findUnit, toSi } from "../../grammar/units.ts";
import { lengthUnit } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";

/** Where they start and end and how far they are apart, in the unit the boat reads depths in: 20 to 120 ft, 5 to 40 m. */
export function usualRows(gear: Gear): {
  readonly fromM: number;
  readonly toM: number;
  readonly stepM: number;
} {
  const unit = findUnit(lengthUnit(gear) === "m" ? "m" : "ft");
  const [from = 0, to = 0, step = 0] = unit?.unit === "m" ? [5, 40, 5] : [20, 120, 10];
  const inM = (value: number): number => (unit === undefined ? value : toSi(value, unit));
  return { fromM: inM(from), toM: inM(to), stepM: inM(step) };
}

/** The rows above the bottom, m; the first one in any case. */
export function usualDepths(gear: Gear, waterM = Number.POSITIVE_INFINITY): number[] {
  const { fromM, toM, stepM } = usualRows(gear);
  const count = Math.round((toM - fromM) / stepM) + 1;
  const rows = Array.from({ length: count }, (_, row) => fromM + row * stepM);
  return rows.filter((depthM, row) => row === 0 || depthM < waterM);
}
