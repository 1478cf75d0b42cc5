import { BLEND_TO_RE, type CylinderDrag, FAST_AT, FAST_PER_ROOT, normalDragCoefficient } from "./drag.ts";
import { type FlowProfile, pieceAt, type Stretch, takePiece, tanhSpeedMS } from "./flow-profile.ts";
import type { Water } from "./water.ts";

/** The properties of one stretch of line that the water acts on. */
export interface LineProperties {
  /** Outer diameter, m. */
  readonly diameterM: number;
  /** Weight in the water per length, N/m; negative floats. */
  readonly weightNPerM: number;
  readonly normalDrag: CylinderDrag;
  /** Drag coefficient along the line, on the wetted surface pi times diameter (some texts use the diameter). */
  readonly tangentialCoefficient: number;
}

/**
 * A point of the line on the way up: where it is and the force (N) that everything below puts on what is above.
 * x runs astern, z down, both in m from the lower end. `leastZM` is the highest point passed so far.
 */
export interface LineState {
  xM: number;
  zM: number;
  forceXN: number;
  forceZN: number;
  leastZM: number;
}

/*
 * Numbers pass between the functions of a step in the fields of these few objects, never as arguments or answers: each
 * of those would be put on the heap, some twenty for every step.
 */

/** The point whose rates are asked for. */
const asked = { zM: 0, forceXN: 0, forceZN: 0 };

/** The rates of change per m going up at that point. */
export const rate = { x: 0, z: 0, forceX: 0, forceZ: 0 };

/** The step being tried: its length, where it ends, and its error as a share of what is allowed. */
export const trial = { stepM: 0, xM: 0, zM: 0, forceXN: 0, forceZN: 0, error: 0 };

/** The rates at the accepted point, which open the next step. */
export const opening = { x: 0, z: 0, forceX: 0, forceZ: 0 };

/** The stretch of line being climbed, prepared once so that the innermost function multiplies only. */
export const load = {
  weightNPerM: 0,
  halfDensityDiameter: 0,
  reynoldsPerSpeed: 0,
  tangentialFactor: 0,
  drag: { law: "constant", coefficient: 0, multiplier: 0 } as CylinderDrag,
  /** The law is the journal's, most of which is worked out on the spot. */
  isJournalLaw: false,
  dragMultiplier: 0,
  /** The error allowed to a step, and the length that errors of places are a share of, m. */
  tolerance: 0,
  scaleM: 0,
  flow: { type: "uniform", speedMS: 0 } as FlowProfile,
  isCurved: false,
  /** The climb ends where it comes up to this depth. */
  stopZM: Number.NEGATIVE_INFINITY,
};

/** The piece of the profile that the line is in: speed = at + slope z, between two depths. */
export const piece: Stretch = {
  index: 0,
  atMS: 0,
  slopePerS: 0,
  fromZM: Number.NEGATIVE_INFINITY,
  toZM: Number.POSITIVE_INFINITY,
};

/** Prepares a stretch of line for the steps that follow. */
export function prepareLoad(
  line: LineProperties,
  water: Water,
  flow: FlowProfile,
  stopZM: number,
  scaleM: number,
  tolerance: number,
): void {
  const halfDensity = 0.5 * water.densityKgM3;
  load.weightNPerM = line.weightNPerM;
  load.halfDensityDiameter = halfDensity * line.diameterM;
  load.reynoldsPerSpeed = line.diameterM / water.kinematicViscosityM2S;
  load.tangentialFactor = halfDensity * line.tangentialCoefficient * Math.PI * line.diameterM;
  load.drag = line.normalDrag;
  load.isJournalLaw = line.normalDrag.law === "choo-casarella-blended";
  load.dragMultiplier = line.normalDrag.multiplier;
  load.tolerance = tolerance;
  load.scaleM = scaleM;
  load.flow = flow;
  load.isCurved = flow.type === "tanh";
  load.stopZM = stopZM;
}

/** Starts at `state`, in the piece of the profile that it lies in. */
export function openStretch(state: LineState): void {
  takePiece(piece, load.flow, pieceAt(load.flow, state.zM));
  openAt(state);
  if (piece.fromZM > load.stopZM) passThinRest(state);
}

/**
 * Starts in the piece above where so little is left of the own one that it makes no difference to the force: a stream is
 * known to bend at the probe's depth, and the probe rides just above the ball. Landing on every bend takes three steps.
 */
function passThinRest(state: LineState): void {
  const { zM, forceXN, forceZN } = state;
  const { index, fromZM } = piece;
  const ownMS = piece.atMS + piece.slopePerS * zM;
  takePiece(piece, load.flow, index - 1);
  const offMS = Math.abs(piece.atMS + piece.slopePerS * zM - ownMS);
  const pushN = Math.sqrt(rate.forceX * rate.forceX + rate.forceZ * rate.forceZ);
  const tensionN = Math.sqrt(forceXN * forceXN + forceZN * forceZN);
  // Half of it is off on the mean, and the push goes with the square of the speed.
  if (offMS * (zM - fromZM) * pushN <= load.tolerance * Math.abs(ownMS) * tensionN) {
    piece.toZM = zM;
    openAt(state);
  } else takePiece(piece, load.flow, index);
}

/** Works out the rates at the accepted point afresh. */
export function openAt(state: LineState): void {
  asked.zM = state.zM;
  asked.forceXN = state.forceXN;
  asked.forceZN = state.forceZN;
  rateAtAsked();
  opening.x = rate.x;
  opening.z = rate.z;
  opening.forceX = rate.forceX;
  opening.forceZ = rate.forceZ;
}

/** Puts the length of a first step into `trial`: the force turns over a length of about tension over load; well inside it. */
export function takeFirstStep(state: LineState, mostM: number): void {
  const tensionN = Math.sqrt(state.forceXN * state.forceXN + state.forceZN * state.forceZN);
  const pushN = Math.sqrt(rate.forceX * rate.forceX + rate.forceZ * rate.forceZ);
  const loadNPerM = pushN + Math.abs(load.weightNPerM);
  trial.stepM = loadNPerM > 0 ? Math.min(mostM, (0.3 * tensionN) / loadNPerM) : mostM;
}

/** From this many half widths away a smooth layer is none yet, and within it a step is no longer than that many. */
const LAYER_REACH = 3;
const LAYER_STEP = 1.5;

/** Keeps the step being tried from leaping over a thin smooth layer, which its few looks would not see. */
export function shortenBeforeLayer(state: LineState): void {
  const { flow } = load;
  if (flow.type !== "tanh") return;
  const awayM = Math.abs(state.zM - flow.middleM) - LAYER_REACH * flow.halfWidthM;
  trial.stepM = Math.min(trial.stepM, Math.max(awayM, 0) + LAYER_STEP * flow.halfWidthM);
}

/** Rates going up at the point asked for: the line leads up and away from the force, the loads add to it. */
function rateAtAsked(): void {
  const { zM, forceXN, forceZN } = asked;
  const tensionN = Math.sqrt(forceXN * forceXN + forceZN * forceZN);
  const sin = forceXN / tensionN;
  const cos = forceZN / tensionN;
  const speedMS = load.isCurved ? tanhSpeedMS(load.flow, zM) : piece.atMS + piece.slopePerS * zM;
  const across = speedMS * cos;
  const along = speedMS * sin;
  const acrossSize = across < 0 ? -across : across;
  const reynolds = acrossSize * load.reynoldsPerSpeed;
  const coefficient =
    load.isJournalLaw && reynolds >= BLEND_TO_RE
      ? load.dragMultiplier * (FAST_AT + FAST_PER_ROOT / Math.sqrt(reynolds))
      : normalDragCoefficient(load.drag, reynolds);
  const normalN = load.halfDensityDiameter * coefficient * acrossSize * across;
  const tangentN = load.tangentialFactor * (along < 0 ? -along : along) * along;
  rate.x = -sin;
  rate.z = -cos;
  rate.forceX = normalN * cos + tangentN * sin;
  rate.forceZ = load.weightNPerM - normalN * sin + tangentN * cos;
}

/**
 * One step of the embedded pair of order 5 and 4 of Dormand & Prince 1980, J. Comput. Appl. Math. 6:19, from
 * `state` over `trial.stepM` into `trial`, with the error estimate divided by what is allowed. The seven stages
 * stand written out because a loop over a table of coefficients takes about twice the time. The stage's x is
 * never needed (nothing depends on it); its z is, by a profile that changes with depth.
 */
export function tryStep(state: LineState): void {
  const h = trial.stepM;
  const { zM: z, forceXN: p, forceZN: q } = state;
  const { x: x1, z: z1, forceX: p1, forceZ: q1 } = opening;
  asked.zM = z + h * 0.2 * z1;
  asked.forceXN = p + h * 0.2 * p1;
  asked.forceZN = q + h * 0.2 * q1;
  rateAtAsked();
  const { z: z2, forceX: p2, forceZ: q2 } = rate;
  asked.zM = z + h * (A31 * z1 + A32 * z2);
  asked.forceXN = p + h * (A31 * p1 + A32 * p2);
  asked.forceZN = q + h * (A31 * q1 + A32 * q2);
  rateAtAsked();
  const { x: x3, z: z3, forceX: p3, forceZ: q3 } = rate;
  asked.zM = z + h * (A41 * z1 + A42 * z2 + A43 * z3);
  asked.forceXN = p + h * (A41 * p1 + A42 * p2 + A43 * p3);
  asked.forceZN = q + h * (A41 * q1 + A42 * q2 + A43 * q3);
  rateAtAsked();
  const { x: x4, z: z4, forceX: p4, forceZ: q4 } = rate;
  asked.zM = z + h * (A51 * z1 + A52 * z2 + A53 * z3 + A54 * z4);
  asked.forceXN = p + h * (A51 * p1 + A52 * p2 + A53 * p3 + A54 * p4);
  asked.forceZN = q + h * (A51 * q1 + A52 * q2 + A53 * q3 + A54 * q4);
  rateAtAsked();
  const { x: x5, z: z5, forceX: p5, forceZ: q5 } = rate;
  asked.zM = z + h * (A61 * z1 + A62 * z2 + A63 * z3 + A64 * z4 + A65 * z5);
  asked.forceXN = p + h * (A61 * p1 + A62 * p2 + A63 * p3 + A64 * p4 + A65 * p5);
  asked.forceZN = q + h * (A61 * q1 + A62 * q2 + A63 * q3 + A64 * q4 + A65 * q5);
  rateAtAsked();
  const { x: x6, z: z6, forceX: p6, forceZ: q6 } = rate;
  asked.zM = z + h * (B1 * z1 + B3 * z3 + B4 * z4 + B5 * z5 + B6 * z6);
  asked.forceXN = p + h * (B1 * p1 + B3 * p3 + B4 * p4 + B5 * p5 + B6 * p6);
  asked.forceZN = q + h * (B1 * q1 + B3 * q3 + B4 * q4 + B5 * q5 + B6 * q6);
  trial.xM = state.xM + h * (B1 * x1 + B3 * x3 + B4 * x4 + B5 * x5 + B6 * x6);
  trial.zM = asked.zM;
  trial.forceXN = asked.forceXN;
  trial.forceZN = asked.forceZN;
  rateAtAsked();
  const { x: x7, z: z7, forceX: p7, forceZ: q7 } = rate;
  const errorXM = E1 * x1 + E3 * x3 + E4 * x4 + E5 * x5 + E6 * x6 + E7 * x7;
  const errorZM = E1 * z1 + E3 * z3 + E4 * z4 + E5 * z5 + E6 * z6 + E7 * z7;
  const errorXN = E1 * p1 + E3 * p3 + E4 * p4 + E5 * p5 + E6 * p6 + E7 * p7;
  const errorZN = E1 * q1 + E3 * q3 + E4 * q4 + E5 * q5 + E6 * q6 + E7 * q7;
  const positionError = Math.max(Math.abs(errorXM), Math.abs(errorZM)) / load.scaleM;
  const forceError = Math.max(Math.abs(errorXN), Math.abs(errorZN)) / Math.sqrt(p * p + q * q);
  trial.error = (h * Math.max(positionError, forceError)) / load.tolerance;
}

/** Takes the tried step over into `state`; false when the force turned back on itself, which is a slack line. */
export function acceptStep(state: LineState): boolean {
  const taut = state.forceXN * trial.forceXN + state.forceZN * trial.forceZN > 0;
  state.xM = trial.xM;
  state.zM = trial.zM;
  state.forceXN = trial.forceXN;
  state.forceZN = trial.forceZN;
  if (trial.zM < state.leastZM) state.leastZM = trial.zM;
  opening.x = rate.x;
  opening.z = rate.z;
  opening.forceX = rate.forceX;
  opening.forceZ = rate.forceZ;
  return taut;
}

const A31 = 3 / 40;
const A32 = 9 / 40;
const A41 = 44 / 45;
const A42 = -56 / 15;
const A43 = 32 / 9;
const A51 = 19372 / 6561;
const A52 = -25360 / 2187;
const A53 = 64448 / 6561;
const A54 = -212 / 729;
const A61 = 9017 / 3168;
const A62 = -355 / 33;
const A63 = 46732 / 5247;
const A64 = 49 / 176;
const A65 = -5103 / 18656;
const B1 = 35 / 384;
const B3 = 500 / 1113;
const B4 = 125 / 192;
const B5 = -2187 / 6784;
const B6 = 11 / 84;
const E1 = 71 / 57600;
const E3 = -71 / 16695;
const E4 = 71 / 1920;
const E5 = -17253 / 339200;
const E6 = 22 / 525;
const E7 = -1 / 40;
