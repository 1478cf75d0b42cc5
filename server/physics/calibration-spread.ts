import { withValues } from "./calibration-values.ts";
import type { Downrigger } from "./downrigger.ts";
import { cholesky, type Matrix } from "./symmetric-matrix.ts";

/** How well a calibration knows ln drag, the counter's scale and its offset (m), with what ties them. */
export interface CalibrationSpread {
  readonly lnDragSd: number;
  readonly counterScaleSd: number;
  readonly counterOffsetSdM: number;
  /** Correlations; 0 where nothing is said. */
  readonly dragWithScale: number;
  readonly dragWithOffset: number;
  readonly scaleWithOffset: number;
}

/** The covariance of ln drag, scale and offset, by rows. */
export function covarianceOf(spread: CalibrationSpread): number[] {
  const { lnDragSd: d, counterScaleSd: k, counterOffsetSdM: b } = spread;
  const dk = spread.dragWithScale * d * k;
  const db = spread.dragWithOffset * d * b;
  const kb = spread.scaleWithOffset * k * b;
  return [d * d, dk, db, dk, k * k, kb, db, kb, b * b];
}

/** The spread of a covariance. */
export function spreadOf(covariance: Matrix): CalibrationSpread {
  const at = (i: number): number => covariance[i] ?? Number.NaN;
  const [d, k, b] = [0, 4, 8].map((i) => Math.sqrt(at(i))) as [number, number, number];
  return {
    lnDragSd: d,
    counterScaleSd: k,
    counterOffsetSdM: b,
    dragWithScale: at(1) / (d * k),
    dragWithOffset: at(2) / (d * b),
    scaleWithOffset: at(5) / (k * b),
  };
}

/** Independent steps of ln drag, scale and offset (m) that together have a spread's covariance. */
export interface CalibrationStep {
  readonly key: string;
  readonly lnDrag: number;
  readonly counterScale: number;
  readonly counterOffsetM: number;
}

const KEYS = ["calibration-drag", "calibration-scale", "calibration-offset"] as const;

/**
 * The steps of one deviation along a spread's axes: columns of its Cholesky factor. Correlations written with few
 * digits may not fit together; then they are drawn toward zero until they do, which only widens a band.
 */
export function calibrationSteps(spread: CalibrationSpread): CalibrationStep[] {
  const factor = factorOf(spread);
  return KEYS.map((key, column) => {
    const at = (row: number): number => factor[3 * row + column] ?? 0;
    return { key, lnDrag: at(0), counterScale: at(1), counterOffsetM: at(2) };
  });
}

/** Three independent ways to move a rig that together have the spread's covariance. */
interface CalibrationAxis {
  readonly key: string;
  readonly moved: (rig: Downrigger, deviations: number) => Downrigger;
}

/** The axes of a spread as they move a downrigger. */
export function calibrationAxes(spread: CalibrationSpread): CalibrationAxis[] {
  return calibrationSteps(spread).map(({ key, lnDrag, counterScale, counterOffsetM }) => {
    const moved = (rig: Downrigger, deviations: number): Downrigger =>
      withValues(rig, {
        lnDrag: Math.log(rig.cable.dragMultiplier) + lnDrag * deviations,
        counterScale: Math.max(0, rig.counterScale + counterScale * deviations),
        counterOffsetM: rig.counterOffsetM + counterOffsetM * deviations,
      });
    return { key, moved };
  });
}

function factorOf(spread: CalibrationSpread): number[] {
  for (let kept = 1; kept > 0.01; kept *= 0.98) {
    const factor = cholesky(
      covarianceOf({
        ...spread,
        dragWithScale: spread.dragWithScale * kept,
        dragWithOffset: spread.dragWithOffset * kept,
        scaleWithOffset: spread.scaleWithOffset * kept,
      }),
      3,
    );
    if (factor !== undefined) return factor;
  }
  return [spread.lnDragSd, 0, 0, 0, spread.counterScaleSd, 0, 0, 0, spread.counterOffsetSdM];
}
