/** The layer that parts the water on top from that below it, minute by minute, as the profiles in reach show it. */
import type { ReadingAges } from "../model/readings.ts";
import type { Trip } from "../model/trip.ts";
import type { Layers } from "../physics/lake-layers.ts";
import { layersOf, type WaterLayers } from "./layers-at.ts";
import { dayProfiles } from "./profile-store.ts";
import type { WaterProfile } from "./water-profile.ts";

/** Kept with the profile, which stands for the readings and the boat's water. */
const known = new WeakMap<WaterProfile, WaterLayers | undefined>();

/**
 * The metalimnion of a minute. Undefined where no lowered profile is in reach, or it shows none: too few depths, a gap
 * where it cools most, water of one kind, or water that nowhere changes fast enough to part.
 */
export function layerAt(trip: Trip, ages: ReadingAges, timeMs: number): Layers | undefined {
  const profiles = dayProfiles(trip, ages);
  const profile = profiles.hasCast(timeMs) ? profiles.at(timeMs) : undefined;
  if (profile === undefined) return undefined;
  if (!known.has(profile)) known.set(profile, layersOf(profile, trip.gear.water));
  const layers = known.get(profile);
  return layers?.kind === "layers" ? told(layers) : undefined;
}

/** Its edges to a hand's breadth: they are known no better, and a line's depth need not follow less. */
function told({ thermoclineM, topM, bottomM }: Layers): Layers | undefined {
  const [top, bottom] = [Math.round(topM * 10) / 10, Math.round(bottomM * 10) / 10];
  return bottom > top ? { thermoclineM, topM: top, bottomM: bottom } : undefined;
}
