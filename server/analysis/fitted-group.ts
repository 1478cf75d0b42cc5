/** Readings of a rig beside what a fit expects of them, whatever is fitted: for pictures, tables and sentences. */
import type { CalibrationFit, LeftOut } from "../physics/calibrate.ts";
import type { DiverFit } from "../physics/calibrate-diver.ts";
import type { Refusal } from "../physics/refusal.ts";
import type { FittedReading } from "../physics/robust-fit.ts";
import type { AnyReading } from "./calibration-readings.ts";
import type { LineCalibration } from "./line-calibration.ts";

/** A rig's readings and what is left over of each. */
export interface FittedGroup {
  readonly rig: string;
  readonly boat: string;
  /** Day on which its gear came to be as it is; empty from the beginning. */
  readonly since: string;
  readonly readings: readonly [AnyReading, ...AnyReading[]];
  readonly fit: FitLeft | Refusal;
}

/** What every fit has of its readings. */
export interface FitLeft {
  readonly ok: true;
  readonly readings: readonly FittedReading[];
  readonly leftOut: readonly LeftOut[];
}

/** A fit of drag and counter, and one of a diver's areas. */
export type { CalibrationFit, DiverFit };

/** The readings of a line beside its fit. */
export function fittedGroupOf({ rig, boat, since, readings, what }: LineCalibration): FittedGroup {
  return { rig, boat, since, readings, fit: what.fit };
}
