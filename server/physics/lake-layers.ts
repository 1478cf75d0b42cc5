/**
 * Thermocline and metalimnion of a profile by its density gradient, as lake scientists compute them (Read et al. 2011,
 * Environ. Model. Softw. 26:1325-1336), with their usual limits. Written from the definitions: the thermocline is
 * the depth of the greatest gradient, placed inside its interval by how steeply the gradient falls off on both sides;
 * the metalimnion reaches from it as far as the gradient stays above a limit.
 */

/** Limits of the method; the defaults are those in common use. */
export interface LayerLimits {
  /** Density gradient at the edges of the metalimnion, kg/m3 per m. */
  readonly edgeGradient: number;
  /** Least density gradient that makes a deeper peak count, kg/m3 per m. */
  readonly leastGradient: number;
  /** Share of the greatest gradient that a deeper peak must have. */
  readonly peakShare: number;
  /** A profile whose temperatures span less has no thermocline, C. */
  readonly leastSpanC: number;
}

export const LAYER_LIMITS: LayerLimits = {
  edgeGradient: 0.1,
  leastGradient: 0.1,
  peakShare: 0.15,
  leastSpanC: 1,
};

/** A profile, shallowest first, with distinct depths. */
export interface DensityProfile {
  readonly depthsM: readonly number[];
  readonly tempsC: readonly number[];
  readonly densitiesKgM3: readonly number[];
}

/** The layer of steep change around a thermocline, m. */
export interface Layers {
  readonly thermoclineM: number;
  readonly topM: number;
  readonly bottomM: number;
}

/**
 * The layers of a profile; undefined with fewer than three depths, for a span below the limit, or where the density
 * nowhere grows downward. `isSeasonal` takes the lowest distinct peak of the gradient, which a warm afternoon's skin
 * can't be; otherwise the greatest.
 */
export function lakeLayers(
  profile: DensityProfile,
  isSeasonal = true,
  limits: LayerLimits = LAYER_LIMITS,
): Layers | undefined {
  const { depthsM, tempsC } = profile;
  const isWhole = depthsM.every((depth, i) => i === 0 || depth > at(depthsM, i - 1));
  if (depthsM.length < 3 || !isWhole || spanOf(tempsC) < limits.leastSpanC) return undefined;
  const gradients = gradientsOf(profile);
  const greatest = gradients.indexOf(Math.max(...gradients));
  if (!(at(gradients, greatest) > 0)) return undefined;
  const interval = isSeasonal ? lowestPeak(gradients, greatest, limits) : greatest;
  const thermoclineM = placeIn(depthsM, gradients, interval);
  return { thermoclineM, ...edgesOf(depthsM, gradients, thermoclineM, limits.edgeGradient) };
}

/** Intervals where the water cools by that much per meter or more, m: the classic rule is 1 C per meter. */
export function steepIntervals(
  depthsM: readonly number[],
  tempsC: readonly number[],
  coolingCPerM = 1,
): { topM: number; bottomM: number }[] {
  return depthsM.slice(1).flatMap((bottomM, i) => {
    const topM = at(depthsM, i);
    const isSteep = (at(tempsC, i) - at(tempsC, i + 1)) / (bottomM - topM) >= coolingCPerM - 1e-9;
    return isSteep ? [{ topM, bottomM }] : [];
  });
}

const at = (values: readonly number[], index: number): number => values[index] ?? Number.NaN;

function spanOf(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}

function gradientsOf({ depthsM, densitiesKgM3 }: DensityProfile): number[] {
  return depthsM
    .slice(1)
    .map((depth, i) => (at(densitiesKgM3, i + 1) - at(densitiesKgM3, i)) / (depth - at(depthsM, i)));
}

/** The lowest interval whose gradient stands above its neighbors' and the limits, if it is clear of the greatest. */
function lowestPeak(gradients: readonly number[], greatest: number, limits: LayerLimits): number {
  const least = Math.max(limits.peakShare * at(gradients, greatest), limits.leastGradient);
  const lowest = gradients.findLastIndex((gradient, i) => {
    const isInside = i > 0 && i < gradients.length - 1;
    return (
      isInside && gradient > least && gradient > at(gradients, i - 1) && gradient >= at(gradients, i + 1)
    );
  });
  return lowest > greatest + 1 ? lowest : greatest;
}

/** The depth inside an interval, nearer to the side where the gradient falls off less. */
function placeIn(depthsM: readonly number[], gradients: readonly number[], interval: number): number {
  const [top, bottom] = [at(depthsM, interval), at(depthsM, interval + 1)];
  const middle = (top + bottom) / 2;
  if (interval === 0 || interval >= gradients.length - 1) return middle;
  const gradient = at(gradients, interval);
  const below = (bottom - top) / (gradient - at(gradients, interval + 1));
  const above = (top - at(depthsM, interval - 1)) / (gradient - at(gradients, interval - 1));
  const share = below / (below + above);
  return Number.isFinite(share) ? top + share * (bottom - top) : middle;
}

/** Where the gradient, taken as straight between the middles of the intervals, falls to the limit on each side. */
function edgesOf(
  depthsM: readonly number[],
  gradients: readonly number[],
  thermoclineM: number,
  edge: number,
): { topM: number; bottomM: number } {
  const middles = gradients.map((gradient, i) => ({
    depthM: (at(depthsM, i) + at(depthsM, i + 1)) / 2,
    gradient,
  }));
  const here = { depthM: thermoclineM, gradient: straight(middles, thermoclineM) };
  const below = [here, ...middles.filter(({ depthM }) => depthM > thermoclineM)];
  const above = [here, ...middles.filter(({ depthM }) => depthM < thermoclineM).toReversed()];
  return {
    topM: edgeAlong(above, edge) ?? at(depthsM, 0),
    bottomM: edgeAlong(below, edge) ?? at(depthsM, depthsM.length - 1),
  };
}

interface Middle {
  readonly depthM: number;
  readonly gradient: number;
}

function straight(middles: readonly Middle[], depthM: number): number {
  const after = middles.findIndex((middle) => middle.depthM >= depthM);
  const [a, b] = [middles[after - 1], middles[after]];
  if (b === undefined) return middles.at(-1)?.gradient ?? Number.NaN;
  if (a === undefined) return b.gradient;
  return a.gradient + ((depthM - a.depthM) / (b.depthM - a.depthM)) * (b.gradient - a.gradient);
}

/**
 * The depth where the gradient crosses the limit, going away from the thermocline; undefined where it never does.
 * The crossing is drawn from the first depth below the limit to the one with the gradient nearest above it, as the
 * published answers have it; that one need not be its neighbor.
 */
function edgeAlong(middles: readonly Middle[], edge: number): number | undefined {
  const first = middles.findIndex(({ gradient }) => gradient < edge);
  const outside = middles[first];
  if (outside === undefined) return undefined;
  if (first === 0) return outside.depthM;
  const inside = middles.slice(0, first).reduce((a, b) => (b.gradient < a.gradient ? b : a));
  const share = (edge - outside.gradient) / (inside.gradient - outside.gradient);
  return outside.depthM + share * (inside.depthM - outside.depthM);
}
