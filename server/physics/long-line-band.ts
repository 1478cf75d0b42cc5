import { type Band, bandsOf, type Uncertain } from "./band.ts";
import { whyNoLongLine } from "./check-long-line.ts";
import type { Place } from "./downrigger.ts";
import type { BandedPlace } from "./downrigger-band.ts";
import { type LongLine, type SolvedLongLine, solveCheckedLongLine } from "./long-line.ts";
import { fasterLine, type LongLineParameter, longerLine } from "./long-line-parameters.ts";
import { type Refusal, refuse } from "./refusal.ts";
import { SOLVER_TOLERANCE } from "./towed-line.ts";

/** A solved long line with bands on the joint (the diver, the in-line weight) and on the lure. */
export interface BandedLongLine {
  readonly ok: true;
  readonly solved: SolvedLongLine;
  readonly joint: BandedPlace;
  readonly lure: BandedPlace;
}

/** How exactly a band's sides and the two slopes are solved, and the slopes' steps. */
const SIDE_TOLERANCE = 1e-4;
const SLOPE_TOLERANCE = 1e-7;
const SPEED_STEP_MS = 0.02;
const OUT_STEP_M = 0.5;

/**
 * Where a long line's joint and lure are, with an 80 % band on each depth from the parameters given, and the
 * slopes for "ten feet more" and "a little faster". Refuses what `solveLongLine` refuses.
 */
export function solveLongLineBand(
  line: LongLine,
  parameters: readonly LongLineParameter[],
): BandedLongLine | Refusal {
  const why = whyNoLongLine(line);
  if (why !== undefined) return refuse(why);
  const solved = solveCheckedLongLine(line, SOLVER_TOLERANCE);
  if (!solved.ok) return solved;
  const values = depthsOf(solved);
  const inputs: Uncertain[] = parameters.map(({ key, moved }) => ({
    key,
    at: (deviations) => depthsNear(moved(line, deviations), SIDE_TOLERANCE),
  }));
  const bands = bandsOf(values, inputs);
  const bySpeed = slopes(values, depthsNear(fasterLine(line, SPEED_STEP_MS), SLOPE_TOLERANCE), SPEED_STEP_MS);
  const byOut = slopes(values, depthsNear(longerLine(line, OUT_STEP_M), SLOPE_TOLERANCE), OUT_STEP_M);
  const banded = (place: Place, i: number): BandedPlace => bandedPlace(place, bands[i], bySpeed[i], byOut[i]);
  return { ok: true, solved, joint: banded(solved.joint, 0), lure: banded(solved.lure, 1) };
}

function depthsOf({ joint, lure }: SolvedLongLine): number[] {
  return [joint.depthM, lure.depthM];
}

function depthsNear(line: LongLine, tolerance: number): number[] | undefined {
  const solved = solveCheckedLongLine(line, tolerance);
  return solved.ok ? depthsOf(solved) : undefined;
}

function slopes(values: readonly number[], ahead: readonly number[] | undefined, step: number): number[] {
  return ahead === undefined ? [] : ahead.map((depth, i) => (depth - (values[i] ?? 0)) / step);
}

/** A band's shallow end never rises above the surface. */
function bandedPlace(place: Place, band: Band | undefined, bySpeed = 0, byOut = 0): BandedPlace {
  return {
    ...place,
    lowM: Math.min(place.depthM, Math.max(0, band?.low ?? place.depthM)),
    highM: band?.high ?? place.depthM,
    depthPerSpeed: bySpeed,
    depthPerOut: byOut,
    shares: band?.shares ?? [],
  };
}
