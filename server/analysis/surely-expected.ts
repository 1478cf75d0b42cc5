/** Which measured depths are so near the computed ones that nothing is told of them, seen without solving each. */
import { DEVIATIONS_80 } from "../physics/band.ts";
import { covarianceOf } from "../physics/calibration-spread.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import type { RoughExpectation } from "../physics/near-readings.ts";
import { varianceOf } from "../physics/symmetric-matrix.ts";
import type { RigReading } from "./calibration-readings.ts";
import { roughExpectations } from "./rough-expectations.ts";

/**
 * A side of a depth's 80 % range is at least this share of what drag, cable and speed alone make of it: one side may be the
 * shorter one.
 */
const LEAST_SIDE = 0.5;

/**
 * The readings that may be off by as much as `leastM`, m, and `sure` times their range: all others surely are not.
 */
export function notSurelyExpected(
  readings: readonly RigReading[],
  leastM: number,
  sure: number,
): RigReading[] {
  const rough = roughExpectations(readings);
  return readings.filter((one, i) => {
    const about = rough[i];
    return about === undefined || mayDisagree(one, about, leastM, sure);
  });
}

function mayDisagree(
  { reading, task: { spreads, downrigger } }: RigReading,
  about: RoughExpectation,
  leastM: number,
  sure: number,
): boolean {
  const { expectedM, withinM, perLnDrag, perSpeed } = about;
  const apartM = Math.abs(reading.measuredM - expectedM) + withinM;
  if (apartM < leastM) return false;
  const { perCable } = about;
  const { calibration, lnDragShared, lnDragCable, counterScale, counterOffsetM, speedMS } = spreads;
  const byCounter =
    calibration === undefined
      ? (perLnDrag * Math.hypot(lnDragShared, lnDragCable)) ** 2 +
        (perCable * Math.hypot(counterScale * downrigger.outM, counterOffsetM)) ** 2
      : varianceOf(covarianceOf(calibration), [perLnDrag, perCable * downrigger.outM, perCable]);
  const sideM = DEVIATIONS_80 * Math.sqrt(Math.max(0, byCounter) + (DEEP_SHARE * perSpeed * speedMS) ** 2);
  const ownM =
    DEVIATIONS_80 *
    Math.hypot(reading.sdM, DEFAULTS.modelDepthShare.value * Math.max(0, expectedM - withinM));
  // Not `>=`: where a slope is no number, only solving tells.
  return !(apartM < sure * Math.hypot(LEAST_SIDE * sideM, ownM));
}

/** Of a change of speed at every depth, what the deep water's alone makes at least. */
const DEEP_SHARE = 0.6;
