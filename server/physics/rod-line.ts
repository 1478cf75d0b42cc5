import { DEFAULTS } from "./defaults.ts";
import { journalDrag, normalDragCoefficient } from "./drag.ts";
import type { Water } from "./water.ts";

/** The fishing line that runs from a rod's tip down to its release, and the pull of the bent rod on it. */
export interface RodLine {
  /** Tension at the tip, N; zero or more. */
  readonly tipTensionN: number;
  /** Height of the tip above the water, m; zero or more. */
  readonly tipHeightM: number;
  /** Distance of the tip astern of the point where the cable enters the water, m; negative ahead. */
  readonly tipBehindM: number;
  /** Diameter of the line, m. */
  readonly diameterM: number;
  /** Multiplies the drag across the line. */
  readonly dragMultiplier: number;
}

/** A force on the cable, N: astern and down. A rod lifts, so its `forceZN` is negative. */
export interface Pull {
  forceXN: number;
  forceZN: number;
}

/** The bow is described by asinh(tan) of its angle; beyond this the line lies level for every purpose. */
export const MOST_BOW = 100;

/** What drag along the line may make of the tip's tension by the release; beyond that the line would lie slack. */
const LEAST_SHARE = 0.5;
const MOST_SHARE = 1.2;

/** Rounds that settle a drag coefficient that depends on the line's own slope. */
export const ROUNDS = 3;

/**
 * The pull of a rod's line on a release `behindM` astern and `depthM` below the point where the cable enters the
 * water (0 or more), in a uniform speed (m/s). Writes it into `pull`.
 *
 * With an even tension, and no weight, the line hangs in the water in a curve whose asinh(tan angle) is linear
 * in depth; above the water it is straight. Both parts together have a closed form. The little that drag along
 * the line takes off the tension is put in after each round. Against the full equations the ball's depth comes
 * out within 0.05 ft at 150 ft and 2.5 mph, and within 1 % of the depth at 3 mph. Source: derived; a test
 * solves the full two-point problem.
 */
export function rodPull(
  pull: Pull,
  rod: RodLine,
  behindM: number,
  depthM: number,
  speedMS: number,
  water: Water,
): void {
  const { tipTensionN, tipHeightM } = rod;
  pull.forceXN = 0;
  pull.forceZN = 0;
  if (tipTensionN === 0) return;
  const reachM = behindM - rod.tipBehindM;
  const dynamicN = 0.5 * water.densityKgM3 * rod.diameterM * speedMS * Math.abs(speedMS);
  const reynolds = (Math.abs(speedMS) * rod.diameterM) / water.kinematicViscosityM2S;
  const normalDrag = journalDrag(rod.dragMultiplier);
  const tangentialCoefficient = DEFAULTS.tangentialCoefficient.value;
  let releaseTensionN = tipTensionN;
  let cosine = 1;
  let sine = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const dragNPerM = dynamicN * normalDragCoefficient(normalDrag, reynolds * cosine);
    const meanTensionN = 0.5 * (tipTensionN + releaseTensionN);
    const half = Math.min(MOST_BOW, (0.5 * dragNPerM * depthM) / meanTensionN);
    // What the bow weighs in cosh and sinh over the depth: the means of both, times the depth.
    const grown = Math.exp(half);
    const sinh = half > 1e-4 ? 0.5 * (grown - 1 / grown) : half;
    const cosh = 0.5 * (grown + 1 / grown);
    const spanM = half > 1e-4 ? (depthM * sinh) / half : depthM;
    bow.turned = grown * grown;
    bow.coshM = spanM * cosh + tipHeightM;
    bow.sinhM = spanM * sinh;
    // The square root of the difference of their squares, without the loss of digits of the plain difference.
    bow.rootM = Math.sqrt(spanM * spanM + 2 * spanM * cosh * tipHeightM + tipHeightM * tipHeightM);
    bow.reachM = reachM;
    bend();
    sine = bow.sineLow;
    cosine = bow.meanCosine;
    if (dragNPerM === 0) break;
    const alongPerShare = (dynamicN * tangentialCoefficient * Math.PI * meanTensionN) / dragNPerM;
    releaseTensionN = tensionAfter(tipTensionN, alongPerShare * bow.alongShare);
  }
  pull.forceXN = -releaseTensionN * sine;
  pull.forceZN = -releaseTensionN * Math.sqrt(1 - sine * sine);
}

/** The tension at the release after what drag along the line took of the tip's. */
export function tensionAfter(tipTensionN: number, alongN: number): number {
  return tipTensionN * Math.min(MOST_SHARE, Math.max(LEAST_SHARE, 1 - alongN / tipTensionN));
}

/** What `bend` takes and answers, in one place that is used again and again. */
export const bow = {
  reachM: 0,
  coshM: 0,
  sinhM: 0,
  rootM: 0,
  turned: 1,
  sineLow: 0,
  meanCosine: 0,
  alongShare: 0,
};

/**
 * The ends of the bow. asinh(tan) of the angle, u, falls going down by a turn that is known; at the water line it is what
 * makes water and air together span the distance astern: coshM sinh(u) - sinhM cosh(u) = reach, the two being cosh and
 * sinh of what has turned, summed over the depth, with the height in air. With rootM the root of coshM2 - sinhM2 that is
 * u = atanh(sinhM / coshM) + asinh(reach / rootM), of which only the exponential is wanted: `turned` is that of the turn.
 * Answers the sine of the angle at the release, the mean cosine by angle, and the integral of sin|sin| over the length by
 * its own scale, which is what drag along the line adds up to.
 */
export function bend(): void {
  const isSomewhere = bow.coshM > 0;
  const reach = isSomewhere ? bow.reachM / bow.rootM : 0;
  const sinhHigh = isSomewhere
    ? (bow.sinhM * Math.sqrt(1 + reach * reach) + bow.coshM * reach) / bow.rootM
    : 0;
  const coshHigh = Math.sqrt(1 + sinhHigh * sinhHigh);
  const low = (sinhHigh > 0 ? sinhHigh + coshHigh : 1 / (coshHigh - sinhHigh)) / bow.turned;
  const sinhLow = 0.5 * (low - 1 / low);
  const angleHigh = Math.atan(sinhHigh);
  const angleLow = Math.atan(sinhLow);
  const turned = angleHigh - angleLow;
  const sineLow = sineOf(sinhLow);
  bow.sineLow = sineLow;
  bow.meanCosine =
    Math.abs(turned) > 1e-9 ? (sinhHigh / coshHigh - sineLow) / turned : 1 / Math.sqrt(1 + sinhLow * sinhLow);
  bow.alongShare = Math.abs(sinhHigh) - Math.abs(angleHigh) - Math.abs(sinhLow) + Math.abs(angleLow);
}

/** The sine of an angle from its tangent. */
function sineOf(tangent: number): number {
  return tangent / Math.sqrt(1 + tangent * tangent);
}
