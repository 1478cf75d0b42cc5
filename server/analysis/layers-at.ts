/** Thermocline and metalimnion of a profile; none where the readings are too few, or the water is of one kind. */
import { type Layers, lakeLayers, steepIntervals } from "../physics/lake-layers.ts";
import { densityAt, type Salt } from "./water-density.ts";
import type { WaterProfile } from "./water-profile.ts";

/** The layers at one minute. */
export interface WaterLayers extends Layers {
  /** Depths between which it cools by 1 C or more per meter; undefined where it nowhere does. */
  readonly steep: { readonly topM: number; readonly bottomM: number } | undefined;
}

/** The layers; only a lowered profile has enough depths to tell them. */
export function layersOf(profile: WaterProfile, salt: Salt): WaterLayers | undefined {
  if (profile.cast === undefined) return undefined;
  const depthsM = profile.nodes.map((node) => node.depthM);
  const tempsC = profile.nodes.map((node) => node.tempC);
  const densitiesKgM3 = tempsC.map((tempC) => densityAt(tempC, salt));
  const layers = lakeLayers({ depthsM, tempsC, densitiesKgM3 });
  if (layers === undefined) return undefined;
  const steep = steepIntervals(depthsM, tempsC);
  const [first, last] = [steep[0], steep.at(-1)];
  return {
    ...layers,
    steep:
      first === undefined || last === undefined ? undefined : { topM: first.topM, bottomM: last.bottomM },
  };
}
