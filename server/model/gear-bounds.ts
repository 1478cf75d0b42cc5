/**
 * How thick, heavy or long gear may be before it is doubted. All of it is judgement, reaching well beyond what is on
 * sale for trolling, and only serves to catch slips of the unit or the point.
 */
import { type Dimension, findUnit, toSi } from "../../grammar/units.ts";

/** What a measure of a gear line may be. */
export interface GearBound {
  /** The verb and the attribute. */
  readonly verb: string;
  readonly word: string;
  readonly dimension: Dimension;
  /** In the unit; no `low` where only too much is doubted. */
  readonly low?: number;
  readonly high: number;
  readonly unit: string;
}

/** The bounds, all by judgement. */
export const GEAR_BOUNDS: readonly GearBound[] = [
  { verb: "cable", word: "diameter", dimension: "length", low: 0.1, high: 3, unit: "mm" },
  { verb: "cable", word: "core", dimension: "length", low: 0.1, high: 3, unit: "mm" },
  { verb: "ball", word: "weight", dimension: "mass", low: 0.5, high: 30, unit: "lb" },
  { verb: "lure", word: "length", dimension: "length", high: 24, unit: "in" },
  { verb: "lure", word: "pulls-down", dimension: "length", high: 60, unit: "ft" },
  { verb: "rig", word: "boom", dimension: "length", high: 15, unit: "ft" },
  { verb: "rig", word: "release", dimension: "length", high: 30, unit: "ft" },
  { verb: "rig", word: "probe", dimension: "length", high: 30, unit: "ft" },
  { verb: "beam", word: "wide", dimension: "length", low: 3, high: 60, unit: "ft" },
  { verb: "turn-radius", word: "radius", dimension: "length", low: 30, high: 3000, unit: "ft" },
  { verb: "band", word: "temp", dimension: "temperature", low: 32, high: 90, unit: "F" },
];

/** Converting between units leaves crumbs: 3 mm is still 3 mm in inches. */
const CRUMB = 1e-9;

/** True for a value in SI within a bound, its ends included. */
export function isWithin({ low, high, unit }: GearBound, si: number): boolean {
  const row = findUnit(unit);
  if (row === undefined) return true;
  return (low === undefined || si >= toSi(low, row) - CRUMB) && si <= toSi(high, row) + CRUMB;
}
