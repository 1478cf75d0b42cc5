/** A fit as plain figures with their standard errors. */
import type { CalibrationFit } from "../physics/calibrate.ts";
import { spreadOf } from "../physics/calibration-spread.ts";

/** A value with one standard error. */
interface FittedValue {
  readonly value: number;
  readonly error: number;
}

/** What a `calibrate` line of the gear book holds. */
interface FittedFigures {
  /** The multiplier itself, not its logarithm. */
  readonly drag: FittedValue;
  readonly counterScale: FittedValue;
  readonly counterOffsetM: FittedValue;
  /** Correlations of the errors. */
  readonly links: { readonly dragScale: number; readonly dragOffset: number; readonly scaleOffset: number };
}

/** The figures of a fit. */
export function fittedFigures(fit: CalibrationFit): FittedFigures {
  const { lnDrag, counterScale, counterOffsetM } = fit.values;
  const spread = spreadOf(fit.covariance);
  const drag = Math.exp(lnDrag);
  return {
    drag: { value: drag, error: drag * spread.lnDragSd },
    counterScale: { value: counterScale, error: spread.counterScaleSd },
    counterOffsetM: { value: counterOffsetM, error: spread.counterOffsetSdM },
    links: {
      dragScale: spread.dragWithScale,
      dragOffset: spread.dragWithOffset,
      scaleOffset: spread.scaleWithOffset,
    },
  };
}
