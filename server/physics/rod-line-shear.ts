import { DEFAULTS } from "./defaults.ts";
import { journalDrag, normalDragCoefficient } from "./drag.ts";
import { type FlowProfile, speedsDownTo } from "./flow-profile.ts";
import { bend, bow, MOST_BOW, type Pull, ROUNDS, type RodLine, rodPull, tensionAfter } from "./rod-line.ts";
import type { Water } from "./water.ts";

/** Slices of the depth over which a sheared stream is summed. Even. */
const SLICES = 8;
/** What each of their ends counts for in a sum over the depth (Simpson's rule), of the whole. */
const WEIGHTS = Float64Array.from(
  { length: SLICES + 1 },
  (_, i) => (i === 0 || i === SLICES ? 1 : i % 2 === 1 ? 4 : 2) / (3 * SLICES),
);
/** The sum of speed times its size from the surface down to each of their ends. */
const sums = new Float64Array(SLICES + 1);
/** The speeds at each slice's ends and in its middle. */
const speeds = new Float64Array(2 * SLICES + 1);

/**
 * The same in any stream. In one that changes with depth asinh(tan angle) still falls, going down, by the drag per
 * length over the tension, summed over the depth; that sum and the reach are taken by slices (Simpson's
 * rule). The coefficient is that of the mean square of the speed. As good as the uniform form: see the test.
 */
export function rodPullIn(
  pull: Pull,
  rod: RodLine,
  behindM: number,
  depthM: number,
  flow: FlowProfile,
  water: Water,
): void {
  if (flow.type === "uniform") {
    rodPull(pull, rod, behindM, depthM, flow.speedMS, water);
    return;
  }
  pull.forceXN = 0;
  pull.forceZN = 0;
  if (rod.tipTensionN === 0) return;
  const sumM3S2 = sumSquares(flow, depthM);
  const meanSquare = depthM > 0 ? sumM3S2 / depthM : (speeds[0] ?? 0) ** 2;
  const speedMS = Math.sqrt(Math.abs(meanSquare));
  const reynolds = (speedMS * rod.diameterM) / water.kinematicViscosityM2S;
  const normalDrag = journalDrag(rod.dragMultiplier);
  const halfDensityDiameter = 0.5 * water.densityKgM3 * rod.diameterM;
  const along = DEFAULTS.tangentialCoefficient.value * Math.PI;
  const most = MOST_BOW / Math.max(Math.abs(sumM3S2), 1e-12);
  let releaseTensionN = rod.tipTensionN;
  let [cosine, sine] = [1, 0];
  for (let round = 0; round < ROUNDS; round++) {
    const coefficient = normalDragCoefficient(normalDrag, reynolds * cosine);
    const meanTensionN = 0.5 * (rod.tipTensionN + releaseTensionN);
    const scale = Math.min((halfDensityDiameter * coefficient) / meanTensionN, most);
    spanBow(depthM, rod.tipHeightM, scale);
    bow.turned = Math.exp(scale * sumM3S2);
    bow.reachM = behindM - rod.tipBehindM;
    bend();
    sine = bow.sineLow;
    cosine = bow.meanCosine;
    if (coefficient === 0) break;
    releaseTensionN = tensionAfter(rod.tipTensionN, (along / coefficient) * meanTensionN * bow.alongShare);
  }
  pull.forceXN = -releaseTensionN * sine;
  pull.forceZN = -releaseTensionN * Math.sqrt(1 - sine * sine);
}

/** Fills `sums`; answers the whole. */
function sumSquares(flow: FlowProfile, depthM: number): number {
  speedsDownTo(speeds, flow, depthM);
  const sliceM = depthM / SLICES;
  let sum = 0;
  for (let i = 1; i <= SLICES; i++) {
    const upper = signedSquare(speeds[2 * i - 2] ?? 0);
    const middle = signedSquare(speeds[2 * i - 1] ?? 0);
    const lower = signedSquare(speeds[2 * i] ?? 0);
    sum += (sliceM / 6) * (upper + 4 * middle + lower);
    sums[i] = sum;
  }
  return sum;
}

function signedSquare(value: number): number {
  return value * Math.abs(value);
}

/** What the bow weighs over the depth, with the height in air: from the exponentials of what has turned at each slice's end. */
function spanBow(depthM: number, tipHeightM: number, scale: number): void {
  let [plus, minus] = [0, 0];
  for (let i = 0; i <= SLICES; i++) {
    const grown = Math.exp(scale * (sums[i] ?? 0));
    plus += (WEIGHTS[i] ?? 0) * grown;
    minus += (WEIGHTS[i] ?? 0) / grown;
  }
  plus = plus * depthM + tipHeightM;
  minus = minus * depthM + tipHeightM;
  bow.coshM = 0.5 * (plus + minus);
  bow.sinhM = 0.5 * (plus - minus);
  bow.rootM = Math.sqrt(plus * minus);
}
