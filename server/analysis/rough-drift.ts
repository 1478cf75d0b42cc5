/** Whether the readings of a trip may show a counter off, by a fit that leans on few solves. */
import {
  type CalibrationFit,
  type CounterReadingModel,
  defaultPrior,
  fitDragAndCounter,
} from "../physics/calibrate.ts";
import { type CalibrationReading, whyNoReading } from "../physics/calibration-reading.ts";
import type { CalibrationValues } from "../physics/calibration-values.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import type { RoughExpectation } from "../physics/near-readings.ts";
import type { RigReading } from "./calibration-readings.ts";
import { roughExpectations } from "./rough-expectations.ts";

const PRIOR = defaultPrior();

/**
 * Fits readings as if what is expected changed evenly with drag and cable around some values; undefined where that can't be
 * told.
 */
export function roughFit(
  readings: readonly RigReading[],
  around: CalibrationValues = PRIOR.values,
): CalibrationFit | undefined {
  const rough = roughExpectations(readings, around);
  const models = readings.flatMap(({ reading }, i) => modelOf(reading, rough[i], around) ?? []);
  if (models.length < readings.length) return undefined;
  const fit = fitDragAndCounter(models, PRIOR);
  return fit.ok ? fit : undefined;
}

/** Nearer to the surface than that, m, nothing changes evenly. */
const LEAST_M = 2;

function modelOf(
  reading: CalibrationReading,
  rough: RoughExpectation | undefined,
  around: CalibrationValues,
): CounterReadingModel | undefined {
  if (rough === undefined || rough.expectedM < LEAST_M) return undefined;
  const { rig, measuredM } = reading;
  const { expectedM, perLnDrag, perCable, perSpeed, perPull } = rough;
  if (!Number.isFinite(perCable + perPull)) return undefined;
  const slopes = [perLnDrag, perCable * rig.outM, perCable] as const;
  const cableM = around.counterScale * rig.outM + around.counterOffsetM;
  return {
    measuredM,
    why: whyNoReading(reading),
    predict: ({ lnDrag, counterScale, counterOffsetM }) => {
      const moreM = counterScale * rig.outM + counterOffsetM - cableM;
      const atM = expectedM + perLnDrag * (lnDrag - around.lnDrag) + perCable * moreM;
      const sdM = Math.hypot(
        reading.sdM,
        perSpeed * reading.speedSdMS,
        perPull * DEFAULTS.rodPullN.sd,
        DEFAULTS.modelDepthShare.value * atM,
      );
      return { expectedM: atM, slopes, sdM };
    },
  };
}
