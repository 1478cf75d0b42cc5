/** The units a captain writes for a kind of measure, the likeliest first. */
import type { Dimension } from "../../grammar/units.ts";
import { defaultUnit, type UnitDefaults } from "../model/quantities.ts";

const USUAL: Readonly<Record<Dimension, readonly string[]>> = {
  length: ["ft", "in", "m"],
  speed: ["mph", "kn", "km/h"],
  temperature: ["F", "C"],
  mass: ["lb", "oz", "kg"],
  duration: ["min", "h"],
  "linear-density": ["g/m"],
  angle: ["deg"],
  area: ["cm2"],
  force: ["lbf", "N"],
  pressure: ["hPa", "inHg"],
};

/** Attributes that are always written in one way. */
const USUAL_OF_WORD: Readonly<Record<string, readonly string[]>> = {
  engine: ["h"],
  every: ["h", "days"],
  diameter: ["mm", "in"],
  core: ["mm", "in"],
  girth: ["in", "cm"],
  clarity: ["ft", "m"],
  visibility: ["mi", "nmi", "km"],
};

const SHORT_LENGTHS: readonly string[] = ["in", "cm", "ft"];

/** The unit that a number without one means there; undefined when the book states none. */
export function meantUnit(
  word: string,
  verb: string,
  dimension: Dimension,
  defaults: UnitDefaults | undefined,
): string | undefined {
  if (defaults === undefined) return undefined;
  // How far a lure dives is a depth, not a lure's length.
  const fitting = word === "pulls-down" ? { ...defaults, shortLength: undefined } : defaults;
  return defaultUnit(dimension, verb, fitting, word)?.unit;
}

/** Units to offer: the book's own first, then what is common. */
export function usualUnits(
  word: string,
  verb: string,
  dimension: Dimension,
  defaults?: UnitDefaults,
): readonly string[] {
  const own = meantUnit(word, verb, dimension, defaults);
  const isShort = dimension === "length" && ["catch", "dock", "lure", "limit"].includes(verb);
  const common = USUAL_OF_WORD[word] ?? (isShort && word !== "pulls-down" ? SHORT_LENGTHS : USUAL[dimension]);
  return own === undefined ? common : [own, ...common.filter((unit) => unit !== own)];
}
