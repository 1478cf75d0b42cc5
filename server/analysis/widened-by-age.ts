/** How much wider a depth's range is for the age of the speed it leans on. */
import { DEVIATIONS_80 } from "../physics/band.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import type { DepthPlace } from "./depth-place.ts";
import type { SpeedUsed } from "./speed-used.ts";

/** In m, by how the depth answers to speed around its setting, so about; 0 for a speed of its own minute. */
export function widenedByAgeM({ lowM, highM, depthPerSpeed }: DepthPlace, speed: SpeedUsed): number {
  const older = speed.onTop !== undefined && speed.onTop.ageMs > speed.ageMs ? speed.onTop : speed;
  const grownMS = Math.min(older.sdMS, DEFAULTS.speedSdGrowthMSPerS.value * (older.ageMs / 1000));
  const perMS = 2 * DEVIATIONS_80 * depthPerSpeed;
  const byAge = perMS ** 2 * (older.sdMS ** 2 - (older.sdMS - grownMS) ** 2);
  const widthM = highM - lowM;
  return widthM - Math.sqrt(Math.max(0, widthM ** 2 - byAge));
}
