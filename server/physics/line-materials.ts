import { type Refusal, refuse, whyNotInRange } from "./refusal.ts";
import { GRAVITY_M_S2 } from "./water.ts";

/** The kinds of line that a weight can be worked out for. */
export type LineMaterial = "steel" | "braid" | "copper" | "mono" | "fluorocarbon" | "leadcore";

/** A line as it is made: what it weighs and how much water it pushes aside. */
export interface LineMake {
  /** Outer diameter, m. */
  readonly diameterM: number;
  /** Mass of a metre, kg. */
  readonly massKgM: number;
  /** Section that displaces water, m2: less than the circle, since strands and sheaths hold water. */
  readonly displacedM2: number;
}

/**
 * Density of the solid (kg/m3) and the share of the circle that it fills. Seven round wires in a circle fill
 * 7/9, taken as 0.777 (a rope of seven such strands only about 0.60); flooded braid and sheath about 0.70. Densities are handbook values, fills geometry or common practice;
 * with the diameter they leave about 10 % on the weight.
 */
const SOLIDS: Readonly<Record<LineMaterial, { readonly densityKgM3: number; readonly fill: number }>> = {
  steel: { densityKgM3: 7930, fill: 0.777 },
  braid: { densityKgM3: 970, fill: 0.7 },
  copper: { densityKgM3: 8940, fill: 0.777 },
  mono: { densityKgM3: 1140, fill: 1 },
  fluorocarbon: { densityKgM3: 1780, fill: 1 },
  /** The sheath; the core is reckoned apart. */
  leadcore: { densityKgM3: 1140, fill: 0.7 },
};

/** Density of lead, kg/m3 (handbook); hardened with antimony it is nearer 11000 (from memory). */
const LEAD_KG_M3 = 11340;

/** Diameter of the core of ordinary lead-cored line, m; its weight is what such a line's depth hangs on. */
const LEADCORE_CORE_M = 0.46e-3;

/**
 * A line of a material and an outer diameter (m, 0.05 to 20 mm). A mass per metre (kg) that was weighed takes the
 * place of the computed one and leaves the displaced water as it is. Leadcore has a core of `coreM` in a nylon
 * sheath. Refuses what is out of range with a plain reason.
 */
export function lineMake(
  material: LineMaterial,
  diameterM: number,
  weighedKgM?: number,
  coreM = LEADCORE_CORE_M,
): ({ readonly ok: true } & LineMake) | Refusal {
  const why =
    whyNotInRange("the line's diameter", diameterM, 5e-5, 0.02, "m") ??
    (weighedKgM === undefined ? undefined : whyNotInRange("the line's mass", weighedKgM, 1e-6, 2, "kg/m")) ??
    (material === "leadcore"
      ? whyNotInRange("the lead core's diameter", coreM, 0, diameterM, "m")
      : undefined);
  if (why !== undefined) return refuse(why);
  const { densityKgM3, fill } = SOLIDS[material];
  const coreM2 = material === "leadcore" ? circleM2(coreM) : 0;
  const restM2 = (circleM2(diameterM) - coreM2) * fill;
  const massKgM = weighedKgM ?? coreM2 * LEAD_KG_M3 + restM2 * densityKgM3;
  return { ok: true, diameterM, massKgM, displacedM2: coreM2 + restM2 };
}

/** Weight in water of a metre of line, N/m; negative floats. */
export function weightInWaterNPerM(make: LineMake, waterKgM3: number): number {
  return (make.massKgM - waterKgM3 * make.displacedM2) * GRAVITY_M_S2;
}

function circleM2(diameterM: number): number {
  return 0.25 * Math.PI * diameterM * diameterM;
}
