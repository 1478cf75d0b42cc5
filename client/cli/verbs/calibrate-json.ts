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
  const { fit, readings } = calibration;
  const figures = fit.ok ? fittedFigures(fit) : undefined;
  return {
    ...groupJson(calibration, calibration),
    drag: figures?.drag ?? null,
    counterScale: figures?.counterScale ?? null,
    counterOffsetM: figures?.counterOffsetM ?? null,
    liftAreaM2: null,
    dragAreaM2: null,
    areaLink: null,
    links: figures?.links ?? null,
    open: openOf(calibration),
    gearLine: calibrationLine(readings[0].gear, calibration) ?? null,
    readings: readingsJson(calibration, shownByUri),
  };
}

/** The fit of a long line or a diver with its readings; a counter that was not fitted is null. */
export function calibratedLineJson(
  calibration: LineCalibration,
  shownByUri: ReadonlyMap<string, string>,
): CalibratedRigJson {
  const { what, readings } = calibration;
  const line = what.is === "line" && what.fit.ok ? what.fit : undefined;
  const diver = what.is === "diver" && what.fit.ok ? what.fit : undefined;
  const figures = line === undefined ? undefined : fittedFigures(line);
  const counter = what.is === "line" && what.isByColors ? undefined : figures;
  return {
    ...groupJson(calibration, what),
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
    gearLine: lineCalibrationLine(readings[0].gear, calibration) ?? null,
    readings: readingsJson({ readings, fit: what.fit }, shownByUri),
  };
}

/** What a fit's JSON says whatever was fitted. */
function groupJson(
  { boat, rig, since, date, next }: RigCalibration | LineCalibration,
  { fit }: Pick<Fitted, "fit">,
): Pick<CalibratedRigJson, "boat" | "rig" | "gearSince" | "date" | "next" | "why"> {
  return {
    boat,
    rig,
    gearSince: since === "" ? null : since,
    date,
    next: next ?? null,
    why: fit.ok ? null : fit.why,
  };
}

function readingsJson(fitted: Fitted, shownByUri: ReadonlyMap<string, string>): FittedReadingJson[] {
  return fitted.readings.map((_, index) => readingJson(fitted, index, shownByUri));
}

type Fitted = Pick<FittedGroup, "readings" | "fit">;

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
  { readings, fit }: Fitted,
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
