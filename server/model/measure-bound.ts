/** How small or large a measure may be before it is doubted. */
import { type Dimension, findUnit, toSi } from "../../grammar/units.ts";

/** The bound of one word's measure. */
export interface MeasureBound {
  /** The attribute. */
  readonly word: string;
  /** Null for a plain number. */
  readonly dimension: Dimension | null;
  /** In the unit. */
  readonly low: number;
  /** Undefined where only too little is doubted. */
  readonly high?: number;
  /** Empty for a plain number. */
  readonly unit: string;
}

/** Converting between units leaves crumbs: 3 mm is still 3 mm in inches. */
const CRUMB = 1e-9;

/** True for a value in SI within a bound, its ends included. */
export function isWithin({ low, high, unit }: MeasureBound, si: number): boolean {
  const row = findUnit(unit);
  const inSi = (value: number): number => (row === undefined ? value : toSi(value, row));
  return si >= inSi(low) - CRUMB && (high === undefined || si <= inSi(high) + CRUMB);
}
