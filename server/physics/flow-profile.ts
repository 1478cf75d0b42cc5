import { type Reason, whyNotInRange } from "./refusal.ts";

/**
 * How fast the water runs past the line at each depth, m/s, positive astern. `piecewise` is linear between its
 * depths and constant outside; `tanh` passes smoothly from an upper to a lower speed:
 * U = upper + (lower - upper) (1 + tanh((z - middle) / halfWidth)) / 2.
 */
export type FlowProfile = UniformFlow | PiecewiseFlow | TanhFlow;

/** The same speed at every depth. */
interface UniformFlow {
  readonly type: "uniform";
  readonly speedMS: number;
}

/** Straight pieces between depths that increase strictly. */
interface PiecewiseFlow {
  readonly type: "piecewise";
  readonly depthsM: readonly number[];
  readonly speedsMS: readonly number[];
}

/** A smooth passage between two layers. */
interface TanhFlow {
  readonly type: "tanh";
  readonly upperMS: number;
  readonly lowerMS: number;
  readonly middleM: number;
  readonly halfWidthM: number;
}

/** The same speed at every depth. */
export function uniformFlow(speedMS: number): UniformFlow {
  return { type: "uniform", speedMS };
}

/** The speed at a depth, m/s. */
export function speedAtDepthMS(flow: FlowProfile, depthM: number): number {
  if (flow.type === "uniform") return flow.speedMS;
  if (flow.type === "tanh") return tanhSpeedMS(flow, depthM);
  takePiece(looked, flow, pieceAt(flow, depthM));
  return looked.atMS + looked.slopePerS * depthM;
}

/** Fills `into` with the speeds at even steps from the surface down to a depth, both ends among them. */
export function speedsDownTo(into: Float64Array, flow: FlowProfile, depthM: number): void {
  const last = into.length - 1;
  if (flow.type === "piecewise") takePiece(looked, flow, pieceAt(flow, 0));
  for (let i = 0; i <= last; i++) {
    const atM = (i / last) * depthM;
    if (flow.type === "piecewise") {
      while (atM >= looked.toZM) takePiece(looked, flow, looked.index + 1);
      into[i] = looked.atMS + looked.slopePerS * atM;
    } else into[i] = flow.type === "uniform" ? flow.speedMS : tanhSpeedMS(flow, atM);
  }
}

/** The speed of a smooth profile at a depth; a uniform or piecewise profile answers its first speed. */
export function tanhSpeedMS(flow: FlowProfile, depthM: number): number {
  if (flow.type !== "tanh") return surfaceSpeedMS(flow);
  const { upperMS, lowerMS, middleM, halfWidthM } = flow;
  return upperMS + 0.5 * (lowerMS - upperMS) * (1 + Math.tanh((depthM - middleM) / halfWidthM));
}

/** The speed far above any layer, m/s: what a reading on top stands for. */
export function surfaceSpeedMS(flow: FlowProfile): number {
  if (flow.type === "uniform") return flow.speedMS;
  return flow.type === "tanh" ? flow.upperMS : (flow.speedsMS[0] ?? 0);
}

/** The speed far below any layer, m/s: what a deep probe's reading stands for. */
export function deepSpeedMS(flow: FlowProfile): number {
  if (flow.type === "uniform") return flow.speedMS;
  return flow.type === "tanh" ? flow.lowerMS : (flow.speedsMS.at(-1) ?? 0);
}

/** One straight piece of a profile: speed = at + slope z from one depth to another. */
export interface Stretch {
  /** 0 above the first depth. */
  index: number;
  atMS: number;
  slopePerS: number;
  fromZM: number;
  toZM: number;
}

const looked: Stretch = { index: 0, atMS: 0, slopePerS: 0, fromZM: 0, toZM: 0 };

/** Which piece a depth lies in; 0 is above the first stated depth, and the only one of another profile. */
export function pieceAt(flow: FlowProfile, depthM: number): number {
  if (flow.type !== "piecewise") return 0;
  const { depthsM } = flow;
  let index = 0;
  while (index < depthsM.length && depthM >= (depthsM[index] ?? 0)) index++;
  return index;
}

/** Writes a piece of the profile into `into`. */
export function takePiece(into: Stretch, flow: FlowProfile, index: number): void {
  into.index = index;
  into.slopePerS = 0;
  into.fromZM = Number.NEGATIVE_INFINITY;
  into.toZM = Number.POSITIVE_INFINITY;
  if (flow.type !== "piecewise") {
    into.atMS = flow.type === "uniform" ? flow.speedMS : 0;
    return;
  }
  const { depthsM, speedsMS } = flow;
  const last = depthsM.length;
  into.atMS = speedsMS[index === 0 ? 0 : index - 1] ?? 0;
  if (index > 0) into.fromZM = depthsM[index - 1] ?? 0;
  if (index < last) into.toZM = depthsM[index] ?? 0;
  if (index === 0 || index === last) return;
  into.slopePerS = ((speedsMS[index] ?? 0) - into.atMS) / (into.toZM - into.fromZM);
  into.atMS -= into.slopePerS * into.fromZM;
}

/** The profile with every speed changed by a function of the speed and the share of the way from top to bottom. */
export function changedFlow(
  flow: FlowProfile,
  change: (speedMS: number, deepShare: number) => number,
): FlowProfile {
  if (flow.type === "uniform") return { type: "uniform", speedMS: change(flow.speedMS, 1) };
  if (flow.type === "tanh")
    return { ...flow, upperMS: change(flow.upperMS, 0), lowerMS: change(flow.lowerMS, 1) };
  const firstMS = surfaceSpeedMS(flow);
  const rangeMS = deepSpeedMS(flow) - firstMS;
  const firstM = flow.depthsM[0] ?? 0;
  const rangeM = (flow.depthsM.at(-1) ?? 0) - firstM;
  const shareOf = (speedMS: number, i: number): number => {
    if (rangeMS !== 0) return (speedMS - firstMS) / rangeMS;
    return rangeM === 0 ? 1 : ((flow.depthsM[i] ?? 0) - firstM) / rangeM;
  };
  return { ...flow, speedsMS: flow.speedsMS.map((speedMS, i) => change(speedMS, shareOf(speedMS, i))) };
}

/** How far above the surface a profile goes on, m; no line reaches so high. */
const ABOVE_M = 1000;

/**
 * The same profile under water, going on straight above the surface where it bends there: a line that reaches up to the
 * surface ends at that bend, and would only lose steps to it while its place is still sought.
 */
export function underwaterFlow(flow: FlowProfile): FlowProfile {
  if (flow.type !== "piecewise") return flow;
  const [firstM = 0, secondM] = flow.depthsM;
  if (firstM !== 0 || secondM === undefined) return flow;
  const [firstMS = 0, secondMS = 0] = flow.speedsMS;
  const aboveMS = firstMS - ((secondMS - firstMS) * ABOVE_M) / secondM;
  const depthsM = [-ABOVE_M, ...flow.depthsM.slice(1)];
  return { type: "piecewise", depthsM, speedsMS: [aboveMS, ...flow.speedsMS.slice(1)] };
}

/** Whether two profiles are the same, value by value. */
export function isSameFlow(one: FlowProfile, other: FlowProfile): boolean {
  if (one === other) return true;
  if (one.type === "uniform") return other.type === "uniform" && one.speedMS === other.speedMS;
  if (one.type === "tanh")
    return (
      other.type === "tanh" &&
      one.upperMS === other.upperMS &&
      one.lowerMS === other.lowerMS &&
      one.middleM === other.middleM &&
      one.halfWidthM === other.halfWidthM
    );
  return (
    other.type === "piecewise" &&
    isSameList(one.depthsM, other.depthsM) &&
    isSameList(one.speedsMS, other.speedsMS)
  );
}

function isSameList(one: readonly number[], other: readonly number[]): boolean {
  return one.length === other.length && one.every((value, i) => value === other[i]);
}

/** A change of speed must take at least this much depth, m: across a jump a line may have no steady shape. */
const LEAST_LAYER_M = 0.01;

/** Depths that a profile may state; a log of a lowered meter has fewer. */
const MOST_DEPTHS = 500;

/** Why a profile cannot be used, as a plain reason, or `undefined`. Speeds from `leastMS` to `mostMS` are taken. */
export function whyNoFlow(flow: FlowProfile, leastMS: number, mostMS: number): Reason | undefined {
  if (flow.type === "uniform") return whyNotInRange("the speed", flow.speedMS, leastMS, mostMS, "m/s");
  if (flow.type === "tanh")
    return (
      whyNotInRange("the speed above the layer", flow.upperMS, leastMS, mostMS, "m/s") ??
      whyNotInRange("the speed below the layer", flow.lowerMS, leastMS, mostMS, "m/s") ??
      whyNotInRange("the layer's depth", flow.middleM, -1e5, 1e5, "m") ??
      whyNotInRange("the layer's half width", flow.halfWidthM, LEAST_LAYER_M, 1e5, "m")
    );
  return whyNoPieces(flow, leastMS, mostMS);
}

function whyNoPieces({ depthsM, speedsMS }: PiecewiseFlow, leastMS: number, mostMS: number) {
  if (depthsM.length === 0) return "the speed profile has no depth";
  if (depthsM.length > MOST_DEPTHS) return `the speed profile has more than ${MOST_DEPTHS} depths`;
  if (depthsM.length !== speedsMS.length)
    return `the speed profile has ${depthsM.length} depths and ${speedsMS.length} speeds`;
  for (const [i, depthM] of depthsM.entries()) {
    const speedMS = speedsMS[i] ?? Number.NaN;
    const why =
      whyNotInRange("a depth of the speed profile", depthM, -1e5, 1e5, "m") ??
      unplaced(whyNotInRange(`the speed at ${depthM} m`, speedMS, leastMS, mostMS, "m/s"));
    if (why !== undefined) return why;
    const aboveM = depthsM[i - 1];
    if (aboveM === undefined) continue;
    if (depthM < aboveM)
      return `the speed profile goes back from ${aboveM} m to ${depthM} m; sort it by depth`;
    if (depthM === aboveM) return `the speed profile states ${depthM} m twice, so the speed jumps there`;
    if (depthM - aboveM < LEAST_LAYER_M && speedMS !== speedsMS[i - 1])
      return `the speed jumps between ${aboveM} m and ${depthM} m; a layer is at least ${LEAST_LAYER_M} m thick`;
  }
  return undefined;
}

/** The reason's value named without its depth, which is in SI. */
function unplaced(reason: Reason | undefined): Reason | undefined {
  return typeof reason === "object" ? { ...reason, what: "a speed of the profile" } : reason;
}
