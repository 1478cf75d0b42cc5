import type { FlowProfile } from "./flow-profile.ts";

/** A range of depths over which the speed changes. */
export interface Layer {
  readonly middleM: number;
  readonly halfWidthM: number;
  /** Steepest change of speed per m of depth, without sign. */
  readonly slopePerS: number;
}

/** The layers of a profile, from the top down. */
export function layersOf(flow: FlowProfile): Layer[] {
  if (flow.type === "uniform") return [];
  if (flow.type === "tanh") {
    const { upperMS, lowerMS, middleM, halfWidthM } = flow;
    return [{ middleM, halfWidthM, slopePerS: Math.abs(lowerMS - upperMS) / (2 * halfWidthM) }];
  }
  const layers: Layer[] = [];
  flow.depthsM.forEach((toM, i) => {
    const fromM = flow.depthsM[i - 1];
    if (fromM === undefined) return;
    const change = Math.abs((flow.speedsMS[i] ?? 0) - (flow.speedsMS[i - 1] ?? 0));
    const halfWidthM = 0.5 * (toM - fromM);
    layers.push({ middleM: fromM + halfWidthM, halfWidthM, slopePerS: change / (2 * halfWidthM) });
  });
  return layers;
}

/** Depths looked at for one layer, in half widths from its middle: close within four, then ever farther. */
const NEAR = Array.from({ length: 33 }, (_, i) => (i - 16) / 4);
const FAR = [5, 6.5, 9, 13, 20, 30, 50, 100];

/** A profile of very many layers is scanned no closer than this in all. */
const MOST_DEPTHS = 500;

/** The depths of the lower end to look at, rising, inside the bracket. */
export function scanDepths(layers: readonly Layer[], lowM: number, highM: number): number[] {
  const depths: number[] = [];
  for (const { middleM, halfWidthM } of layers) {
    for (const t of NEAR) depths.push(middleM + t * halfWidthM);
    for (const t of FAR) depths.push(middleM - t * halfWidthM, middleM + t * halfWidthM);
  }
  // A coarse look everywhere else, for the parts that no layer is near.
  for (let i = 1; i < 16; i++) depths.push(lowM + ((highM - lowM) * i) / 16);
  const inside = depths.filter((depth) => depth > lowM && depth < highM).sort((a, b) => a - b);
  const every = Math.ceil(inside.length / MOST_DEPTHS);
  return every <= 1 ? inside : inside.filter((_, i) => i % every === 0);
}

/** From, to, whether the function rises through zero there, and a first guess. */
type Bracket = readonly [from: number, to: number, isRising: boolean, guess: number];

type Point = readonly [at: number, value: number];

/**
 * Brackets of every change of sign among the depths. The ends are known: no line drops, or rises, more than its
 * length. Where the function comes near zero and turns back between two depths, its turning point is looked at.
 */
export function bracketRoots(
  depths: readonly number[],
  valueAt: (at: number) => number | undefined,
  lowM: number,
  highM: number,
): Bracket[] {
  const points: Point[] = [[lowM, -(highM - lowM)]];
  for (const at of depths) {
    const value = valueAt(at);
    if (value !== undefined) points.push([at, value]);
  }
  points.push([highM, highM - lowM]);
  const all = withTurningPoints(points, valueAt);
  const brackets: Bracket[] = [];
  for (let i = 1; i < all.length; i++) {
    const [from, before] = all[i - 1] ?? [lowM, 0];
    const [to, after] = all[i] ?? [highM, 0];
    if (before < 0 === after < 0) continue;
    const isInner = i > 1 && i < all.length - 1;
    const guess = isInner ? from + ((to - from) * before) / (before - after) : 0.5 * (from + to);
    brackets.push([from, to, before < 0, guess]);
  }
  return brackets;
}

/** Adds the vertex of the parabola through three points wherever the middle one turns back toward zero. */
function withTurningPoints(
  points: readonly Point[],
  valueAt: (at: number) => number | undefined,
): readonly Point[] {
  const added: Point[] = [];
  for (let i = 2; i < points.length - 2; i++) {
    const [[a, fa] = [0, 0], [b, fb] = [0, 0], [c, fc] = [0, 0]] = points.slice(i - 1, i + 2);
    const turns = (fb > 0 && fa >= fb && fc > fb) || (fb < 0 && fa <= fb && fc < fb);
    if (!turns) continue;
    const [left, right] = [(b - a) * (fb - fc), (b - c) * (fb - fa)];
    const vertex = b - (0.5 * ((b - a) * left - (b - c) * right)) / (left - right);
    const value = vertex > a && vertex < c && vertex !== b ? valueAt(vertex) : undefined;
    if (value !== undefined) added.push([vertex, value]);
  }
  return added.length === 0 ? points : [...points, ...added].sort(([a], [b]) => a - b);
}
