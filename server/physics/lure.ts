import { DEFAULTS } from "./defaults.ts";
import { journalDrag } from "./drag.ts";
import { SOLVER_TOLERANCE } from "./exactness.ts";
import { type FlowProfile, uniformFlow } from "./flow-profile.ts";
import { type LineMake, weightInWaterNPerM } from "./line-materials.ts";
import { type Refusal, refuse, whyNotInRange } from "./refusal.ts";
import { solveFromEnd } from "./sheared-line.ts";
import { movedLine, type SolvedLine, solveChecked, type TowedLine, type TowPoint } from "./towed-line.ts";
import type { Water } from "./water.ts";

/** What a lure does to its line, in the water. */
export interface LureForces {
  /** Weight in the water, N; negative floats. */
  readonly weightN: number;
  /** Drag area, m2. */
  readonly dragAreaM2: number;
  /** Area of the pull downward, m2; negative pulls up. */
  readonly liftAreaM2: number;
}

/** A line in use: how it is made, and how much rougher than a smooth cylinder the water finds it. */
export interface LineInUse {
  readonly make: LineMake;
  /** Multiplies the drag across the line only. */
  readonly dragMultiplier: number;
}

/** The kinds of lure that have defaults of their own. */
export type LureKind = "spoon" | "fly" | "plug";

/** The default forces of a kind of lure; all of them assumptions with a spread of half their size. */
export function lureForces(kind: LureKind): LureForces {
  if (kind === "plug")
    return {
      weightN: DEFAULTS.plugWeightN.value,
      dragAreaM2: DEFAULTS.plugDragAreaM2.value,
      liftAreaM2: DEFAULTS.plugLiftAreaM2.value,
    };
  return {
    weightN: DEFAULTS.spoonWeightN.value,
    dragAreaM2: DEFAULTS.spoonDragAreaM2.value,
    liftAreaM2: DEFAULTS.spoonLiftAreaM2.value,
  };
}

/** A lure on its line behind a release. */
interface LureOnLine {
  /** The length of its line from the release, m. */
  readonly setbackM: number;
  readonly lureLine: LineInUse;
  readonly lure: LureForces;
}

/**
 * The shape of a lure's line below and behind its release, counted from the release, in a uniform speed (m/s).
 * With no line out the lure is at the release. The numbers must have been checked by the caller.
 */
export function solveLureLine(
  { setbackM, lureLine, lure }: LureOnLine,
  speedMS: number,
  water: Water,
  tolerance = SOLVER_TOLERANCE,
): SolvedLine | Refusal {
  return solveLureLineIn({ setbackM, lureLine, lure }, uniformFlow(speedMS), 0, water, tolerance);
}

/** The same in any stream, for a release at a depth, m; the shape is counted from the release all the same. */
export function solveLureLineIn(
  on: LureOnLine,
  flow: FlowProfile,
  releaseDepthM: number,
  water: Water,
  tolerance = SOLVER_TOLERANCE,
): SolvedLine | Refusal {
  const line = lureLineOf(on, water);
  if (flow.type === "uniform") return solveChecked(line, water, flow, RELEASE, tolerance);
  const solved = solveChecked(line, water, flow, { xM: 0, zM: releaseDepthM }, tolerance);
  return solved.ok ? movedLine(solved, 0, -releaseDepthM) : solved;
}

/** A lure on its line as the general solver takes it. */
export function lureLineOf({ setbackM, lureLine, lure }: LureOnLine, water: Water): TowedLine {
  const segment = {
    lengthM: setbackM,
    diameterM: lureLine.make.diameterM,
    weightNPerM: weightInWaterNPerM(lureLine.make, water.densityKgM3),
    normalDrag: journalDrag(lureLine.dragMultiplier),
    tangentialCoefficient: DEFAULTS.tangentialCoefficient.value,
  };
  return { segments: [segment], bodies: [{ node: 1, forceXN: 0, ...lure }] };
}

/**
 * The depth (m) of a release whose lure is to run at a depth. Climbed from the lure up, so that in shear it takes no
 * trial either.
 */
export function lureReleaseDepthM(
  on: LureOnLine,
  flow: FlowProfile,
  lureDepthM: number,
  water: Water,
): number | Refusal {
  const solved =
    flow.type === "uniform"
      ? solveLureLineIn(on, flow, 0, water)
      : solveFromEnd(lureLineOf(on, water), water, flow, RELEASE, lureDepthM, SOLVER_TOLERANCE);
  return solved.ok ? lureDepthM - solved.depthM : solved;
}

const RELEASE: TowPoint = { xM: 0, zM: 0 };

/**
 * The lift area (m2) with which a lure runs `diveM` below its release at a speed (m/s); for a plug said to pull
 * down so many feet. Its own `liftAreaM2` is not looked at. Bisection, since depth grows with lift. Refuses a
 * dive that no lift reaches, such as one nearly as deep as the line is long.
 */
export function liftAreaForDive(
  diveM: number,
  on: LureOnLine,
  speedMS: number,
  water: Water,
): { readonly ok: true; readonly liftAreaM2: number } | Refusal {
  const why =
    whyNotInRange("the length of the lure's line", on.setbackM, 0.1, 2000, "m") ??
    whyNotInRange("the depth a lure pulls down", diveM, 0, 0.7 * on.setbackM, "m") ??
    whyNotInRange("the trolling speed", speedMS, 0.05, 10, "m/s");
  if (why !== undefined) return refuse(why);
  let low = -0.01;
  let high = 0.1;
  for (let i = 0; i < 40; i++) {
    const liftAreaM2 = 0.5 * (low + high);
    const solved = solveLureLine({ ...on, lure: { ...on.lure, liftAreaM2 } }, speedMS, water);
    if (!solved.ok) return solved;
    if (solved.depthM < diveM) low = liftAreaM2;
    else high = liftAreaM2;
  }
  return { ok: true, liftAreaM2: 0.5 * (low + high) };
}
