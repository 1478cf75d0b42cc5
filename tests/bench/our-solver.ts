import type { Downrigger } from "../../server/physics/downrigger.ts";
import type { FlowProfile } from "../../server/physics/flow-profile.ts";
import type { TowedLine } from "../../server/physics/towed-line.ts";
import {
  isUniform,
  normalCoefficient,
  type SolverCase,
  tangentialCoefficient,
  water,
} from "./solver-cases.ts";

/**
 * The depth of a case by our solver, in metres, at a tolerance or at the one that journals are solved at; absent when our
 * solver refuses the case.
 */
export type OurDepth = (one: SolverCase, tolerance?: number) => number | undefined;

/** The length of the top segment (m) that puts a case's lower end at its depth; absent when refused. */
export type OurLength = (one: SolverCase, tolerance?: number) => number | undefined;

/** Loads our inverse. */
export async function loadOurInverse(): Promise<OurLength> {
  const { lineOutForDepth } = await import("../../server/physics/line-out.ts");
  const { JOURNAL } = await import("../../server/physics/exactness.ts");
  return (one, tolerance = JOURNAL.tolerance) => {
    const target = { node: one.segments.length, depthM: one.depthM };
    const out = lineOutForDepth(lineOf(one), water, flowOf(one), target, surface, mostM, tolerance);
    return out.ok ? out.lengthM : undefined;
  };
}

/** The most line that the inverse may let out, m. */
const mostM = 500;

const surface = { xM: 0, zM: 0 };

/** Loads our solver. */
export async function loadOurSolver(): Promise<OurDepth> {
  const { solveTowedLine } = await import("../../server/physics/towed-line.ts");
  const { JOURNAL } = await import("../../server/physics/exactness.ts");
  return (one, tolerance = JOURNAL.tolerance) => {
    const solved = solveTowedLine(lineOf(one), water, flowOf(one), surface, tolerance);
    return solved.ok ? solved.depthM : undefined;
  };
}

/**
 * Loads what computes a downrigger's depth with its error band, never calibrated. The call answers whether it could.
 */
export async function loadOurBand(isSheared: boolean): Promise<() => boolean> {
  const { solveDownriggerBand } = await import("../../server/physics/downrigger-band.ts");
  const { defaultSpreads, rigParameters } = await import("../../server/physics/downrigger-parameters.ts");
  const rig = await benchRig(isSheared);
  const parameters = rigParameters({ ...defaultSpreads(0.045), surfaceSpeedMS: isSheared ? 0.134 : 0 });
  return () => {
    const answer = solveDownriggerBand(rig, parameters);
    // Bands and slopes are solved when they are looked at.
    return (
      answer.ok &&
      [answer.ball.lowM, answer.ball.depthPerSpeed, answer.ball.depthPerOut].every(Number.isFinite)
    );
  };
}

/** Loads what reckons the counter's reading that brings that rig's lure to 24 m. The call answers whether it could. */
export async function loadOurLetOut(isSheared: boolean): Promise<() => boolean> {
  const { counterForDepth } = await import("../../server/physics/out-for-depth.ts");
  const rig = await benchRig(isSheared);
  return () => counterForDepth(rig, "C1", 24).ok;
}

/** 90 ft of cable, a 12 lb ball and a spoon at 2.6 mph, or with 2.3 mph on top and 2.6 mph from 25 m down. */
async function benchRig(isSheared: boolean): Promise<Downrigger> {
  const { completeDownrigger, defaultRodLine } = await import("../../server/physics/downrigger.ts");
  const { lineMake } = await import("../../server/physics/line-materials.ts");
  const { lureForces } = await import("../../server/physics/lure.ts");
  const cable = lineMake("steel", 0.0009);
  const lureMake = lineMake("mono", 0.0004);
  if (!cable.ok || !lureMake.ok) throw new Error("The rig's cable was refused.");
  const rod = {
    id: "C1",
    releaseAboveBallM: 0,
    setbackM: 6,
    lureLine: { make: lureMake, dragMultiplier: 1.2 },
    lure: lureForces("spoon"),
    rodLine: defaultRodLine(),
  };
  return completeDownrigger({
    outM: 27.4,
    flow: isSheared
      ? { type: "piecewise", depthsM: [0, 25], speedsMS: [1.03, 1.16] }
      : { type: "uniform", speedMS: 1.16 },
    cable: { make: cable },
    ball: { massKg: 5.44 },
    probeAboveBallM: 0.38,
    rods: [rod],
  });
}

const prepared = new Map<SolverCase, TowedLine>();

/** The line in our solver's own shape, made once: what a journal's line costs to read is measured elsewhere. */
function lineOf(one: SolverCase): TowedLine {
  const line = prepared.get(one) ?? {
    segments: one.segments.map((segment) => ({
      ...segment,
      normalDrag: { law: "constant", coefficient: normalCoefficient, multiplier: 1 } as const,
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

function flowOf(one: SolverCase): FlowProfile {
  if (isUniform(one)) return { type: "uniform", speedMS: one.speedMS };
  return { type: "piecewise", depthsM: [0, one.belowM], speedsMS: [one.speedMS, one.speedBelowMS] };
}
