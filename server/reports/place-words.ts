/** A depth with its range, in whole units of the boat. */
import { findUnit, fromSi } from "../../grammar/units.ts";
import { lengthUnit, lengthWords } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";

/** A depth and the range around it, m. */
export interface DepthRange {
  readonly depthM: number;
  readonly lowM: number;
  readonly highM: number;
}

/** Whole units of the boat: `67 ft down (63 to 70)`; the band rounded outward. */
export function placeWords(gear: Gear, place: DepthRange): string {
  return `${lengthWords(gear, place.depthM)} down (${bandWords(gear, place)})`;
}

/** The same under a heading that says what it is: `67 ft (63 to 70)`. */
export function placeCell(gear: Gear, place: DepthRange): string {
  return `${lengthWords(gear, place.depthM)} (${bandWords(gear, place)})`;
}

/** The range alone: `63 to 70`. */
export function bandWords(gear: Gear, place: DepthRange): string {
  const unit = findUnit(lengthUnit(gear));
  const of = (m: number): number => (unit === undefined ? m : fromSi(m, unit));
  return `${Math.max(0, Math.floor(of(place.lowM)))} to ${Math.ceil(of(place.highM))}`;
}
