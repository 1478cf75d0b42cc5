import { type Refusal, refuse } from "./refusal.ts";

/**
 * How fast the water runs past the line at each depth, m/s, positive astern. Only the uniform profile is solved
 * so far; the others are part of the type so that a file that holds one is understood and refused by name.
 */
export type FlowProfile =
  | { readonly type: "uniform"; readonly speedMS: number }
  | { readonly type: "piecewise"; readonly depthsM: readonly number[]; readonly speedsMS: readonly number[] }
  | {
      readonly type: "tanh";
      readonly upperMS: number;
      readonly lowerMS: number;
      readonly middleM: number;
      readonly halfWidthM: number;
    };

/** The same speed at every depth. */
export function uniformFlow(speedMS: number): FlowProfile {
  return { type: "uniform", speedMS };
}

/** The uniform speed of a profile in m/s, or a refusal that names the kind of profile that is not supported. */
export function uniformSpeedMS(flow: FlowProfile): { readonly ok: true; readonly speedMS: number } | Refusal {
  if (flow.type === "uniform") return { ok: true, speedMS: flow.speedMS };
  return refuse(whySheared(flow.type));
}

/** The reason given for a profile that is understood and not solved. */
export function whySheared(type: string): string {
  return `a sheared profile '${type}' is not supported yet; only 'uniform'`;
}

/**
 * The speed at a depth, m/s: the one place that a sheared profile would be read from while a line is climbed.
 * A profile that is not solved yet is refused long before; NaN here makes a slip of that show at once.
 */
export function speedAtDepthMS(flow: FlowProfile, _depthM: number): number {
  return flow.type === "uniform" ? flow.speedMS : Number.NaN;
}
