/** The gear of a boat in SI, each piece with the line that defines it. */
import type { FactLine } from "../../grammar/journal.ts";
import type { SiRange, UnitDefaults } from "./quantities.ts";

/** Where a definition stands. */
export interface GearOrigin {
  readonly uri: string;
  readonly lineIndex: number;
  readonly line: FactLine;
  /** The definition holds from that day on; null from the beginning. */
  readonly from: string | null;
}

export type CableMaterial = "steel" | "braid" | "copper" | "leadcore" | "weighted" | "mono" | "fluoro";

export interface Cable {
  readonly name: string;
  readonly material: CableMaterial | undefined;
  readonly diameterM: number | undefined;
  /** Mass in air per length, where weighed. */
  readonly massPerLengthKgM: number | undefined;
  readonly coreDiameterM: number | undefined;
  readonly origin: GearOrigin;
}

export interface Ball {
  readonly name: string;
  readonly shape: "sphere" | "pancake" | "finned" | "torpedo" | undefined;
  readonly massKg: number | undefined;
  readonly dragRatio: number | undefined;
  readonly dragAreaM2: number | undefined;
  readonly origin: GearOrigin;
}

export interface Lure {
  readonly name: string;
  readonly kind: string | undefined;
  readonly lengthM: number | undefined;
  readonly massKg: number | undefined;
  readonly pullsDownM: SiRange | undefined;
  readonly origin: GearOrigin;
}

export type RigKind =
  | "downrigger"
  | "stacked"
  | "diver"
  | "leadcore"
  | "copper"
  | "weighted-wire"
  | "flat"
  | "jig";

export interface Rig {
  readonly name: string;
  readonly kind: RigKind | undefined;
  readonly side: "port" | "center" | "starboard" | undefined;
  readonly stackedOn: string | undefined;
  readonly cable: string | undefined;
  readonly backing: string | undefined;
  readonly leaderLine: string | undefined;
  readonly lureLine: string | undefined;
  readonly ball: string | undefined;
  readonly boomM: number | undefined;
  readonly releaseAboveBallM: number | undefined;
  readonly probeAboveBallM: number | undefined;
  readonly boardM: number | undefined;
  readonly leaderM: number | undefined;
  readonly holdsM: number | undefined;
  readonly inlineWeightKg: number | undefined;
  readonly dial: number | undefined;
  readonly tipHeightM: number | undefined;
  readonly rodPullN: number | undefined;
  readonly rods: number | undefined;
  readonly origin: GearOrigin;
}

export interface Calibration {
  readonly of: string;
  readonly dragRatio: number | undefined;
  readonly dragError: number | undefined;
  readonly counterScale: number | undefined;
  readonly counterScaleError: number | undefined;
  readonly counterOffsetM: number | undefined;
  readonly counterOffsetErrorM: number | undefined;
  /** Correlations of the errors, -1 to 1. */
  readonly dragScaleLink: number | undefined;
  readonly dragOffsetLink: number | undefined;
  readonly scaleOffsetLink: number | undefined;
  readonly massPerLengthKgM: number | undefined;
  /** Of a diving planer. */
  readonly liftAreaM2: number | undefined;
  readonly liftAreaErrorM2: number | undefined;
  readonly dragAreaM2: number | undefined;
  readonly dragAreaErrorM2: number | undefined;
  /** Correlation of the two areas' errors, -1 to 1. */
  readonly areaLink: number | undefined;
  readonly readings: number | undefined;
  readonly origin: GearOrigin;
}

/** The captain's temperature band for a species, °C. */
export interface Band {
  readonly species: string;
  readonly tempC: SiRange;
  readonly origin: GearOrigin;
}

/** A place on the water, degrees, north and east positive. */
export interface Place {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

/** A boat's gear as it stood on one day. */
export interface Gear {
  readonly boat: string;
  readonly defaults: UnitDefaults;
  readonly zone: string | undefined;
  readonly water: "fresh" | "salt";
  readonly sounderBelowM: number;
  /** Width of the boat, m. */
  readonly beamM: number | undefined;
  /** Radius of a turn with lines out, m. */
  readonly turnRadiusM: number | undefined;
  readonly rodsPerAngler: number | undefined;
  /** Magnetic variation, degrees, east positive; undefined where the book doesn't say. */
  readonly variationDeg: number | undefined;
  readonly quiet: ReadonlySet<string>;
  /** Threshold words as written: `["45", "min"]`. */
  readonly thresholds: ReadonlyMap<string, readonly string[]>;
  readonly cables: ReadonlyMap<string, Cable>;
  readonly balls: ReadonlyMap<string, Ball>;
  readonly lures: ReadonlyMap<string, Lure>;
  readonly rigs: ReadonlyMap<string, Rig>;
  readonly calibrations: ReadonlyMap<string, Calibration>;
  readonly bands: ReadonlyMap<string, Band>;
  /** Nickname → species as written. */
  readonly nicknames: ReadonlyMap<string, string>;
  /** Fishing spots by name. */
  readonly spots: ReadonlyMap<string, Place>;
  /** The files any of this came from, nearest first. */
  readonly books: readonly string[];
}
