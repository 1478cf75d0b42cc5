import {
  acceptStep,
  type LineProperties,
  type LineState,
  load,
  openAt,
  opening,
  openStretch,
  piece,
  prepareLoad,
  rate,
  shortenBeforeLayer,
  takeFirstStep,
  trial,
  tryStep,
} from "./climb-step.ts";
import { type FlowProfile, takePiece } from "./flow-profile.ts";
import type { Water } from "./water.ts";

export type { LineProperties, LineState } from "./climb-step.ts";

/** Steps allowed in one segment; 300 m of copper needs about 60, a hard jump in a drag law about 120. */
const MOST_STEPS = 20_000;

/**
 * Integrates the equilibrium of a line from `state` upward over `lengthM`, changing `state` in place. Answers
 * `undefined`, or a plain reason when the line goes slack on the way. The tension must be above zero at the
 * start. `tolerance` bounds each step's error, relative to `scaleM` for positions and to the tension for the
 * force; the whole line comes out about ten times better than that.
 *
 * Upward, because the force at the lower end is known and errors die out; downward they grow (the upper part of
 * a long heavy line lies at its critical angle). The force is carried as a vector: no angle to wrap. Steps end
 * exactly where a profile of straight pieces bends, since an integrator loses its order on a bend.
 */
export function climbLine(
  state: LineState,
  line: LineProperties,
  lengthM: number,
  water: Water,
  flow: FlowProfile,
  scaleM: number,
  tolerance: number,
): string | undefined {
  prepareLoad(line, water, flow, Number.NEGATIVE_INFINITY, scaleM, tolerance);
  return climbPrepared(state, lengthM);
}

/**
 * The same, ending where the line comes up to the depth `stopZM`, below which it must start. Answers the length
 * it took, `undefined` when `mostM` of line do not reach so high, or a plain reason when the line goes slack.
 */
export function climbLineTo(
  stopZM: number,
  state: LineState,
  line: LineProperties,
  mostM: number,
  water: Water,
  flow: FlowProfile,
  scaleM: number,
  tolerance: number,
): number | undefined | string {
  prepareLoad(line, water, flow, stopZM, scaleM, tolerance);
  const why = climbPrepared(state, mostM);
  if (why !== undefined) return why;
  return state.zM <= stopZM + landedM() ? mostM - left.lengthM : undefined;
}

/** How near to a depth to land on it, as a share of the whole line, and of the error allowed to a step. */
const LANDED_SHARE = 1e-10;
const LANDED_TOLERANCES = 1e-3;

function landedM(): number {
  return Math.max(LANDED_SHARE, LANDED_TOLERANCES * load.tolerance) * load.scaleM;
}

/** How much of the line is still to climb, m: some of it where the stop was reached before. */
const left = { lengthM: 0 };

/** Climbs `lengthM`, or up to the stop; answers why it cannot. */
function climbPrepared(state: LineState, lengthM: number): string | undefined {
  left.lengthM = lengthM;
  openStretch(state);
  takeFirstStep(state, lengthM);
  let stepM = trial.stepM;
  let turns = 0;
  for (let count = 0; left.lengthM > 0; count++) {
    if (count > MOST_STEPS) return "the line's shape could not be settled";
    trial.stepM = Math.min(stepM, left.lengthM);
    if (load.isCurved) shortenBeforeLayer(state);
    const triedM = trial.stepM;
    tryStep(state);
    const { error } = trial;
    // The usual controller of a fifth-order pair: aim at 0.9 of the bound, never change more than tenfold.
    const growth = error > 1e-9 ? 0.9 * error ** -0.2 : 10;
    stepM = triedM * Math.min(10, Math.max(0.1, growth));
    if (!(stepM > 0)) return "the line's shape could not be settled";
    if (!(error <= 1)) continue;
    const edgeZM = edgePassed();
    if (edgeZM !== undefined) {
      if (Math.abs(state.zM - edgeZM) <= landedM() && turns < 2) {
        if (edgeZM === load.stopZM) return undefined;
        crossEdge(edgeZM);
        openAt(state);
        turns++;
        continue;
      }
      landOn(edgeZM, state);
    }
    turns = 0;
    if (!acceptStep(state)) return "the line goes slack part of the way up";
    left.lengthM = trial.stepM === left.lengthM ? 0 : left.lengthM - trial.stepM;
    if (edgeZM === undefined) continue;
    if (edgeZM === load.stopZM) return undefined;
    crossEdge(edgeZM);
  }
  return undefined;
}

/** The depth that the tried step went past: a bend of the profile or the stop; `undefined` for none. */
function edgePassed(): number | undefined {
  const upperZM = Math.max(piece.fromZM, load.stopZM);
  if (trial.zM < upperZM) return upperZM;
  return trial.zM > piece.toZM ? piece.toZM : undefined;
}

/** Goes over into the next piece, up or down. */
function crossEdge(edgeZM: number): void {
  takePiece(piece, load.flow, piece.index + (edgeZM === piece.toZM ? 1 : -1));
}

/**
 * Shortens the tried step so that it ends on a depth that it passed. The first guess is from the cubic through both ends
 * of the step, then Newton's and regula falsi on real steps: one or two tries.
 */
function landOn(edgeZM: number, state: LineState): void {
  const slackM = landedM();
  const triedM = trial.stepM;
  let nearM = 0;
  let nearMiss = state.zM - edgeZM;
  let farM = triedM;
  let farMiss = trial.zM - edgeZM;
  let stepM = triedM * cubicRoot(nearMiss, opening.z * triedM, farMiss, rate.z * triedM);
  for (let count = 0; count < 60; count++) {
    if (!(stepM > nearM && stepM < farM)) stepM = nearM + ((farM - nearM) * nearMiss) / (nearMiss - farMiss);
    if (!(stepM > nearM && stepM < farM)) stepM = 0.5 * (nearM + farM);
    trial.stepM = stepM;
    tryStep(state);
    const miss = trial.zM - edgeZM;
    if (Math.abs(miss) <= slackM) break;
    const newtonM = stepM - miss / rate.z;
    if (miss > 0 === nearMiss > 0) {
      nearM = stepM;
      nearMiss = miss;
    } else {
      farM = stepM;
      farMiss = miss;
    }
    stepM = newtonM;
  }
}

/** The share of the way at which a cubic crosses zero, from its values, of opposite sign, and slopes at 0 and 1. */
function cubicRoot(from: number, fromSlope: number, to: number, toSlope: number): number {
  const change = to - from;
  const c = 3 * change - 2 * fromSlope - toSlope;
  const d = fromSlope + toSlope - 2 * change;
  let at = -from / change;
  for (let round = 0; round < 3; round++)
    at -= (from + at * (fromSlope + at * (c + at * d))) / (fromSlope + at * (2 * c + 3 * at * d));
  return at;
}
