/** Density of the boat's water by its temperature alone; fresh water is heaviest near 39 F. */
import type { Gear } from "../model/gear-types.ts";
import { freshDensityKgM3, saltDensityKgM3 } from "../physics/water.ts";

/** The water a boat fishes, as its book says. */
export type Salt = Gear["water"];

/** Salinity of sea water, where the book says salt (standard sea water). */
export const SEA_WATER_PSU = 35;

/** Density, kg/m3. */
export function densityAt(tempC: number, salt: Salt): number {
  return salt === "salt" ? saltDensityKgM3(tempC, SEA_WATER_PSU) : freshDensityKgM3(tempC);
}
