/** Quantities as written → SI. Temperatures in °C, angles in degrees, everything else in base SI units. */
import type { Item, Part, ReadLine, Value } from "../../grammar/journal.ts";
import { positionDegrees } from "../../grammar/position-text.ts";
import { type Dimension, findUnit, toSi, type UnitRow } from "../../grammar/units.ts";

/** The units meant where a number has none: from a boat's `units` property. */
export interface UnitDefaults {
  readonly byDimension: ReadonlyMap<Dimension, UnitRow>;
  /** The short length unit (`in`), for the length of fish and lures. */
  readonly shortLength: UnitRow | undefined;
}

/** Builds the defaults from the words of a `units` property; unknown words are left out. */
export function unitDefaults(words: readonly string[]): UnitDefaults {
  const byDimension = new Map<Dimension, UnitRow>();
  let shortLength: UnitRow | undefined;
  for (const word of words) {
    const unit = findUnit(word);
    if (unit === undefined) continue;
    const first = byDimension.get(unit.dimension);
    if (first === undefined) byDimension.set(unit.dimension, unit);
    else if (unit.dimension === "length" && unit.factor < first.factor) shortLength = unit;
  }
  return { byDimension, shortLength };
}

/** Verbs whose lengths are short: fish and lures. */
const SHORT_LENGTH_VERBS = new Set(["catch", "dock", "lure", "limit"]);

/** Thicknesses: the book's feet and inches are for depths, lines and fish, so these always carry their unit. */
const NEVER_MEANT = new Set(["diameter", "core"]);

/**
 * The unit a unitless measure of that dimension means on a line, behind that word; undefined when the book states
 * none, and where none is ever meant.
 */
export function defaultUnit(
  dimension: Dimension,
  verb: string,
  defaults: UnitDefaults,
  word?: string,
): UnitRow | undefined {
  if (word !== undefined && NEVER_MEANT.has(word)) return undefined;
  if (dimension === "length" && defaults.shortLength !== undefined && SHORT_LENGTH_VERBS.has(verb)) {
    return defaults.shortLength;
  }
  return defaults.byDimension.get(dimension);
}

/** A range in SI; a plain quantity has low = high. */
export interface SiRange {
  readonly low: number;
  readonly high: number;
}

/** Sum of the parts in SI; undefined when a unit is missing and no default is stated, or dimensions differ. */
export function partsToSi(
  parts: readonly Part[],
  fallback: UnitRow | undefined,
  dimension: Dimension,
): number | undefined {
  let sum = 0;
  for (const part of parts) {
    const unit = part.unit === null ? fallback : findUnit(part.unit);
    if (unit === undefined || unit.dimension !== dimension) return undefined;
    sum += toSi(Number(part.number), unit);
  }
  return Number.isFinite(sum) ? sum : undefined;
}

/** The item with that word on a line. */
export function findItem(line: ReadLine, word: string): Item | undefined {
  return line.items.find((item) => item.word === word);
}

/** True when a line carries that flag or attribute. */
export function hasWord(line: ReadLine, word: string): boolean {
  return line.items.some((item) => item.word === word);
}

/** An attribute's measure in SI; undefined when it isn't on the line or can't be read. */
export function measureOf(
  line: ReadLine,
  word: string,
  dimension: Dimension,
  defaults: UnitDefaults,
): number | undefined {
  const value = findItem(line, word)?.value;
  if (value?.kind !== "quantity") return undefined;
  return partsToSi(value.parts, defaultUnit(dimension, line.verb, defaults, word), dimension);
}

/** An attribute's range in SI; a plain measure is a range of no width. */
export function rangeOf(
  line: ReadLine,
  word: string,
  dimension: Dimension,
  defaults: UnitDefaults,
): SiRange | undefined {
  const value = findItem(line, word)?.value;
  return value === undefined
    ? undefined
    : valueRange(value, dimension, defaultUnit(dimension, line.verb, defaults, word));
}

/** A value's range in SI. The last unit of a range serves both ends. */
export function valueRange(
  value: Value,
  dimension: Dimension,
  fallback: UnitRow | undefined,
): SiRange | undefined {
  if (value.kind === "quantity") {
    const only = partsToSi(value.parts, fallback, dimension);
    return only === undefined ? undefined : { low: only, high: only };
  }
  if (value.kind !== "range") return undefined;
  const lastUnit = value.high.at(-1)?.unit;
  const shared = lastUnit === null || lastUnit === undefined ? fallback : findUnit(lastUnit);
  const low = partsToSi(value.low, shared, dimension);
  const high = partsToSi(value.high, fallback, dimension);
  return low === undefined || high === undefined ? undefined : { low, high };
}

/** A plain number on a line. */
export function numberOf(line: ReadLine, word: string): number | undefined {
  const value = findItem(line, word)?.value;
  if (value?.kind !== "number") return undefined;
  const parsed = Number(value.number);
  return Number.isFinite(parsed) ? parsed : undefined;
}

/** A name on a line, in Unicode NFC. */
export function nameOf(line: ReadLine, word: string): string | undefined {
  const value = findItem(line, word)?.value;
  return value?.kind === "name" ? value.text.normalize("NFC") : undefined;
}

/** The name in a slot, in Unicode NFC. */
export function slotName(line: ReadLine, index = 0): string | undefined {
  return line.slots[index]?.text.normalize("NFC");
}

/** Latitude and longitude in degrees, north and east positive. */
export function positionOf(
  line: ReadLine,
  word: string,
): { latitudeDeg: number; longitudeDeg: number } | undefined {
  const value = findItem(line, word)?.value;
  if (value?.kind !== "position") return undefined;
  return { latitudeDeg: positionDegrees(value.latitude), longitudeDeg: positionDegrees(value.longitude) };
}
