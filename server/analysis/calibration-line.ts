/** A fit as the line of the gear book that holds it. */
import { quote } from "../../grammar/print.ts";
import { findUnit, fromSi } from "../../grammar/units.ts";
import { lengthUnit } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";
import type { CalibrationFit } from "../physics/calibrate.ts";
import type { DiverFit } from "../physics/calibrate-diver.ts";
import { isCounterHeld } from "../physics/calibrate-line.ts";
import type { RigCalibration } from "./calibration.ts";
import { fittedFigures } from "./fitted-figures.ts";
import type { LineCalibration } from "./line-calibration.ts";

/** The dated line, in the boat's units; undefined where there is no fit. It holds from the day of the last reading. */
export function calibrationLine(
  gear: Gear | undefined,
  { rig, date, fit }: Pick<RigCalibration, "rig" | "date" | "fit">,
): string | undefined {
  return fit.ok ? `${opening(rig, date)} ${dragWords(gear, fit)} readings ${fit.readings.length}` : undefined;
}

/** The same of a long line or a diver. */
export function lineCalibrationLine(
  gear: Gear | undefined,
  { rig, date, what }: LineCalibration,
): string | undefined {
  if (what.is === "line") return calibrationLine(gear, { rig, date, fit: what.fit });
  const { fit } = what;
  return fit.ok ? `${opening(rig, date)} ${areaWords(fit)} readings ${fit.readings.length}` : undefined;
}

function opening(rig: string, date: string): string {
  return `${date} calibrate ${/^[#"]|\s|,$/u.test(rig) ? quote(rig) : rig}`;
}

/** Drag and counter; the counter is left out where lengths were counted in colors. */
function dragWords(gear: Gear | undefined, fit: CalibrationFit): string {
  const { drag, counterScale: scale, counterOffsetM: offset, links } = fittedFigures(fit);
  const unit = lengthUnit(gear);
  const row = findUnit(unit);
  const length = (m: number): string => `${digits(row === undefined ? m : fromSi(m, row), 2)} ${unit}`;
  const dragged = `drag ${digits(drag.value, 3)} drag-error ${digits(drag.error, 3)}`;
  if (isCounterHeld(fit)) return dragged;
  return [
    dragged,
    `counter-scale ${digits(scale.value, 4)} counter-scale-error ${digits(scale.error, 4)}`,
    `counter-offset ${length(offset.value)} counter-offset-error ${length(offset.error)}`,
    `drag-scale-link ${digits(links.dragScale, 3)} drag-offset-link ${digits(links.dragOffset, 3)}`,
    `scale-offset-link ${digits(links.scaleOffset, 3)}`,
  ].join(" ");
}

function areaWords({ liftAreaM2, dragAreaM2, spread }: DiverFit): string {
  const area = (m2: number): string => `${digits(m2 * 1e4, 1)} cm2`;
  return [
    `lift-area ${area(liftAreaM2)} lift-area-error ${area(liftAreaM2 * spread.lnLiftSd)}`,
    `drag-area ${area(dragAreaM2)} drag-area-error ${area(dragAreaM2 * spread.lnDragSd)}`,
    `area-link ${digits(spread.link, 3)}`,
  ].join(" ");
}

function digits(value: number, decimals: number): string {
  return String(Number(value.toFixed(decimals)) || 0);
}
