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
export const LEAST_SHARE = 0.5;
export const MOST_SHARE = 1.2;

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
  let releaseTangent = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const dragNPerM = dynamicN * normalDragCoefficient(normalDrag, reynolds * cosine);
    const meanTensionN = 0.5 * (tipTensionN + releaseTensionN);
    const half = Math.min(MOST_BOW, (0.5 * dragNPerM * depthM) / meanTensionN);
    const high = upperBow(reachM, depthM, tipHeightM, half);
    const sinhHigh = Math.sinh(high);
    const sinhLow = Math.sinh(high - 2 * half);
    const turned = Math.atan(sinhHigh) - Math.atan(sinhLow);
    releaseTangent = sinhLow;
    cosine =
      turned > 1e-9 ? (sineOf(sinhHigh) - sineOf(sinhLow)) / turned : 1 / Math.sqrt(1 + sinhLow * sinhLow);
    if (dragNPerM === 0) break;
    const alongPerShare = (dynamicN * tangentialCoefficient * Math.PI * meanTensionN) / dragNPerM;
    const alongN = alongPerShare * (alongShare(sinhHigh) - alongShare(sinhLow));
    releaseTensionN = tipTensionN * Math.min(MOST_SHARE, Math.max(LEAST_SHARE, 1 - alongN / tipTensionN));
  }
  const sine = sineOf(releaseTangent);
  pull.forceXN = -releaseTensionN * sine;
  pull.forceZN = -releaseTensionN * Math.sqrt(1 - sine * sine);
}

/** The sine of an angle from its tangent. */
export function sineOf(tangent: number): number {
  return tangent / Math.sqrt(1 + tangent * tangent);
}

/** Drag along the line up to an angle with this tangent: the integral of sin|sin| over the length, by its own scale. */
export function alongShare(tangent: number): number {
  const size = Math.abs(tangent);
  return size - Math.atan(size);
}

/**
 * asinh(tan) of the angle at the water line, from the distance astern that water and air must span together:
 * (depth / half) sinh(half) sinh(u - half) + height sinh(u) = reach, where u is sought and `half` is half of
 * what the bow turns. It has the form a sinh u - b cosh u = reach.
 */
function upperBow(reachM: number, depthM: number, tipHeightM: number, half: number): number {
  const grown = Math.exp(half);
  const sinh = half > 1e-4 ? 0.5 * (grown - 1 / grown) : half;
  const cosh = 0.5 * (grown + 1 / grown);
  // sinh(half) / half, whole at zero where still water leaves a straight line.
  const spanM = half > 1e-4 ? (depthM * sinh) / half : depthM;
  const a = spanM * cosh + tipHeightM;
  if (a <= 0) return 0;
  // The square root of a2 - b2, without the loss of digits of the plain difference.
  const root = Math.sqrt(spanM * spanM + 2 * spanM * cosh * tipHeightM + tipHeightM * tipHeightM);
  return Math.atanh(Math.min((spanM * sinh) / a, 1 - 1e-15)) + Math.asinh(reachM / root);
}
