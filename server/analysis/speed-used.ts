/**
 * The speed through the water that a line's depth leans on. In order of trust: the probe at the ball, the speed on
 * top, the speed over ground; a reading loses trust with age, so a fresh one of a lesser kind may come first.
 */
import type { Reading, ReadingAges, ReadingSource, ReadValue } from "../model/readings.ts";
import { fromSource, valueAt } from "../model/readings.ts";
import { DEFAULTS } from "../physics/defaults.ts";

/** A speed and how well it is known, m/s. */
export interface SpeedUsed extends ReadValue {
  readonly sdMS: number;
}

const SD_WHEN_READ_MS: Readonly<Record<ReadingSource, number>> = {
  probe: DEFAULTS.probeSpeedSdMS.value,
  surface: DEFAULTS.surfaceSpeedSdMS.value,
  gps: DEFAULTS.groundSpeedSdMS.value,
};
const SOURCES: readonly ReadingSource[] = ["probe", "surface", "gps"];

/** The best known speed at a minute; undefined when no reading may be used. */
export function speedAt(
  readings: readonly Reading[],
  timeMs: number,
  ages: ReadingAges,
): SpeedUsed | undefined {
  let best: SpeedUsed | undefined;
  for (const source of SOURCES) {
    const found = valueAt(fromSource(readings, source), timeMs, ages);
    if (found === undefined) continue;
    const sdMS = SD_WHEN_READ_MS[source] + DEFAULTS.speedSdGrowthMSPerS.value * (found.ageMs / 1000);
    if (best === undefined || sdMS < best.sdMS) best = { ...found, sdMS };
  }
  return best;
}
