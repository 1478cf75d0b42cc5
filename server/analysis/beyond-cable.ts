/** Depths and distances that no length of cable out allows. */
import type { Gear } from "../model/gear-types.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";

/** How far a measure is beyond the cable that was out, m; and whether even a counter that reads short can't explain it. */
export interface BeyondCable {
  readonly excessM: number;
  readonly isBeyond: boolean;
}

/** Holds a measure, m, of the ball or as deep as the ball at most, against the cable out, m. */
export function beyondCable(gear: Gear, measuredM: number, outM: number): BeyondCable {
  const excessM = measuredM - outM;
  const mostM =
    outM * thresholdOf(gear, THRESHOLDS.counterShare) + thresholdOf(gear, THRESHOLDS.counterSlack);
  return { excessM, isBeyond: excessM > mostM };
}
