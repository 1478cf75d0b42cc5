/** A measure held against its bound: as it was written, and what was probably meant. */
import type { Item, Part, Value } from "../../grammar/journal.ts";
import { findUnit } from "../../grammar/units.ts";
import { isWithin, type MeasureBound } from "../model/measure-bound.ts";
import { type SiRange, valueRange } from "../model/quantities.ts";
import { plainPart, siOf, withPoint, writtenMeasure } from "./numbers.ts";
import { usualUnits } from "./usual-units.ts";

/** A measure beyond its bound. */
export interface OddMeasure {
  readonly written: string;
  /** The same digits as they would be believed. */
  readonly slips: readonly string[];
  readonly isTooLittle: boolean;
}

/** Where the measure stands: the verb tells which units are usual there; `unit` is meant where none is written. */
interface Standing {
  readonly verb: string;
  readonly unit: string | undefined;
}

/** What is odd about a measure; undefined for one that is believed, or can't be read. */
export function oddMeasure({ value }: Item, bound: MeasureBound, at: Standing): OddMeasure | undefined {
  const range = measureRange(value, bound, at.unit);
  if (range === undefined || fits(range, bound)) return undefined;
  return {
    written: writtenIn(value, at.unit),
    slips: slipsOf(value, bound, at),
    isTooLittle: !isWithin({ ...bound, high: Number.POSITIVE_INFINITY }, range.low),
  };
}

/** A measure in SI, or a plain number as it is; of a point its depth. */
export function measureRange(
  value: Value,
  { dimension }: MeasureBound,
  unit: string | undefined,
): SiRange | undefined {
  if (dimension === null) {
    const number = value.kind === "number" ? Number(value.number) : Number.NaN;
    return Number.isNaN(number) ? undefined : { low: number, high: number };
  }
  return valueRange(depthOf(value), dimension, unit === undefined ? undefined : findUnit(unit));
}

const depthOf = (value: Value): Value =>
  value.kind === "point" ? { kind: "quantity", parts: value.depth } : value;

function fits({ low, high }: SiRange, bound: MeasureBound): boolean {
  return isWithin(bound, low) && isWithin(bound, high);
}

/** The same numbers with a point before the last digit, or in other units that captains write there, where believed. */
function slipsOf(value: Value, bound: MeasureBound, { verb, unit }: Standing): string[] {
  const { dimension } = bound;
  if (dimension === null || value.kind === "point") return [];
  const unsigned = value.kind === "quantity" ? withoutMinus(value.parts) : undefined;
  if (unsigned !== undefined) {
    const range = measureRange(unsigned, bound, unit);
    return range !== undefined && fits(range, bound) ? [writtenIn(unsigned, unit)] : [];
  }
  const typed = dimension === "mass" && value.kind === "quantity" ? plainPart(value.parts, unit) : undefined;
  const pointed = typed === undefined ? undefined : withPoint(typed);
  if (pointed !== undefined && isWithin(bound, siOf(pointed))) return [writtenMeasure(pointed)];
  return usualUnits(bound.word, verb, dimension).flatMap((unit) => {
    const other = inUnit(value, unit);
    const range = other === undefined ? undefined : measureRange(other, bound, unit);
    return other !== undefined && range !== undefined && fits(range, bound) ? [writtenIn(other, unit)] : [];
  });
}

/** A length typed with a dash before it: the same without; undefined where there is none. */
function withoutMinus([first, ...rest]: readonly Part[]): Value | undefined {
  if (first === undefined || !first.number.startsWith("-")) return undefined;
  return { kind: "quantity", parts: [{ ...first, number: first.number.slice(1) }, ...rest] };
}

/** A measure of one number to each end, in another unit; undefined for compound ones. */
function inUnit(value: Value, unit: string): Value | undefined {
  const change = ([part, ...rest]: readonly Part[]): Part[] | undefined =>
    part === undefined || rest.length > 0 ? undefined : [{ number: part.number, unit }];
  if (value.kind === "quantity") {
    const parts = change(value.parts);
    return parts === undefined ? undefined : { kind: "quantity", parts };
  }
  if (value.kind !== "range") return undefined;
  const [low, high] = [change(value.low), change(value.high)];
  return low === undefined || high === undefined ? undefined : { kind: "range", low, high };
}

/** As it is written, with the unit that is meant where none is; one unit serves both ends of a range. */
export function writtenIn(value: Value, unit: string | undefined): string {
  const words = (parts: readonly Part[], meant: string | undefined): string =>
    parts.map((part) => [part.number, part.unit ?? meant ?? ""].join(" ").trim()).join(" ");
  if (value.kind === "number") return value.number;
  if (value.kind === "point") return words(value.depth, unit);
  if (value.kind === "quantity") return words(value.parts, unit);
  if (value.kind !== "range") return "";
  const lowUnit = value.low.at(-1)?.unit;
  const highUnit = value.high.at(-1)?.unit ?? unit;
  const isShared = lowUnit === highUnit && value.low.length === 1;
  const low = isShared ? (value.low[0]?.number ?? "") : words(value.low, undefined);
  return `${low} to ${words(value.high, unit)}`;
}
