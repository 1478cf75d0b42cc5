/** Effort in the captain's words: rods that troll count rod-hours, a cast or jigged one the hours of who holds it. */
import type { TripSummary } from "../analysis/summary.ts";
import type { Gear } from "../model/gear-types.ts";

/** What a day's effort is counted in. */
export type EffortUnit = "rod-hour" | "angler-hour";

/** Angler-hours where every rig that was out is cast or jigged, else rod-hours, of which one angler's hour is one. */
export function effortUnit(gear: Gear, { rodHoursByRig }: Pick<TripSummary, "rodHoursByRig">): EffortUnit {
  return rodHoursByRig.length > 0 && rodHoursByRig.every(({ rig }) => isByHand(gear, rig))
    ? "angler-hour"
    : "rod-hour";
}

/** `2½ rod-hours`, `1 rod-hour`, `½ angler-hour`. */
export function effortWords(count: string, unit: EffortUnit): string {
  return `${count} ${unit}${count === "1" || count === "½" ? "" : "s"}`;
}

/** The part of a day's rod-hours that anglers fished by hand, and on what; nothing where there is none, or no other. */
export function byHand(
  gear: Gear,
  summary: Pick<TripSummary, "rodHoursByRig">,
): { readonly hours: number; readonly rigs: readonly string[] } | undefined {
  if (effortUnit(gear, summary) === "angler-hour") return undefined;
  const rows = summary.rodHoursByRig.filter(({ rig }) => isByHand(gear, rig));
  const hours = rows.reduce((sum, { fishing }) => sum + fishing, 0);
  return rows.length === 0 ? undefined : { hours, rigs: rows.map(({ rig }) => rig) };
}

const isByHand = (gear: Gear, rig: string): boolean => gear.rigs.get(rig)?.kind === "jig";
