import type { Band, Uncertain } from "./band.ts";
import { whyNoLongLine } from "./check-long-line.ts";
import type { Place } from "./downrigger.ts";
import { type BandedPlace, once } from "./downrigger-band.ts";
import { JOURNAL, SIDE, SLOPE } from "./exactness.ts";
import { type LineDepths, lineNeighboursOf, type SolveLineNear } from "./line-neighbours.ts";
import { type LongLine, type SolvedLongLine, solveCheckedLongLine } from "./long-line.ts";
import { fasterLine, type LongLineParameter, longerLine } from "./long-line-parameters.ts";
import { bandsOrSamples } from "./lopsided-bands.ts";
import { type Refusal, refuse } from "./refusal.ts";

/** A solved long line with bands on the joint (the diver, the in-line weight) and on the lure. */
export interface BandedLongLine {
  readonly ok: true;
  readonly solved: SolvedLongLine;
  readonly joint: BandedPlace;
  readonly lure: BandedPlace;
}

/** Steps of the two slopes. */
const SPEED_STEP_MS = 0.02;
const OUT_STEP_M = 0.5;

/**
 * Where a long line's joint and lure are, with an 80 % band on each depth from the parameters given, and the
 * slopes for "ten feet more" and "a little faster", each solved when it is first looked at. Refuses what
 * `solveLongLine` refuses.
 */
export function solveLongLineBand(
  line: LongLine,
  parameters: readonly LongLineParameter[] | (() => readonly LongLineParameter[]),
): BandedLongLine | Refusal {
  const why = whyNoLongLine(line);
  if (why !== undefined) return refuse(why);
  const solved = solveCheckedLongLine(line, JOURNAL.tolerance);
  if (!solved.ok) return solved;
  const values = depthsOf(solved);
  const near = lineNeighboursOf(line, { jointM: solved.joint.depthM, lureM: solved.lure.depthM });
  const slopesTo = (other: LongLine, step: number) => slopes(values, listed(near(other, SLOPE)), step);
  const bands = once(() => {
    const made = typeof parameters === "function" ? parameters() : parameters;
    const inputs = made.map((parameter) => sidesOf(parameter, line, values, near));
    return bandsOrSamples(values, inputs, (deviations) =>
      listed(near(movedBy(line, made, deviations), SIDE)),
    );
  });
  const bySpeed = once(() => slopesTo(fasterLine(line, SPEED_STEP_MS), SPEED_STEP_MS));
  const byOut = once(() => slopesTo(longerLine(line, OUT_STEP_M), OUT_STEP_M));
  const banded = (place: Place, i: number): BandedPlace => bandedPlace(place, i, { bands, bySpeed, byOut });
  return { ok: true, solved, joint: banded(solved.joint, 0), lure: banded(solved.lure, 1) };
}

/** The line with every parameter moved by so many of its standard deviations. */
function movedBy(
  line: LongLine,
  parameters: readonly LongLineParameter[],
  deviations: readonly number[],
): LongLine {
  return parameters.reduce((moved, { moved: move }, i) => {
    const by = deviations[i] ?? 0;
    return by === 0 ? moved : move(moved, by);
  }, line);
}

function depthsOf({ joint, lure }: SolvedLongLine): number[] {
  return [joint.depthM, lure.depthM];
}

/** An uncertain input of the line: its second side starts as far the other way as the first one was found. */
function sidesOf(
  { key, moved }: LongLineParameter,
  line: LongLine,
  values: readonly number[],
  near: SolveLineNear,
): Uncertain {
  const lureM = values[1] ?? 0;
  let guessM = lureM;
  return {
    key,
    at: (deviations) => {
      const other = moved(line, deviations);
      // An input that has no say here.
      if (other === line) return values;
      const found = near(other, SIDE, guessM);
      guessM = found === undefined ? lureM : 2 * lureM - found.lureM;
      return listed(found);
    },
  };
}

function listed(depths: LineDepths | undefined): number[] | undefined {
  return depths === undefined ? undefined : [depths.jointM, depths.lureM];
}

function slopes(values: readonly number[], ahead: readonly number[] | undefined, step: number): number[] {
  return ahead === undefined ? [] : ahead.map((depth, i) => (depth - (values[i] ?? 0)) / step);
}

/** What is solved when it is first asked for, by depth in the order of `depthsOf`. */
interface Later {
  readonly bands: () => readonly Band[];
  readonly bySpeed: () => readonly number[];
  readonly byOut: () => readonly number[];
}

/** A band's shallow end never rises above the surface. */
function bandedPlace(place: Place, index: number, { bands, bySpeed, byOut }: Later): BandedPlace {
  return {
    ...place,
    get lowM() {
      return Math.min(place.depthM, Math.max(0, bands()[index]?.low ?? place.depthM));
    },
    get highM() {
      return bands()[index]?.high ?? place.depthM;
    },
    get depthPerSpeed() {
      return bySpeed()[index] ?? 0;
    },
    get depthPerOut() {
      return byOut()[index] ?? 0;
    },
    get shares() {
      return bands()[index]?.shares ?? [];
    },
  };
}
