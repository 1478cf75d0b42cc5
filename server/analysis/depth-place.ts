/** A computed depth as it is shown: never above the surface, never below the bottom. */
import type { BandedPlace } from "../physics/downrigger-band.ts";

/** A depth with its 80 % band and the distance behind, m. */
export interface DepthPlace {
  readonly depthM: number;
  readonly lowM: number;
  readonly highM: number;
  readonly behindM: number;
  /** Change of depth per m/s of speed, and per m on the counter. */
  readonly depthPerSpeed: number;
  readonly depthPerOut: number;
  /** The model went deeper than the bottom, which stopped it. */
  readonly onBottom: boolean;
}

/** The bottom stops what the model would put below it, and the surface what it would put above. The band is solved when it is looked at. */
export function placeOf(place: BandedPlace, waterM: number | undefined): DepthPlace {
  const limit = waterM ?? Number.POSITIVE_INFINITY;
  const within = (depthM: number): number => Math.max(0, Math.min(depthM, limit));
  return {
    depthM: within(place.depthM),
    get lowM() {
      return within(place.lowM);
    },
    get highM() {
      return within(place.highM);
    },
    behindM: place.behindM,
    get depthPerSpeed() {
      return place.depthPerSpeed;
    },
    get depthPerOut() {
      return place.depthPerOut;
    },
    onBottom: place.depthM >= limit,
  };
}
