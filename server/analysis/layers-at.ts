/** Thermocline and metalimnion of a profile; none where the readings are too few, or the water is of one kind. */
import { type Layers, lakeLayers, steepIntervals } from "../physics/lake-layers.ts";
import { isGap } from "./temperature-at.ts";
import { densityAt, type Salt } from "./water-density.ts";
import type { WaterProfile } from "./water-profile.ts";

/** The layers at one minute, or what is known in their place. */
export type WaterLayers =
  | ({
      readonly kind: "layers";
      /** Depths between which it cools by 1 C or more per meter; undefined where it nowhere does. */
      readonly steep: DepthSpan | undefined;
    } & Layers)
  /** The steepest change lies between two readings too far apart to place it. */
  | ({ readonly kind: "between" } & DepthSpan)
  /** Of one kind as far as it was read. */
  | { readonly kind: "none" }
  /** Fewer than three depths. */
  | { readonly kind: "too-few" };

/** Two depths, m. */
export interface DepthSpan {
  readonly topM: number;
  readonly bottomM: number;
}

const LEAST_DEPTHS = 3;

/** The layers; undefined without a lowered profile, which alone has enough depths to tell them. */
export function layersOf(profile: WaterProfile, salt: Salt): WaterLayers | undefined {
  const { cast, nodes } = profile;
  if (cast === undefined) return undefined;
  if (nodes.length < LEAST_DEPTHS) return { kind: "too-few" };
  const depthsM = nodes.map((node) => node.depthM);
  const tempsC = nodes.map((node) => node.tempC);
  const densitiesKgM3 = tempsC.map((tempC) => densityAt(tempC, salt));
  const layers = lakeLayers({ depthsM, tempsC, densitiesKgM3 });
  if (layers === undefined) return { kind: "none" };
  const above = nodes.findLast((node) => node.depthM <= layers.thermoclineM);
  const below = nodes.find((node) => node.depthM > layers.thermoclineM);
  if (above !== undefined && below !== undefined && isGap(above, below, layers.thermoclineM))
    return { kind: "between", topM: above.depthM, bottomM: below.depthM };
  const steep = steepIntervals(depthsM, tempsC);
  const [first, last] = [steep[0], steep.at(-1)];
  const span =
    first === undefined || last === undefined ? undefined : { topM: first.topM, bottomM: last.bottomM };
  return { kind: "layers", ...layers, steep: span };
}
