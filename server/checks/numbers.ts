/** Numbers as they were typed, and the slips that give wrong ones. */
import type { Item, Part } from "../../grammar/journal.ts";
import { type Dimension, findUnit, toSi } from "../../grammar/units.ts";
import { defaultUnit, type UnitDefaults } from "../model/quantities.ts";

/** A measure of one part: its number and the unit it has or means. */
export interface PlainMeasure {
  readonly number: string;
  readonly unit: string;
}

/** Reads a measure that has one part; undefined for compound ones and where no unit is meant. */
export function plainMeasure(
  item: Item | undefined,
  dimension: Dimension,
  verb: string,
  defaults: UnitDefaults,
): PlainMeasure | undefined {
  return item?.value.kind === "quantity"
    ? plainPart(item.value.parts, defaultUnit(dimension, verb, defaults)?.unit)
    : undefined;
}

/** The same for a quantity's parts. */
export function plainPart(parts: readonly Part[], meantUnit: string | undefined): PlainMeasure | undefined {
  const [part] = parts;
  const unit = part?.unit ?? meantUnit;
  return part === undefined || parts.length > 1 || unit === undefined
    ? undefined
    : { number: part.number, unit };
}

/** The value in SI. */
export function siOf({ number, unit }: PlainMeasure): number {
  const row = findUnit(unit);
  return row === undefined ? Number.NaN : toSi(Number(number), row);
}

/** The measure with a point before its last digit: `18.0` for `180`. Undefined where it has a point already. */
export function withPoint({ number, unit }: PlainMeasure): PlainMeasure | undefined {
  return /^\d{2,}$/u.test(number)
    ? { number: `${number.slice(0, -1)}.${number.slice(-1)}`, unit }
    : undefined;
}

/** The measure as it is written. */
export function writtenMeasure({ number, unit }: PlainMeasure): string {
  return `${number} ${unit}`;
}
