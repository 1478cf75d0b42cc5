import { createRequire } from "node:module";
import {
  type CaseSegment,
  isUniform,
  normalCoefficient,
  type SolverCase,
  tangentialCoefficient,
  water,
} from "./solver-cases.ts";

/** The part of the odex package that the bench uses. */
interface OdexSolver {
  absoluteTolerance: number;
  relativeTolerance: number;
  initialStepSize: number;
  solve(rates: Rates, from: number, start: number[], to: number): { y: number[] };
}
type Rates = (along: number, state: readonly number[]) => number[];

const { Solver } = createRequire(import.meta.url)("odex") as { Solver: new (n: number) => OdexSolver };

/**
 * The depth of a line's lower end (m) by a general-purpose solver of differential equations, used the way we use
 * our own: from the lower end up, and in shear a secant search for the depth at which the top meets the surface.
 */
export function depthByOdex(one: SolverCase, tolerance: number): number {
  if (isUniform(one)) return -climb(one, 0, tolerance);
  let before = one.depthM * 0.95;
  let missBefore = climb(one, before, tolerance);
  let depth = before - missBefore;
  for (let shot = 0; shot < 20; shot += 1) {
    const miss = climb(one, depth, tolerance);
    if (Math.abs(miss) < 1e-8) break;
    const slope = (miss - missBefore) / (depth - before);
    before = depth;
    missBefore = miss;
    depth -= miss / slope;
  }
  return depth;
}

/** Depth of the top (m) when the lower end is at the given depth. */
function climb(one: SolverCase, endDepthM: number, tolerance: number): number {
  const speed = speedAt(one, endDepthM);
  const drag = 0.5 * water.densityKgM3 * one.endDragAreaM2 * speed * Math.abs(speed);
  let state = [0, endDepthM, drag, one.endWeightN];
  for (const segment of one.segments.toReversed()) {
    const solver = new Solver(4);
    solver.absoluteTolerance = tolerance;
    solver.relativeTolerance = tolerance;
    solver.initialStepSize = segment.lengthM / 10;
    state = solver.solve(ratesOf(one, segment), 0, state, segment.lengthM).y;
  }
  return state[1] ?? Number.NaN;
}

function speedAt(one: SolverCase, depthM: number): number {
  const share = Math.min(1, Math.max(0, depthM / one.belowM));
  return one.speedMS + (one.speedBelowMS - one.speedMS) * share;
}

/** Rates of position (m) and force (N) a metre up the line. */
function ratesOf(one: SolverCase, segment: CaseSegment): Rates {
  const normalFactor = 0.5 * water.densityKgM3 * normalCoefficient * segment.diameterM;
  const tangentialFactor = 0.5 * water.densityKgM3 * tangentialCoefficient * Math.PI * segment.diameterM;
  const uniform = isUniform(one);
  return (_along, [, depth = 0, forceX = 0, forceZ = 0]) => {
    const tension = Math.sqrt(forceX * forceX + forceZ * forceZ);
    const sin = forceX / tension;
    const cos = forceZ / tension;
    const speed = uniform ? one.speedMS : speedAt(one, depth);
    const normal = normalFactor * Math.abs(speed * cos) * speed * cos;
    const tangential = tangentialFactor * Math.abs(speed * sin) * speed * sin;
    return [
      -sin,
      -cos,
      normal * cos + tangential * sin,
      segment.weightNPerM - normal * sin + tangential * cos,
    ];
  };
}
