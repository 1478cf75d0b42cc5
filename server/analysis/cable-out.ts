/** The length of cable that is out when a counter shows a number. */
import type { Gear, Rig } from "../model/gear-types.ts";
import { calibrationOf } from "./calibration-used.ts";

/** What the counter shows, put right by the rig's calibration where the book has one. Lengths in m. */
export function cableOutM(gear: Gear, rig: Rig, counterM: number): number {
  const calibration = calibrationOf(gear, rig);
  return counterM * (calibration?.counterScale ?? 1) + (calibration?.counterOffsetM ?? 0);
}
