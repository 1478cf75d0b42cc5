/** Calibrations for other programs. */
import type { RigCalibration } from "../../../server/analysis/calibration.ts";
import { calibrationLine, lineCalibrationLine } from "../../../server/analysis/calibration-line.ts";
import { fittedFigures } from "../../../server/analysis/fitted-figures.ts";
import type { FittedGroup } from "../../../server/analysis/fitted-group.ts";
import { type LineCalibration, lineLacks } from "../../../server/analysis/line-calibration.ts";
import { clockOf } from "../depth-lines.ts";
import type { CalibratedRigJson, FittedReadingJson, UnusedReadingJson } from "../output-schemas.ts";
import type { Gathered } from "./calibrate.ts";

/** One rig's fit with its readings. */
export function calibratedRigJson(
  calibration: RigCalibration,
  shownByUri: ReadonlyMap<string, string>,
): CalibratedRigJson {
  const { boat, rig, since, date, fit, next, readings } = calibration;
  const figures = fit.ok ? fittedFigures(fit) : undefined;
  return {
    boat,
    rig,
    gearSince: since === "" ? null : since,
    date,
    drag: figures?.drag ?? null,
    counterScale: figures?.counterScale ?? null,
    counterOffsetM: figures?.counterOffsetM ?? null,
    liftAreaM2: null,
    dragAreaM2: null,
    areaLink: null,
    links: figures?.links ?? null,
    open: openOf(calibration),
    next: next ?? null,
    gearLine: calibrationLine(readings[0].gear, calibration) ?? null,
    why: fit.ok ? null : fit.why,
    readings: readings.map((_, index) => readingJson(calibration, index, shownByUri)),
  };
}

/** The fit of a long line or a diver with its readings; a counter that was not fitted is null. */
export function calibratedLineJson(
  calibration: LineCalibration,
  shownByUri: ReadonlyMap<string, string>,
): CalibratedRigJson {
  const { boat, rig, since, date, what, next, readings } = calibration;
  const { fit } = what;
  const line = what.is === "line" && what.fit.ok ? what.fit : undefined;
  const diver = what.is === "diver" && what.fit.ok ? what.fit : undefined;
  const figures = line === undefined ? undefined : fittedFigures(line);
  const counter = what.is === "line" && what.isByColors ? undefined : figures;
  return {
    boat,
    rig,
    gearSince: since === "" ? null : since,
    date,
    drag: figures?.drag ?? null,
    counterScale: counter?.counterScale ?? null,
    counterOffsetM: counter?.counterOffsetM ?? null,
    liftAreaM2:
      diver === undefined
        ? null
        : { value: diver.liftAreaM2, error: diver.liftAreaM2 * diver.spread.lnLiftSd },
    dragAreaM2:
      diver === undefined
        ? null
        : { value: diver.dragAreaM2, error: diver.dragAreaM2 * diver.spread.lnDragSd },
    areaLink: diver?.spread.link ?? null,
    links: counter?.links ?? null,
    open: openOfLine(calibration),
    next: next ?? null,
    gearLine: lineCalibrationLine(readings[0].gear, calibration) ?? null,
    why: fit.ok ? null : fit.why,
    readings: readings.map((_, index) => readingJson({ readings, fit }, index, shownByUri)),
  };
}

function openOfLine({ what }: LineCalibration): CalibratedRigJson["open"] {
  const lacks = lineLacks(what);
  return [
    ...(lacks.drag ? (["drag"] as const) : []),
    ...(lacks.dragFromCounter ? (["drag-from-counter"] as const) : []),
    ...(lacks.areas ? (["areas"] as const) : []),
  ];
}

function openOf({ lacks }: RigCalibration): CalibratedRigJson["open"] {
  if (lacks === undefined) return [];
  return [
    ...(lacks.drag ? (["drag"] as const) : []),
    ...(lacks.counter ? (["counter"] as const) : []),
    ...(lacks.scaleFromOffset ? (["scale-from-offset"] as const) : []),
    ...(lacks.dragFromCounter ? (["drag-from-counter"] as const) : []),
  ];
}

function readingJson(
  { readings, fit }: Pick<FittedGroup, "readings" | "fit">,
  index: number,
  shownByUri: ReadonlyMap<string, string>,
): FittedReadingJson {
  const one = readings[index] ?? readings[0];
  const fitted = fit.ok ? fit.readings.find((row) => row.index === index) : undefined;
  const leftOut = fit.ok ? fit.leftOut.find((row) => row.index === index) : undefined;
  return {
    path: shownByUri.get(one.uri) ?? one.uri,
    line: one.event.lineIndex,
    trip: one.date,
    time: clockOf(one.event, one.zone),
    kind: one.reading.as,
    outM: one.counterM,
    speedMS: one.speed.value,
    measuredM: one.reading.measuredM,
    expectedM: fitted?.expectedM ?? null,
    sdM: fitted?.sdM ?? null,
    weight: fitted?.weight ?? 0,
    why: leftOut?.why ?? (fit.ok ? null : fit.why),
  };
}

/** A line that tells nothing. */
export function unusedJson({ path, trip, one }: Gathered["unused"][number]): UnusedReadingJson {
  return { path, line: one.event.lineIndex, trip, rig: one.rig, why: one.why };
}
