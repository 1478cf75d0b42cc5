/**
 * How thick, heavy or long gear may be before it is doubted, and what a calibration may come to. All of it is judgement,
 * reaching well beyond what is on sale for trolling, and only serves to catch slips of the unit, the point or the sign.
 */
import type { MeasureBound } from "./measure-bound.ts";

/** A bound of a gear line or of a boat's property. */
export interface GearBound extends MeasureBound {
  /** The verb of the line. */
  readonly verb: string;
}

/** A plain number has no unit. */
const PLAIN = { dimension: null, unit: "" } as const;

/** The bounds, all by judgement. */
export const GEAR_BOUNDS: readonly GearBound[] = [
  { verb: "cable", word: "diameter", dimension: "length", low: 0.1, high: 3, unit: "mm" },
  { verb: "cable", word: "core", dimension: "length", low: 0.1, high: 3, unit: "mm" },
  { verb: "cable", word: "weight", dimension: "linear-density", low: 0.01, high: 100, unit: "g/m" },
  { verb: "ball", word: "weight", dimension: "mass", low: 0.5, high: 30, unit: "lb" },
  { verb: "ball", word: "drag", ...PLAIN, low: 0.2, high: 10 },
  { verb: "ball", word: "drag-area", dimension: "area", low: 1, high: 5000, unit: "cm2" },
  { verb: "lure", word: "length", dimension: "length", low: 0, high: 24, unit: "in" },
  { verb: "lure", word: "weight", dimension: "mass", low: 0, high: 5, unit: "lb" },
  { verb: "lure", word: "pulls-down", dimension: "length", low: 0, high: 60, unit: "ft" },
  { verb: "rig", word: "boom", dimension: "length", low: 0, high: 15, unit: "ft" },
  { verb: "rig", word: "release", dimension: "length", low: 0, high: 30, unit: "ft" },
  { verb: "rig", word: "probe", dimension: "length", low: 0, high: 30, unit: "ft" },
  { verb: "rig", word: "board", dimension: "length", low: 0, high: 400, unit: "ft" },
  { verb: "rig", word: "leader", dimension: "length", low: 0, high: 200, unit: "ft" },
  { verb: "rig", word: "holds", dimension: "length", low: 10, high: 6000, unit: "ft" },
  { verb: "rig", word: "inline-weight", dimension: "mass", low: 0.1, high: 160, unit: "oz" },
  { verb: "rig", word: "tip", dimension: "length", low: 0, high: 30, unit: "ft" },
  { verb: "rig", word: "pull", dimension: "force", low: 0, high: 50, unit: "lbf" },
  { verb: "calibrate", word: "drag", ...PLAIN, low: 0.2, high: 10 },
  { verb: "calibrate", word: "drag-error", ...PLAIN, low: 0, high: 5 },
  { verb: "calibrate", word: "counter-scale", ...PLAIN, low: 0.5, high: 2 },
  { verb: "calibrate", word: "counter-scale-error", ...PLAIN, low: 0, high: 1 },
  { verb: "calibrate", word: "counter-offset", dimension: "length", low: -50, high: 50, unit: "ft" },
  { verb: "calibrate", word: "counter-offset-error", dimension: "length", low: 0, high: 50, unit: "ft" },
  { verb: "calibrate", word: "drag-scale-link", ...PLAIN, low: -1, high: 1 },
  { verb: "calibrate", word: "drag-offset-link", ...PLAIN, low: -1, high: 1 },
  { verb: "calibrate", word: "scale-offset-link", ...PLAIN, low: -1, high: 1 },
  { verb: "calibrate", word: "area-link", ...PLAIN, low: -1, high: 1 },
  { verb: "calibrate", word: "weight", dimension: "linear-density", low: 0.01, high: 100, unit: "g/m" },
  { verb: "calibrate", word: "lift-area", dimension: "area", low: 1, high: 5000, unit: "cm2" },
  { verb: "calibrate", word: "lift-area-error", dimension: "area", low: 0, high: 5000, unit: "cm2" },
  { verb: "calibrate", word: "drag-area", dimension: "area", low: 1, high: 5000, unit: "cm2" },
  { verb: "calibrate", word: "drag-area-error", dimension: "area", low: 0, high: 5000, unit: "cm2" },
  { verb: "sounder", word: "below", dimension: "length", low: 0, high: 20, unit: "ft" },
  { verb: "beam", word: "wide", dimension: "length", low: 3, high: 60, unit: "ft" },
  { verb: "turn-radius", word: "radius", dimension: "length", low: 30, high: 3000, unit: "ft" },
  { verb: "variation", word: "east", dimension: "angle", low: -90, high: 90, unit: "deg" },
  { verb: "band", word: "temp", dimension: "temperature", low: 32, high: 90, unit: "F" },
];
