/** Calibrations for other programs. */
import type { RigCalibration } from "../../../server/analysis/calibration.ts";
import { calibrationLine } from "../../../server/analysis/calibration-line.ts";
import { fittedFigures } from "../../../server/analysis/fitted-figures.ts";
import { clockOf } from "../depth-lines.ts";
import type { CalibratedRigJson, FittedReadingJson, UnusedReadingJson } from "../output-schemas.ts";
import type { Gathered } from "./calibrate.ts";

/** One rig's fit with its readings. */
export function calibratedRigJson(
  calibration: RigCalibration,
  shownByUri: ReadonlyMap<string, string>,
): CalibratedRigJson {
  const { boat, rig, since, date, fit, next, readings } = calibration;
  const figures = fittedFigures(fit);
  return {
    boat,
    rig,
    gearSince: since === "" ? null : since,
    date,
    drag: figures?.drag ?? null,
    counterScale: figures?.counterScale ?? null,
    counterOffsetM: figures?.counterOffsetM ?? null,
    links: figures?.links ?? null,
    open: openOf(calibration),
    next: next ?? null,
    gearLine: calibrationLine(readings[0].gear, calibration) ?? null,
    why: fit.ok ? null : fit.why,
    readings: readings.map((_, index) => readingJson(calibration, index, shownByUri)),
  };
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
  { readings, fit }: RigCalibration,
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
