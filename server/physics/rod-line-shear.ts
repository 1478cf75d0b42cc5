import { DEFAULTS } from "./defaults.ts";
import { journalDrag, normalDragCoefficient } from "./drag.ts";
import { type FlowProfile, speedAtDepthMS } from "./flow-profile.ts";
import {
  alongShare,
  LEAST_SHARE,
  MOST_BOW,
  MOST_SHARE,
  type Pull,
  ROUNDS,
  type RodLine,
  rodPull,
  sineOf,
} from "./rod-line.ts";
import type { Water } from "./water.ts";

/** Slices of the depth over which a sheared stream is summed. Even. */
const SLICES = 8;
const bow = new Float64Array(SLICES + 1);

/**
 * The same in any stream. In one that changes with depth asinh(tan angle) still falls, going down, by the drag per
 * length over the tension, summed over the depth; that sum and the reach are taken by slices (Simpson's rule).
 * The coefficient is that of the mean square of the speed. As good as the uniform form: see the test.
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
  const meanSquare = depthM > 0 ? sumM3S2 / depthM : speedAtDepthMS(flow, 0) ** 2;
  const speedMS = Math.sqrt(Math.abs(meanSquare));
  const reynolds = (speedMS * rod.diameterM) / water.kinematicViscosityM2S;
  const normalDrag = journalDrag(rod.dragMultiplier);
  const halfDensityDiameter = 0.5 * water.densityKgM3 * rod.diameterM;
  const along = DEFAULTS.tangentialCoefficient.value * Math.PI;
  let releaseTensionN = rod.tipTensionN;
  let [cosine, sine] = [1, 0];
  for (let round = 0; round < ROUNDS; round++) {
    const coefficient = normalDragCoefficient(normalDrag, reynolds * cosine);
    const meanTensionN = 0.5 * (rod.tipTensionN + releaseTensionN);
    const perSquare = (halfDensityDiameter * coefficient) / meanTensionN;
    const most = MOST_BOW / Math.max(Math.abs(sumM3S2), 1e-12);
    const scale = Math.min(perSquare, most);
    const high = shearedUpperBow(behindM - rod.tipBehindM, depthM, rod.tipHeightM, scale);
    const [sinhHigh, sinhLow] = [Math.sinh(high), Math.sinh(high - scale * sumM3S2)];
    const turned = Math.atan(sinhHigh) - Math.atan(sinhLow);
    sine = sineOf(sinhLow);
    cosine =
      Math.abs(turned) > 1e-9 ? (sineOf(sinhHigh) - sine) / turned : 1 / Math.sqrt(1 + sinhLow * sinhLow);
    if (coefficient === 0) break;
    const alongN = (along / coefficient) * meanTensionN * (alongShare(sinhHigh) - alongShare(sinhLow));
    releaseTensionN =
      rod.tipTensionN * Math.min(MOST_SHARE, Math.max(LEAST_SHARE, 1 - alongN / rod.tipTensionN));
  }
  pull.forceXN = -releaseTensionN * sine;
  pull.forceZN = -releaseTensionN * Math.sqrt(1 - sine * sine);
}

/** Fills `bow` with the sum of speed times its size from the surface down to each slice's end; answers the whole. */
function sumSquares(flow: FlowProfile, depthM: number): number {
  const sliceM = depthM / SLICES;
  let upper = signedSquare(speedAtDepthMS(flow, 0));
  bow[0] = 0;
  for (let i = 1; i <= SLICES; i++) {
    const middle = signedSquare(speedAtDepthMS(flow, (i - 0.5) * sliceM));
    const lower = signedSquare(speedAtDepthMS(flow, i * sliceM));
    bow[i] = (bow[i - 1] ?? 0) + (sliceM / 6) * (upper + 4 * middle + lower);
    upper = lower;
  }
  return bow[SLICES] ?? 0;
}

function signedSquare(value: number): number {
  return value * Math.abs(value);
}

/** asinh(tan) at the water line: the depth's integral of sinh(u - bow) plus height times sinh(u) is the reach. */
function shearedUpperBow(reachM: number, depthM: number, tipHeightM: number, scale: number): number {
  let a = 0;
  let b = 0;
  for (let i = 0; i <= SLICES; i++) {
    const weight = i === 0 || i === SLICES ? 1 : i % 2 === 1 ? 4 : 2;
    const grown = Math.exp(scale * (bow[i] ?? 0));
    a += (0.5 * weight * (grown + 1 / grown)) / 3;
    b += (0.5 * weight * (grown - 1 / grown)) / 3;
  }
  a = (a * depthM) / SLICES + tipHeightM;
  b = (b * depthM) / SLICES;
  if (a <= 0) return 0;
  const ratio = Math.max(-1 + 1e-15, Math.min(1 - 1e-15, b / a));
  return Math.atanh(ratio) + Math.asinh(reachM / (a * Math.sqrt(1 - ratio * ratio)));
}
