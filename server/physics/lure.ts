import { DEFAULTS } from "./defaults.ts";
import { journalDrag } from "./drag.ts";
import { uniformFlow } from "./flow-profile.ts";
import { type LineMake, weightInWaterNPerM } from "./line-materials.ts";
import { type Refusal, refuse, whyNotInRange } from "./refusal.ts";
import { type SolvedLine, solveTowedLine, type TowedLine } from "./towed-line.ts";
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

/** A lure on its line, ready for the solver: one segment of `lengthM`, the lure at its end. */
export function lureLine(line: LineInUse, lengthM: number, lure: LureForces, water: Water): TowedLine {
  return {
    segments: [
      {
        lengthM,
        diameterM: line.make.diameterM,
        weightNPerM: weightInWaterNPerM(line.make, water.densityKgM3),
        normalDrag: journalDrag(line.dragMultiplier),
        tangentialCoefficient: DEFAULTS.tangentialCoefficient.value,
      },
    ],
    bodies: [{ node: 1, forceXN: 0, ...lure }],
  };
}

/**
 * The shape of a lure's line below and behind its release, counted from the release. With no line out the lure
 * is at the release.
 */
export function solveLureLine(
  line: LineInUse,
  lengthM: number,
  lure: LureForces,
  speedMS: number,
  water: Water,
): SolvedLine | Refusal {
  return solveTowedLine(lureLine(line, lengthM, lure, water), water, uniformFlow(speedMS));
}

/**
 * The lift area (m2) with which a lure runs `diveM` below its release at a speed (m/s) on a length of its line
 * (m); for a plug said to pull down so many feet. Bisection, since depth grows with lift. Refuses a dive that no
 * lift reaches, such as one deeper than the line is long.
 */
export function liftAreaForDive(
  diveM: number,
  line: LineInUse,
  lengthM: number,
  lure: LureForces,
  speedMS: number,
  water: Water,
): { readonly ok: true; readonly liftAreaM2: number } | Refusal {
  const why =
    whyNotInRange("the depth a lure pulls down", diveM, 0, 0.9 * lengthM, "m") ??
    whyNotInRange("the trolling speed", speedMS, 0.05, 10, "m/s");
  if (why !== undefined) return refuse(why);
  let low = -0.01;
  let high = 0.1;
  for (let i = 0; i < 40; i++) {
    const liftAreaM2 = 0.5 * (low + high);
    const solved = solveLureLine(line, lengthM, { ...lure, liftAreaM2 }, speedMS, water);
    if (!solved.ok) return solved;
    if (solved.depthM < diveM) low = liftAreaM2;
    else high = liftAreaM2;
  }
  return { ok: true, liftAreaM2: 0.5 * (low + high) };
}
