/** A fit as the line of the gear book that holds it. */
import { quote } from "../../grammar/print.ts";
import { findUnit, fromSi } from "../../grammar/units.ts";
import { lengthUnit } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";
import type { RigCalibration } from "./calibration.ts";
import { fittedFigures } from "./fitted-figures.ts";

/** The dated line, in the boat's units; undefined where there is no fit. It holds from the day of the last reading. */
export function calibrationLine(
  gear: Gear | undefined,
  { rig, date, fit }: RigCalibration,
): string | undefined {
  const figures = fittedFigures(fit);
  if (!fit.ok || figures === undefined) return undefined;
  const { drag, counterScale: scale, counterOffsetM: offset, links } = figures;
  const unit = lengthUnit(gear);
  const row = findUnit(unit);
  const length = (m: number): string => `${digits(row === undefined ? m : fromSi(m, row), 2)} ${unit}`;
  return [
    `${date} calibrate ${/^[#"]|\s|,$/u.test(rig) ? quote(rig) : rig}`,
    `drag ${digits(drag.value, 3)} drag-error ${digits(drag.error, 3)}`,
    `counter-scale ${digits(scale.value, 4)} counter-scale-error ${digits(scale.error, 4)}`,
    `counter-offset ${length(offset.value)} counter-offset-error ${length(offset.error)}`,
    `drag-scale-link ${digits(links.dragScale, 3)} drag-offset-link ${digits(links.dragOffset, 3)}`,
    `scale-offset-link ${digits(links.scaleOffset, 3)} readings ${fit.readings.length}`,
  ].join(" ");
}

function digits(value: number, decimals: number): string {
  return String(Number(value.toFixed(decimals)) || 0);
}
