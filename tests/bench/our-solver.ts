import { pathToFileURL } from "node:url";
import { built } from "./places.ts";
import {
  isUniform,
  normalCoefficient,
  type SolverCase,
  tangentialCoefficient,
  water,
} from "./solver-cases.ts";

/**
 * The depth of a case by our solver, in metres, at a tolerance or at the one it ships with; absent when our
 * solver refuses the case.
 */
export type OurDepth = (one: SolverCase, tolerance?: number) => number | undefined;

/** The part of server/physics that the bench calls. */
interface TowedLineModule {
  solveTowedLine: (
    line: unknown,
    water: unknown,
    flow: unknown,
    top: unknown,
    tolerance?: number,
  ) => { ok: boolean; depthM?: number };
}

/** Loads our solver. */
export async function loadOurSolver(): Promise<OurDepth> {
  const { solveTowedLine } = (await import(pathToFileURL(built.solver).href)) as TowedLineModule;
  return (one, tolerance) => {
    const solved = solveTowedLine(lineOf(one), water, flowOf(one), surface, tolerance);
    return solved.ok ? solved.depthM : undefined;
  };
}

const surface = { xM: 0, zM: 0 };
const prepared = new Map<SolverCase, unknown>();

/** The line in our solver's own shape, made once: what a journal's line costs to read is measured elsewhere. */
function lineOf(one: SolverCase): unknown {
  const line = prepared.get(one) ?? {
    segments: one.segments.map((segment) => ({
      ...segment,
      normalDrag: { law: "constant", coefficient: normalCoefficient, multiplier: 1 },
      tangentialCoefficient,
    })),
    bodies: [
      {
        node: one.segments.length,
        weightN: one.endWeightN,
        dragAreaM2: one.endDragAreaM2,
        liftAreaM2: 0,
        forceXN: 0,
      },
    ],
  };
  prepared.set(one, line);
  return line;
}

function flowOf(one: SolverCase): unknown {
  if (isUniform(one)) return { type: "uniform", speedMS: one.speedMS };
  return { type: "piecewise", depthsM: [0, one.belowM], speedsMS: [one.speedMS, one.speedBelowMS] };
}
