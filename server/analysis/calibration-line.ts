/** A fit as the line of the gear book that holds it. */
import { quote } from "../../grammar/print.ts";
import { findUnit, fromSi } from "../../grammar/units.ts";
import { lengthUnit } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";
import { spreadOf } from "../physics/calibration-spread.ts";
import type { RigCalibration } from "./calibration.ts";

/** The dated line, in the boat's units; undefined where there is no fit. It holds from the day of the last reading. */
export function calibrationLine(
  gear: Gear | undefined,
  { rig, date, fit }: RigCalibration,
): string | undefined {
  if (!fit.ok) return undefined;
  const { values, covariance, readings } = fit;
  const spread = spreadOf(covariance);
  const drag = Math.exp(values.lnDrag);
  const unit = lengthUnit(gear);
  const row = findUnit(unit);
  const length = (m: number): string => `${digits(row === undefined ? m : fromSi(m, row), 2)} ${unit}`;
  return [
    `${date} calibrate ${/^[#"]|\s|,$/u.test(rig) ? quote(rig) : rig}`,
    `drag ${digits(drag, 3)} drag-error ${digits(drag * spread.lnDragSd, 3)}`,
    `counter-scale ${digits(values.counterScale, 4)} counter-scale-error ${digits(spread.counterScaleSd, 4)}`,
    `counter-offset ${length(values.counterOffsetM)} counter-offset-error ${length(spread.counterOffsetSdM)}`,
    `drag-scale-link ${digits(spread.dragWithScale, 3)} drag-offset-link ${digits(spread.dragWithOffset, 3)}`,
    `scale-offset-link ${digits(spread.scaleWithOffset, 3)} readings ${readings.length}`,
  ].join(" ");
}

function digits(value: number, decimals: number): string {
  return String(Number(value.toFixed(decimals)) || 0);
}
