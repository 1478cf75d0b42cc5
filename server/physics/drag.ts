/**
 * The laws for the drag of a round line across the water. `constant` takes the coefficient as it stands; the
 * others depend on the Reynolds number of the speed across the line. Journals use `choo-casarella-blended`.
 */
type CylinderLaw = "constant" | "cheng" | "sucker-brauer" | "choo-casarella" | "choo-casarella-blended";

/** How a line resists the water across it: a law, its coefficient when constant, and a multiplier on the whole. */
export interface CylinderDrag {
  readonly law: CylinderLaw;
  /** The coefficient of the `constant` law, without unit; ignored by the other laws. Zero or more. */
  readonly coefficient: number;
  /** Multiplies the coefficient; strumming and rough strands take it from 1 to about 2. Zero or more. */
  readonly multiplier: number;
}

/** A constant normal drag coefficient. */
export function constantDrag(coefficient: number): CylinderDrag {
  return { law: "constant", coefficient, multiplier: 1 };
}

/** A drag law that depends on the Reynolds number, times a multiplier. */
export function reynoldsDrag(law: Exclude<CylinderLaw, "constant">, multiplier = 1): CylinderDrag {
  return { law, coefficient: 0, multiplier };
}

/** The journal's law for a line across the stream, with its multiplier. */
export function journalDrag(multiplier: number): CylinderDrag {
  return reynoldsDrag("choo-casarella-blended", multiplier);
}

/** Below this Reynolds number the force is beyond measuring; it only keeps the laws finite as Re goes to zero. */
const LEAST_REYNOLDS = 1e-9;

/**
 * The normal drag coefficient, without unit, of a law at a Reynolds number built on the diameter and the speed
 * across the line (zero or more; the laws are meant for up to 2e5). The multiplier is included.
 */
export function normalDragCoefficient(drag: CylinderDrag, reynolds: number): number {
  if (drag.law === "constant") return drag.coefficient * drag.multiplier;
  const re = Math.max(reynolds, LEAST_REYNOLDS);
  if (drag.law === "choo-casarella-blended") return drag.multiplier * chooCasarellaBlended(re);
  if (drag.law === "choo-casarella") return drag.multiplier * chooCasarella(re);
  return drag.multiplier * (drag.law === "cheng" ? cheng(re) : suckerBrauer(re));
}

/**
 * Smooth cylinder, Re below 2e5. Form seen in a public code that cites ASCE J. Hydraul. Eng., doi
 * 10.1061/(ASCE)HY.1943-7900.0000722; the author's name, Cheng, is from memory.
 */
export function cheng(re: number): number {
  return 11 * re ** -0.75 + 0.9 * (1 - Math.exp(-1000 / re)) + 1.2 * (1 - Math.exp(-((re / 4500) ** 0.7)));
}

/** Smooth cylinder, Re 1e-4 to 2e5. Form seen in a public code; the name Sucker & Brauer 1975 is from memory. */
export function suckerBrauer(re: number): number {
  return 1.18 + 6.8 * re ** -0.89 + 1.96 / Math.sqrt(re) - (4e-4 * re) / (1 + 3.64e-7 * re * re);
}

/**
 * Towed cable, Re below 1e5, with the jump of the original at Re 30 (1.850 to 1.830). Choo & Casarella 1971,
 * J. Hydronautics; constants from memory. Reference cases take this form; journals take the blended one.
 */
export function chooCasarella(re: number): number {
  return re < 30 ? chooCasarellaSlow(re) : chooCasarellaFast(re);
}

/** Where the journal's form of the law starts and ends its passage from the slow to the fast branch. */
const BLEND_FROM_RE = 20;
export const BLEND_TO_RE = 40;

/**
 * The same law with the jump smoothed away over Re 20 to 40 (a quintic with level ends, so that slope and
 * curvature stay continuous); an adaptive solver stalls on a jump. Outside that range it is the original.
 */
export function chooCasarellaBlended(re: number): number {
  if (re >= BLEND_TO_RE) return chooCasarellaFast(re);
  const slow = chooCasarellaSlow(re);
  if (re <= BLEND_FROM_RE) return slow;
  const t = (re - BLEND_FROM_RE) / (BLEND_TO_RE - BLEND_FROM_RE);
  return slow + (chooCasarellaFast(re) - slow) * t * t * t * (10 + t * (6 * t - 15));
}

/** The law's fast branch: a constant, and a part that goes with one over the root of the Reynolds number. */
export const FAST_AT = 1.1;
export const FAST_PER_ROOT = 4;

function chooCasarellaFast(re: number): number {
  return FAST_AT + FAST_PER_ROOT / Math.sqrt(re);
}

function chooCasarellaSlow(re: number): number {
  if (re > 1) return 1.45 + 8.55 * re ** -0.9;
  const s = -0.0772 + Math.log(8 / re);
  return ((8 * Math.PI) / (re * s)) * (1 - 0.87 / (s * s));
}

/**
 * Drag coefficient of a smooth sphere at a Reynolds number on its diameter, up to 2e5 and without the drag
 * crisis above it: 0.47 to 0.50 for a downrigger ball. Form of Clift & Gauvin, seen in a secondary source;
 * published curves differ by about 10 % among themselves. Zero speed answers 0, since the force vanishes.
 */
export function sphereDragCoefficient(reynolds: number): number {
  if (reynolds < LEAST_REYNOLDS) return 0;
  const re = reynolds;
  return (24 / re) * (1 + 0.15 * re ** 0.687) + 0.42 / (1 + 4.25e4 * re ** -1.16);
}

/**
 * Drag area, m2, of a sphere of a diameter (m) in water moving past at a speed (m/s, either sign) with a
 * kinematic viscosity (m2/s); the multiplier stands for fins and eyes.
 */
export function sphereDragAreaM2(
  diameterM: number,
  speedMS: number,
  kinematicViscosityM2S: number,
  multiplier: number,
): number {
  const reynolds = (Math.abs(speedMS) * diameterM) / kinematicViscosityM2S;
  return multiplier * sphereDragCoefficient(reynolds) * 0.25 * Math.PI * diameterM * diameterM;
}
