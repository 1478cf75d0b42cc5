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

/** A measure in the boat's unit, rounded as asked: `82 ft`. */
export function measureWords(
  gear: Gear | undefined,
  dimension: keyof typeof FALLBACK,
  si: number,
  round: (value: number) => number,
): string {
  const unit = unitName(gear, dimension);
  const row = findUnit(unit);
  return `${round(row === undefined ? si : fromSi(si, row))} ${unit}`;
}

/** A measure with that many decimals in the boat's unit: `82 ft`. */
function inUnit(
  gear: Gear | undefined,
  dimension: keyof typeof FALLBACK,
  si: number,
  decimals: number,
): string {
  return measureWords(gear, dimension, si, (value) => Number(value.toFixed(decimals)));
}

/** Units so large that a figure is told in halves of them, not in whole ones. */
const IN_HALVES: ReadonlySet<string> = new Set(["m", "C", "fathoms"]);

/** A value of a unit rounded the way asked: to whole ones, meters and degrees Celsius to halves. */
function stepped(value: number, unit: string, round: (value: number) => number): number {
  return IN_HALVES.has(unit) ? round(2 * value) / 2 : round(value);
}

/** A depth or length in whole units: `82 ft`; in half meters: `24.5 m`. */
export function lengthWords(gear: Gear | undefined, m: number): string {
  return measureWords(gear, "length", m, (value) => stepped(value, lengthUnit(gear), Math.round));
}
/** A short length to two figures: `0.5 ft`, `1.2 ft`. */
export function smallLengthWords(gear: Gear | undefined, m: number): string {
  return measureWords(gear, "length", m, (value) => Number(value.toPrecision(2)));
}
/** A length of leadcore in colors to a tenth: `5 colors`. */
export function colorWords(m: number): string {
  const row = findUnit("colors");
  return row === undefined ? `${m} m` : countWords(Number(fromSi(m, row).toFixed(1)), "color");
}
/** A length in the boat's unit, rounded to a whole number, or half meters, the way asked. */
export function wholeLength(
  gear: Gear | undefined,
  m: number,
  round: (value: number) => number,
): { value: number; unit: string } {
  const unit = lengthUnit(gear);
  const row = findUnit(unit);
  return { value: stepped(row === undefined ? m : fromSi(m, row), unit, round), unit };
}
/** The length of a fish in whole units: `35 in`. */
export function fishLengthWords(gear: Gear | undefined, m: number): string {
  const unit = gear?.defaults.shortLength?.unit ?? (lengthUnit(gear) === "m" ? "cm" : "in");
  const row = findUnit(unit);
  return `${Math.round(row === undefined ? m : fromSi(m, row))} ${unit}`;
}
/** A speed to a tenth: `2.6 mph`. */
export const speedWords = (gear: Gear | undefined, ms: number): string => inUnit(gear, "speed", ms, 1);
/** A temperature in whole degrees: `48 F`; Celsius in halves: `8.5 C`. */
export function tempWords(gear: Gear | undefined, c: number): string {
  const unit = unitName(gear, "temperature");
  return measureWords(gear, "temperature", c, (value) => stepped(value, unit, Math.round));
}
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
