/** Figures as the captain reads them: whole feet, his own units, plain words. */
import { findUnit, fromSi } from "../../grammar/units.ts";
import type { Gear } from "./gear-types.ts";
import { localClock } from "./local-time.ts";

const FALLBACK = { length: "ft", speed: "mph", temperature: "F", mass: "lb" } as const;

/** The unit a boat reads lengths in. */
export const lengthUnit = (gear: Gear | undefined): string => unitName(gear, "length");

/** The unit a boat reads a dimension in. */
function unitName(gear: Gear | undefined, dimension: keyof typeof FALLBACK): string {
  return gear?.defaults.byDimension.get(dimension)?.unit ?? FALLBACK[dimension];
}

/** A measure with that many decimals in the boat's unit: `82 ft`. */
function inUnit(
  gear: Gear | undefined,
  dimension: keyof typeof FALLBACK,
  si: number,
  decimals: number,
): string {
  const unit = unitName(gear, dimension);
  const row = findUnit(unit);
  const value = row === undefined ? si : fromSi(si, row);
  return `${Number(value.toFixed(decimals))} ${unit}`;
}

/** A depth or length in whole units: `82 ft`. */
export const lengthWords = (gear: Gear | undefined, m: number): string => inUnit(gear, "length", m, 0);
/** A length of leadcore in colors to a tenth: `5 colors`. */
export function colorWords(m: number): string {
  const row = findUnit("colors");
  return row === undefined ? `${m} m` : countWords(Number(fromSi(m, row).toFixed(1)), "color");
}
/** A length in the boat's unit, rounded to a whole number the way asked. */
export function wholeLength(
  gear: Gear | undefined,
  m: number,
  round: (value: number) => number,
): { value: number; unit: string } {
  const unit = lengthUnit(gear);
  const row = findUnit(unit);
  return { value: round(row === undefined ? m : fromSi(m, row)), unit };
}
/** The length of a fish in whole units: `35 in`. */
export function fishLengthWords(gear: Gear | undefined, m: number): string {
  const unit = gear?.defaults.shortLength?.unit ?? (lengthUnit(gear) === "m" ? "cm" : "in");
  const row = findUnit(unit);
  return `${Math.round(row === undefined ? m : fromSi(m, row))} ${unit}`;
}
/** A speed to a tenth: `2.6 mph`. */
export const speedWords = (gear: Gear | undefined, ms: number): string => inUnit(gear, "speed", ms, 1);
/** A temperature in whole degrees: `48 F`. */
export const tempWords = (gear: Gear | undefined, c: number): string => inUnit(gear, "temperature", c, 0);
/** A weight to a tenth: `18.5 lb`. */
export const massWords = (gear: Gear | undefined, kg: number): string => inUnit(gear, "mass", kg, 1);

/** A time of the trip's clock: `05:45`. */
export function clockWords(utcMs: number, zone: string | undefined): string {
  return localClock(utcMs, zone);
}

/** An age: `33 min`, `2 h 5 min`. */
export function ageWords(ms: number): string {
  const minutes = Math.round(ms / 60_000);
  return minutes < 60
    ? `${minutes} min`
    : `${Math.floor(minutes / 60)} h ${minutes % 60} min`.replace(" 0 min", "");
}

/** `one`, `two` or `2 lines`: a count with its noun. */
export function countWords(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? "" : "s"}`;
}
