/** Bearings of a line as true directions. An unmarked bearing is taken as true, as the GPS shows it. */
import type { ReadLine } from "../../grammar/journal.ts";
import type { Gear } from "../model/gear-types.ts";
import { hasWord, numberOf } from "../model/quantities.ts";

/** A direction and what its north is. */
export interface Bearing {
  readonly deg: number;
  /** Marked magnetic, in a boat whose book states no variation: it can't be turned to true. */
  readonly isMagnetic: boolean;
}

/** The bearing under a word; undefined where there is none, or where it is none of a circle. */
export function bearingOf(line: ReadLine, word: "course" | "to", gear: Gear): Bearing | undefined {
  const deg = numberOf(line, word);
  if (deg === undefined || deg < 0 || deg > 360) return undefined;
  if (!hasWord(line, "magnetic")) return { deg: deg % 360, isMagnetic: false };
  if (gear.variationDeg === undefined) return { deg: deg % 360, isMagnetic: true };
  return { deg: (((deg + gear.variationDeg) % 360) + 360) % 360, isMagnetic: false };
}
