/** Why the solver has no answer, in the captain's units: a refused value and its limit, rounded. */
import { measureWords } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";
import type { OutOfRange, Refusal } from "../physics/refusal.ts";
import { GRAVITY_M_S2 } from "../physics/water.ts";

/** The reason as a sentence part without capital or stop; without a boat its lengths and speeds are in the usual units. */
export function refusalWords(gear: Gear | undefined, { why, outside }: Refusal): string {
  if (outside === undefined) return why;
  const { what, value, low, high } = outside;
  const isAbove = value > high;
  const words = quantityWords(gear, outside);
  if (!isAbove && low === 0) return `${what} is ${words(value)}, below zero`;
  const limit = isAbove
    ? `above the ${words(high)} that depths are computed up to`
    : `below the ${words(low)} that depths are computed from`;
  return `${what} is ${words(value)}, ${limit}`;
}

/** The refusal worded; other answers as they are. */
export function worded<T extends { readonly ok: true }>(gear: Gear, answer: T | Refusal): T | Refusal {
  return answer.ok ? answer : { ok: false, why: refusalWords(gear, answer) };
}

/** A line's diameter and the like: limits below this, m, are told in millimeters. */
const THIN_M = 0.1;

/** How values like the refused one are written on this boat. */
function quantityWords(gear: Gear | undefined, { unit, high }: OutOfRange): (value: number) => string {
  const times = (factor: number, name: string) => (value: number) => `${significant(value * factor)} ${name}`;
  switch (unit) {
    case "m":
      return high < THIN_M ? times(1000, "mm") : (m) => measureWords(gear, "length", m, significant);
    case "m/s":
      return (ms) => measureWords(gear, "speed", ms, significant);
    case "C":
      return (c) => measureWords(gear, "temperature", c, significant);
    case "kg":
      return (kg) => measureWords(gear, "mass", kg, significant);
    case "N":
      return (n) => measureWords(gear, "mass", n / GRAVITY_M_S2, significant);
    case "kg/m":
      return times(1000, "g/m");
    case "m2":
      return times(10_000, "cm2");
    default:
      return (value) => `${significant(value)} ${unit}`.trim();
  }
}

/** Three figures are enough to see a slip. */
function significant(value: number): number {
  return Number(value.toPrecision(3));
}
