/** Where a speed was read, for the sentences of the checks of speeds. */
import type { TripEvent } from "../model/trip.ts";
import type { SpeedAt } from "./catalog/water.ts";

/** `on top`, `over ground`, `at C1's probe`. */
export function speedAt({ line, rig }: TripEvent): SpeedAt {
  if (line.verb === "gps") return "over ground";
  return line.verb === "surface" ? "on top" : `at ${rig ?? "the"}'s probe`;
}
