import { Solver } from "odex";
import { normalDragCoefficient } from "../../server/physics/drag.ts";
import { type FlowProfile, uniformFlow } from "../../server/physics/flow-profile.ts";
import type { LineSegment, PointBody } from "../../server/physics/towed-line.ts";
import { WATER } from "./line-maker.ts";

/** The state going up from the lower end: x, z (m) and the force of what is below (N). */
export type Climb = readonly [number, number, number, number];

/**
 * The same line by another method (extrapolation) and another form of the equations: tension and angle from the
 * vertical rather than a force vector, worded after the component form in the texts.
 */
export function climbBySecondIntegrator(start: Climb, segment: LineSegment, speedMS: number): Climb {
  return climbInFlow(start, segment, uniformFlow(speedMS));
}

/** The same in a stream that changes with depth, its speed read by a formula of its own. */
export function climbInFlow(start: Climb, segment: LineSegment, flow: FlowProfile): Climb {
  const solver = new Solver(4);
  solver.relativeTolerance = 1e-12;
  solver.absoluteTolerance = 1e-12;
  solver.maxSteps = 100_000;
  const { diameterM: d, weightNPerM: w } = segment;
  const rates = (_along: number, y: number[]): number[] => {
    const [, depth = 0, tension = 0, angle = 0] = y;
    const speedMS = speedIn(flow, depth);
    const across = speedMS * Math.cos(angle);
    const along = speedMS * Math.sin(angle);
    const reynolds = (Math.abs(across) * d) / WATER.kinematicViscosityM2S;
    const coefficient = normalDragCoefficient(segment.normalDrag, reynolds);
    const normal = 0.5 * WATER.densityKgM3 * coefficient * d * Math.abs(across) * across;
    const tangent =
      0.5 * WATER.densityKgM3 * segment.tangentialCoefficient * Math.PI * d * Math.abs(along) * along;
    return [
      -Math.sin(angle),
      -Math.cos(angle),
      w * Math.cos(angle) + tangent,
      (normal - w * Math.sin(angle)) / tension,
    ];
  };
  const [x, z, forceX, forceZ] = start;
  const { y, outcome } = solver.solve(
    rates,
    0,
    [x, z, Math.hypot(forceX, forceZ), Math.atan2(forceX, forceZ)],
    segment.lengthM,
  );
  if (outcome !== 0) throw new Error(`the second integrator gave up (outcome ${outcome})`);
  const [endX = 0, endZ = 0, tension = 0, angle = 0] = y;
  return [endX, endZ, tension * Math.sin(angle), tension * Math.cos(angle)];
}

/** Adds a body's forces to the state. */
export function withBody([x, z, forceX, forceZ]: Climb, body: PointBody, speedMS: number): Climb {
  const pressure = 0.5 * WATER.densityKgM3 * speedMS * Math.abs(speedMS);
  return [
    x,
    z,
    forceX + body.forceXN + pressure * body.dragAreaM2,
    forceZ + body.weightN + Math.abs(pressure) * body.liftAreaM2,
  ];
}

/** The speed at a depth, worded apart from the solver's: a sum of clamped ramps, or a logistic curve. */
export function speedIn(flow: FlowProfile, depthM: number): number {
  if (flow.type === "uniform") return flow.speedMS;
  if (flow.type === "tanh") {
    const away = (2 * (depthM - flow.middleM)) / flow.halfWidthM;
    return flow.upperMS + (flow.lowerMS - flow.upperMS) / (1 + Math.exp(-away));
  }
  let speedMS = flow.speedsMS[0] ?? 0;
  for (let i = 1; i < flow.depthsM.length; i++) {
    const [from = 0, to = 0] = flow.depthsM.slice(i - 1);
    const [before = 0, after = 0] = flow.speedsMS.slice(i - 1);
    speedMS += (after - before) * Math.min(1, Math.max(0, (depthM - from) / (to - from)));
  }
  return speedMS;
}
