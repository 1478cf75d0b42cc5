/** Reads one line of a gear book: what each word of it comes to, in SI. */

import type { FactLine } from "../../grammar/journal.ts";
import type {
  Ball,
  Band,
  Cable,
  CableMaterial,
  Calibration,
  GearOrigin,
  Lure,
  Rig,
  RigKind,
} from "./gear-types.ts";
import { isColorsOrFeet } from "./leadcore-count.ts";
import { hasWord, measureOf, nameOf, numberOf, rangeOf, slotName, type UnitDefaults } from "./quantities.ts";

function oneOf<T extends string>(line: FactLine, words: readonly T[]): T | undefined {
  return words.find((word) => hasWord(line, word));
}

const MATERIALS: readonly CableMaterial[] = [
  "steel",
  "braid",
  "copper",
  "leadcore",
  "weighted",
  "mono",
  "fluoro",
];

/** A cable, or another line by its name. */
export function cableOf(line: FactLine, origin: GearOrigin, defaults: UnitDefaults): Cable {
  return {
    name: slotName(line) ?? "",
    material: oneOf(line, MATERIALS),
    diameterM: measureOf(line, "diameter", "length", defaults),
    massPerLengthKgM: measureOf(line, "weight", "linear-density", defaults),
    coreDiameterM: measureOf(line, "core", "length", defaults),
    origin,
  };
}

/** A ball. */
export function ballOf(line: FactLine, origin: GearOrigin, defaults: UnitDefaults): Ball {
  return {
    name: slotName(line) ?? "",
    shape: oneOf(line, ["sphere", "pancake", "finned", "torpedo"] as const),
    massKg: measureOf(line, "weight", "mass", defaults),
    dragRatio: numberOf(line, "drag"),
    dragAreaM2: measureOf(line, "drag-area", "area", defaults),
    origin,
  };
}

const LURE_KINDS = ["spoon", "plug", "fly", "squid", "jig", "flasher", "meat"] as const;

/** A lure. */
export function lureOf(line: FactLine, origin: GearOrigin, defaults: UnitDefaults): Lure {
  return {
    name: slotName(line) ?? "",
    kind: oneOf(line, LURE_KINDS),
    lengthM: measureOf(line, "length", "length", defaults),
    massKg: measureOf(line, "weight", "mass", defaults),
    pullsDownM: rangeOf(line, "pulls-down", "length", { ...defaults, shortLength: undefined }),
    origin,
  };
}

const RIG_KINDS: readonly RigKind[] = [
  "downrigger",
  "stacked",
  "diver",
  "leadcore",
  "copper",
  "weighted-wire",
  "flat",
  "jig",
];

/** A rig, with the names of other gear as they are written. */
export function rigOf(line: FactLine, origin: GearOrigin, defaults: UnitDefaults): Rig {
  const length = (word: string): number | undefined => measureOf(line, word, "length", defaults);
  return {
    name: slotName(line) ?? "",
    kind: oneOf(line, RIG_KINDS),
    side: oneOf(line, ["port", "center", "starboard"] as const),
    stackedOn: nameOf(line, "stacked"),
    cable: nameOf(line, "cable"),
    backing: nameOf(line, "backing"),
    leaderLine: nameOf(line, "leader-line"),
    lureLine: nameOf(line, "line"),
    ball: nameOf(line, "ball"),
    boomM: length("boom"),
    releaseAboveBallM: length("release"),
    probeAboveBallM: length("probe"),
    boardM: length("board"),
    leaderM: length("leader"),
    holdsM: isColorsOrFeet(line, "holds", undefined) ? undefined : length("holds"),
    inlineWeightKg: measureOf(line, "inline-weight", "mass", defaults),
    dial: numberOf(line, "dial"),
    tipHeightM: length("tip"),
    rodPullN: measureOf(line, "pull", "force", defaults),
    rods: numberOf(line, "rods"),
    origin,
  };
}

/** A calibration of a counter or a line. */
export function calibrationOf(line: FactLine, origin: GearOrigin, defaults: UnitDefaults): Calibration {
  return {
    of: slotName(line) ?? "",
    dragRatio: numberOf(line, "drag"),
    dragError: numberOf(line, "drag-error"),
    counterScale: numberOf(line, "counter-scale"),
    counterScaleError: numberOf(line, "counter-scale-error"),
    counterOffsetM: measureOf(line, "counter-offset", "length", defaults),
    counterOffsetErrorM: measureOf(line, "counter-offset-error", "length", defaults),
    dragScaleLink: numberOf(line, "drag-scale-link"),
    dragOffsetLink: numberOf(line, "drag-offset-link"),
    scaleOffsetLink: numberOf(line, "scale-offset-link"),
    massPerLengthKgM: measureOf(line, "weight", "linear-density", defaults),
    liftAreaM2: measureOf(line, "lift-area", "area", defaults),
    liftAreaErrorM2: measureOf(line, "lift-area-error", "area", defaults),
    dragAreaM2: measureOf(line, "drag-area", "area", defaults),
    dragAreaErrorM2: measureOf(line, "drag-area-error", "area", defaults),
    areaLink: numberOf(line, "area-link"),
    readings: numberOf(line, "readings"),
    origin,
  };
}

/** A band of temperature that a species likes; undefined without one. Nicknames count as the species they stand for. */
export function bandOf(
  line: FactLine,
  origin: GearOrigin,
  defaults: UnitDefaults,
  nicknames: ReadonlyMap<string, string>,
): Band | undefined {
  const tempC = rangeOf(line, "temp", "temperature", defaults);
  const written = slotName(line) ?? "";
  return tempC === undefined ? undefined : { species: nicknames.get(written) ?? written, tempC, origin };
}
