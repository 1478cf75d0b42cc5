import { DEFAULTS } from "./defaults.ts";
import type { Downrigger } from "./downrigger.ts";

/** What a calibration finds for one cable and its counter. */
export interface CalibrationValues {
  /** Logarithm of the cable's drag multiplier. */
  readonly lnDrag: number;
  /** Cable out is scale times the counter's reading plus offset. */
  readonly counterScale: number;
  readonly counterOffsetM: number;
}

/** Where a fit starts: the defaults. */
export function startValues(): CalibrationValues {
  return {
    lnDrag: Math.log(DEFAULTS.cableDragMultiplier.value),
    counterScale: DEFAULTS.counterScale.value,
    counterOffsetM: DEFAULTS.counterOffsetM.value,
  };
}

/** A rig with its cable and counter as a calibration says. */
export function withValues(rig: Downrigger, values: CalibrationValues): Downrigger {
  return {
    ...rig,
    counterScale: values.counterScale,
    counterOffsetM: values.counterOffsetM,
    cable: { ...rig.cable, dragMultiplier: Math.exp(values.lnDrag) },
  };
}
