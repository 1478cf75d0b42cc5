/** Resolves a boat's gear for one day from the books within reach, nearest first. */
import type { FactLine, PropertyLine } from "../../grammar/journal.ts";
import type { Dimension } from "../../grammar/units.ts";
import {
  type BookFile,
  fileGear,
  type GearLine,
  holdingLines,
  kindDefined,
  linesOfBoat,
} from "./gear-lines.ts";
import type {
  Ball,
  Band,
  Cable,
  CableMaterial,
  Calibration,
  Gear,
  GearOrigin,
  Lure,
  Rig,
  RigKind,
} from "./gear-types.ts";
import { isColorsOrFeet } from "./leadcore-count.ts";
import { matchMaybe, matchName } from "./match-name.ts";
import {
  hasWord,
  measureOf,
  nameOf,
  numberOf,
  positionOf,
  rangeOf,
  slotName,
  type UnitDefaults,
  unitDefaults,
} from "./quantities.ts";
import { NO_THRESHOLDS, type ThresholdWords, withChosen } from "./thresholds.ts";

/**
 * The gear of `boat` on `date` (`YYYY-MM-DD`), from files ordered nearest first. `chosen` are thresholds for boats
 * whose book says nothing of them.
 */
export function resolveGear(
  files: readonly BookFile[],
  boat: string,
  date: string,
  chosen: ThresholdWords = NO_THRESHOLDS,
): Gear {
  const properties = boatProperties(files, boat, date);
  const defaults = unitDefaults(properties.get("units")?.[0]?.slots.map((slot) => slot.text) ?? []);
  const lines = holdingLines(linesOfBoat(files, boat), date);
  const of = <T>(
    kind: string,
    build: (line: FactLine, origin: GearOrigin) => T | undefined,
  ): Map<string, T> => collect(lines, kind, build);
  const first = (verb: string): PropertyLine | undefined => properties.get(verb)?.[0];
  const cables = of("cable", (line, origin) => cableOf(line, origin, defaults));
  const balls = of("ball", (line, origin) => ballOf(line, origin, defaults));
  const rigs = of("rig", (line, origin) => rigOf(line, origin, defaults));
  const nicknames = of("nickname", (line) => slotName(line, 1));
  const rodsPerAngler = first("rods-per-angler")?.slots[0]?.text;
  return {
    boat,
    defaults,
    zone: slotText(first("zone")),
    water: slotText(first("water"))?.toLowerCase() === "salt" ? "salt" : "fresh",
    sounderBelowM: measureIn(first("sounder"), "below", "length", defaults) ?? 0,
    beamM: positive(first("beam"), "wide", defaults),
    turnRadiusM: positive(first("turn-radius"), "radius", defaults),
    rodsPerAngler: rodsPerAngler === undefined ? undefined : Number(rodsPerAngler),
    variationDeg: measureIn(first("variation"), "east", "angle", defaults),
    quiet: new Set((properties.get("quiet") ?? []).map((line) => slotName(line) ?? "")),
    thresholds: withChosen(thresholdsOf(properties.get("threshold") ?? []), chosen),
    cables,
    balls,
    lures: of("lure", (line, origin) => lureOf(line, origin, defaults)),
    rigs: new Map([...rigs].map(([name, rig]) => [name, rigOfKnown(rig, { rigs, cables, balls })])),
    calibrations: new Map(
      [...of("calibrate", (line, origin) => calibrationOf(line, origin, defaults))].map(([name, found]) => {
        const meant = matchName(rigs, name);
        const known = rigs.has(meant) ? meant : matchName(cables, name);
        return [known, { ...found, of: known }];
      }),
    ),
    bands: bySpecies(of("band", (line, origin) => bandOf(line, origin, defaults, nicknames))),
    nicknames,
    spots: of("spot", (line) => positionOf(line, "at")),
    books: files.filter((file) => holdsGear(file, boat)).map((file) => file.uri),
  };
}

function holdsGear(file: BookFile, boat: string): boolean {
  const gear = fileGear(file);
  return gear.boats.some((opener) => opener.boat === boat) || gear.lines.some((line) => line.boat === null);
}

/** A boat's properties that hold on a day; the latest dated one first, then the nearest file's. */
function boatProperties(files: readonly BookFile[], boat: string, date: string): Map<string, PropertyLine[]> {
  const found = new Map<string, PropertyLine[]>();
  for (const file of files) {
    for (const property of fileGear(file).properties) {
      if (property.boat !== boat || (property.line.date ?? "") > date) continue;
      const list = found.get(property.line.verb) ?? [];
      found.set(property.line.verb, [...list, property.line]);
    }
  }
  for (const list of found.values())
    list.sort((a, b) => ((b.date ?? "") > (a.date ?? "") ? 1 : -1) * Number(a.date !== b.date));
  return found;
}

function measureIn(
  line: PropertyLine | undefined,
  word: string,
  dimension: Dimension,
  defaults: UnitDefaults,
): number | undefined {
  return line === undefined ? undefined : measureOf(line, word, dimension, defaults);
}

function slotText(line: PropertyLine | undefined): string | undefined {
  return line === undefined ? undefined : slotName(line);
}

function thresholdsOf(lines: readonly PropertyLine[]): Map<string, readonly string[]> {
  const thresholds = new Map<string, readonly string[]>();
  for (const line of lines) {
    const name = slotName(line);
    if (name !== undefined && !thresholds.has(name))
      thresholds.set(
        name,
        line.slots.slice(1).map((slot) => slot.text),
      );
  }
  return thresholds;
}

function collect<T>(
  lines: ReadonlyMap<string, GearLine>,
  kind: string,
  build: (line: FactLine, origin: GearOrigin) => T | undefined,
): Map<string, T> {
  const built = new Map<string, T>();
  for (const { uri, lineIndex, line } of lines.values()) {
    if (kindDefined(line.verb) !== kind) continue;
    const value = build(line, { uri, lineIndex, line, from: line.date });
    const name = slotName(line);
    if (value !== undefined && name !== undefined) built.set(name, value);
  }
  return built;
}

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

function cableOf(line: FactLine, origin: GearOrigin, defaults: UnitDefaults): Cable {
  return {
    name: slotName(line) ?? "",
    material: oneOf(line, MATERIALS),
    diameterM: measureOf(line, "diameter", "length", defaults),
    massPerLengthKgM: measureOf(line, "weight", "linear-density", defaults),
    coreDiameterM: measureOf(line, "core", "length", defaults),
    origin,
  };
}

/** A length of a property; none where it is zero or less. */
function positive(
  property: PropertyLine | undefined,
  word: string,
  defaults: UnitDefaults,
): number | undefined {
  const si = measureIn(property, word, "length", defaults);
  return si !== undefined && si > 0 ? si : undefined;
}

function ballOf(line: FactLine, origin: GearOrigin, defaults: UnitDefaults): Ball {
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

function lureOf(line: FactLine, origin: GearOrigin, defaults: UnitDefaults): Lure {
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

function rigOf(line: FactLine, origin: GearOrigin, defaults: UnitDefaults): Rig {
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

/** A rig whose names of other gear are as the book defines them. */
function rigOfKnown(rig: Rig, { rigs, cables, balls }: Pick<Gear, "rigs" | "cables" | "balls">): Rig {
  return {
    ...rig,
    stackedOn: matchMaybe(rigs, rig.stackedOn),
    cable: matchMaybe(cables, rig.cable),
    backing: matchMaybe(cables, rig.backing),
    leaderLine: matchMaybe(cables, rig.leaderLine),
    lureLine: matchMaybe(cables, rig.lureLine),
    ball: matchMaybe(balls, rig.ball),
  };
}

function calibrationOf(line: FactLine, origin: GearOrigin, defaults: UnitDefaults): Calibration {
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

function bandOf(
  line: FactLine,
  origin: GearOrigin,
  defaults: UnitDefaults,
  nicknames: ReadonlyMap<string, string>,
): Band | undefined {
  const tempC = rangeOf(line, "temp", "temperature", defaults);
  const written = slotName(line) ?? "";
  return tempC === undefined ? undefined : { species: nicknames.get(written) ?? written, tempC, origin };
}

/** Bands under the species that they are of; a band of its nickname counts where there is none of its own. */
function bySpecies(bands: ReadonlyMap<string, Band>): Map<string, Band> {
  const found = new Map<string, Band>();
  for (const [written, band] of bands) {
    if (written === band.species || !bands.has(band.species)) found.set(band.species, band);
  }
  return found;
}
