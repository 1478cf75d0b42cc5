/**
 * What lengths on a line of the day may be before they are doubted. The largest are judgement, well beyond what is
 * trolled; the deepest of the lakes is 1,333 ft (from memory). How much line is out has checks of its own.
 */
import type { MeasureBound } from "./measure-bound.ts";

/** A bound of lines of the day. */
export interface DayBound extends MeasureBound {
  /** The verbs whose lines it is for. */
  readonly verbs: readonly string[];
  /** The sea is deeper. */
  readonly isHighFreshOnly?: true;
}

const SETS = ["set", "move", "again", "change"] as const;
const FEET = { dimension: "length", unit: "ft" } as const;
const DEEPEST = { high: 1500, isHighFreshOnly: true } as const;

/** The bounds. Too long a setback, and a probe below its cable, have checks of their own. */
export const DAY_BOUNDS: readonly DayBound[] = [
  { verbs: SETS, word: "setback", ...FEET, low: 0 },
  { verbs: SETS, word: "above", ...FEET, low: 0 },
  { verbs: SETS, word: "board", ...FEET, low: 0, high: 400 },
  { verbs: SETS, word: "leader", ...FEET, low: 0, high: 200 },
  { verbs: SETS, word: "fixed", ...FEET, low: 0, high: 600 },
  { verbs: ["probe"], word: "depth", ...FEET, low: 0 },
  { verbs: ["probe", "touch"], word: "behind", ...FEET, low: 0, high: 3000 },
  { verbs: ["touch"], word: "out", ...FEET, low: 1, high: 3000 },
  { verbs: ["touch", "sonar"], word: "bottom", ...FEET, low: 1, ...DEEPEST },
  { verbs: ["sonar"], word: "marks", ...FEET, low: 0, ...DEEPEST },
  { verbs: ["sonar"], word: "bait", ...FEET, low: 0, ...DEEPEST },
  { verbs: ["profile"], word: "point", ...FEET, low: 0, ...DEEPEST },
];
