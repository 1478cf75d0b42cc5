/** A depth with its range, in whole units of the boat. */
import { lengthWords, wholeLength } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";

/** A depth and the range around it, m. */
interface DepthRange {
  readonly depthM: number;
  readonly lowM: number;
  readonly highM: number;
}

/** A depth that the bottom may have stopped. */
interface StoppablePlace extends DepthRange {
  readonly onBottom: boolean;
}

/** Whole units of the boat: `67 ft down (63 to 70)`; the band rounded outward. */
export function placeWords(gear: Gear, place: DepthRange): string {
  return `${lengthWords(gear, place.depthM)} down (${bandWords(gear, place)})`;
}

/** The same in a sentence: `about 67 ft down (63 to 70)`; what the bottom stopped is there, without a range. */
export function downWords(gear: Gear, place: StoppablePlace): string {
  return place.onBottom
    ? `on the bottom, ${lengthWords(gear, place.depthM)} down`
    : `about ${placeWords(gear, place)}`;
}

/** How far behind, after a comma; nothing for what the bottom stopped, for that isn't known. */
export function backWords(gear: Gear, place: StoppablePlace & { readonly behindM: number }): string {
  return place.onBottom ? "" : `, ${lengthWords(gear, place.behindM)} back`;
}

/** The same under a heading that says what it is: `67 ft (63 to 70)`, or `60 ft, on the bottom`. */
export function placeCell(gear: Gear, place: StoppablePlace): string {
  if (place.onBottom) return `${lengthWords(gear, place.depthM)}, on the bottom`;
  return `${lengthWords(gear, place.depthM)} (${bandWords(gear, place)})`;
}

/** The range alone: `63 to 70`. */
export function bandWords(gear: Gear, place: DepthRange): string {
  const low = wholeLength(gear, place.lowM, Math.floor).value;
  return `${Math.max(0, low)} to ${wholeLength(gear, place.highM, Math.ceil).value}`;
}
