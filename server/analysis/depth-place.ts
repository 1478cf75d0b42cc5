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
  return new StoppedPlace(place, waterM ?? Number.POSITIVE_INFINITY);
}

/** Two fields for each: a long file has many of them over few solved places. */
class StoppedPlace implements DepthPlace {
  readonly #place: BandedPlace;
  readonly #waterM: number;

  constructor(place: BandedPlace, waterM: number) {
    this.#place = place;
    this.#waterM = waterM;
  }

  get depthM(): number {
    return this.#within(this.#place.depthM);
  }

  get lowM(): number {
    return this.#within(this.#place.lowM);
  }

  get highM(): number {
    return this.#within(this.#place.highM);
  }

  get behindM(): number {
    return this.#place.behindM;
  }

  get depthPerSpeed(): number {
    return this.#place.depthPerSpeed;
  }

  get depthPerOut(): number {
    return this.#place.depthPerOut;
  }

  get onBottom(): boolean {
    return this.#place.depthM >= this.#waterM;
  }

  #within(depthM: number): number {
    return Math.max(0, Math.min(depthM, this.#waterM));
  }
}
