/** A change of depth in words. */
import { lengthWords } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";

/** `about 8 ft deeper`, `about 1 ft shallower`, `hardly any change`. */
export function deeperWords(gear: Gear, deeperM: number): string {
  const size = lengthWords(gear, Math.abs(deeperM));
  if (size.startsWith("0 ")) return "hardly any change";
  return `about ${size} ${deeperM > 0 ? "deeper" : "shallower"}`;
}
