import { whyNoDownrigger } from "./check-downrigger.ts";
import { DEFAULTS } from "./defaults.ts";
import { type FlowProfile, uniformFlow } from "./flow-profile.ts";
import type { LineInUse, LureForces } from "./lure.ts";
import { type Refusal, refuse } from "./refusal.ts";
import type { RodLine } from "./rod-line.ts";
import { solveSettled } from "./settled-downrigger.ts";

/** The ball at the end of the cable. */
export interface Ball {
  /** Mass as weighed in air, kg. */
  readonly massKg: number;
  /** Density of its material, kg/m3; more than water's. */
  readonly densityKgM3: number;
  /** Times the drag of a smooth sphere of that mass and density. */
  readonly dragMultiplier: number;
  /** A stated drag area, m2, in place of the sphere's. */
  readonly dragAreaM2?: number;
}

/** One rod clipped to the cable: its release, its lure, and the line from the rod's tip. */
export interface RodOnCable {
  readonly id: string;
  /** Height of the release above the ball, along the cable, m. */
  readonly releaseAboveBallM: number;
  /** The lure's distance behind its release: the length of its line from there, m. */
  readonly setbackM: number;
  readonly lureLine: LineInUse;
  readonly lure: LureForces;
  /** Left out where no rod pulls on the release. */
  readonly rodLine?: RodLine;
}

/** Everything that sets the shape of one downrigger's cable and lure lines, in SI. */
export interface Downrigger {
  /** The counter's reading, m. Cable out is scale times reading plus offset. */
  readonly outM: number;
  readonly counterScale: number;
  readonly counterOffsetM: number;
  /** Speed through the water at every depth; `uniformFlow` makes one that is the same everywhere. */
  readonly flow: FlowProfile;
  readonly waterTemperatureC: number;
  readonly salinityPsu: number;
  readonly cable: LineInUse;
  readonly ball: Ball;
  /** Height of the probe above the ball, along the cable, m; left out where there is none. */
  readonly probeAboveBallM?: number;
  /** In any order, each with its own release; none for a bare ball. */
  readonly rods: readonly RodOnCable[];
}

/** A place below and behind the point where the cable enters the water, m. */
export interface Place {
  readonly depthM: number;
  readonly behindM: number;
}

/** Where one rod's release and lure are. */
export interface SolvedRod {
  readonly id: string;
  readonly release: Place;
  readonly lure: Place;
  /** How hard the lure pulls on the release, N. */
  readonly lureTensionN: number;
}

/** A solved downrigger. */
export interface SolvedDownrigger {
  readonly ok: true;
  /** Cable out after the counter's scale and offset, m. */
  readonly cableOutM: number;
  readonly ball: Place;
  /** Left out where there is no probe or it is still above the water. */
  readonly probe?: Place;
  /** In the order given. */
  readonly rods: readonly SolvedRod[];
  /** Angle of the cable from the vertical where it enters the water, positive astern. */
  readonly topAngleDeg: number;
  readonly topTensionN: number;
  /** The model puts the ball, a lure or part of a line at or above the surface, where it no longer holds. */
  readonly surfaced: boolean;
  /** In a sheared stream: how many times over an error of the model shows in the ball's depth. */
  readonly conditioning?: number;
  /** Other depths, m, at which the ball could hang as well in this stream; the answer is the deepest. */
  readonly otherBallDepthsM?: readonly number[];
}

/**
 * A downrigger with only what the gear book must say; the rest takes the table of defaults. The stream is a `flow`
 * or, the same at every depth, a `speedMS`; with both the `flow` is taken.
 */
type DownriggerInput = Pick<Downrigger, "outM"> & {
  readonly speedMS?: number;
  readonly flow?: FlowProfile;
  readonly cable: Pick<LineInUse, "make"> & Partial<LineInUse>;
  readonly ball: Pick<Ball, "massKg"> & Partial<Ball>;
  readonly rods: readonly RodOnCable[];
} & Partial<Omit<Downrigger, "outM" | "flow" | "cable" | "ball" | "rods">>;

/** Fills in a downrigger's defaults. A probe is not one of them: say where it rides, or there is none. */
export function completeDownrigger({ speedMS, flow, ...input }: DownriggerInput): Downrigger {
  return {
    // Without either the solver refuses: "the speed is not a number".
    flow: flow ?? uniformFlow(speedMS ?? Number.NaN),
    counterScale: DEFAULTS.counterScale.value,
    counterOffsetM: DEFAULTS.counterOffsetM.value,
    waterTemperatureC: DEFAULTS.waterTemperatureC.value,
    salinityPsu: DEFAULTS.salinityPsu.value,
    ...input,
    cable: { dragMultiplier: DEFAULTS.cableDragMultiplier.value, ...input.cable },
    ball: {
      densityKgM3: DEFAULTS.ballDensityKgM3.value,
      dragMultiplier: DEFAULTS.ballDragMultiplier.value,
      ...input.ball,
    },
  };
}

/** The same rig in a stream of one speed (m/s) at every depth. */
export function atSpeed(rig: Downrigger, speedMS: number): Downrigger {
  return { ...rig, flow: uniformFlow(speedMS) };
}

/** The default line from a rod to its release; `tipTensionN` is the pull of the bent rod. */
export function defaultRodLine(tipTensionN: number = DEFAULTS.rodPullN.value): RodLine {
  return {
    tipTensionN,
    tipHeightM: DEFAULTS.rodTipHeightM.value,
    tipBehindM: DEFAULTS.rodTipBehindM.value,
    diameterM: DEFAULTS.rodLineDiameterM.value,
    dragMultiplier: DEFAULTS.lineDragMultiplier.value,
  };
}

/**
 * Where everything on a downrigger is. Refuses, with a plain reason, what is not a finite
 * number, what is out of range, and a release that is still above the water.
 */
export function solveDownrigger(rig: Downrigger): SolvedDownrigger | Refusal {
  const why = whyNoDownrigger(rig);
  if (why !== undefined) return refuse(why);
  const solved = solveSettled(rig);
  return solved.ok ? solved.answer : solved;
}
