/** How much cable a probe or touch line was taken with. */
import { cableOutM } from "../analysis/cable-out.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { Rig } from "../model/gear-types.ts";
import { findItem, measureOf } from "../model/quantities.ts";
import { isOutOfOrder } from "../model/time-order.ts";
import type { Timeline } from "../model/timeline.ts";
import { cableRigOf, type TripEvent } from "../model/trip.ts";

/** A downrigger and its cable out, m: as the counter says, and put right by its calibration. */
export interface CableAt {
  readonly rig: Rig;
  readonly counterM: number;
  readonly outM: number;
}

/** The cable at a line that names a downrigger: its own `out`, else what is in the water then. */
export function cableAt({ trip, timeline }: TripAnalysis, event: TripEvent): CableAt | undefined {
  const rig = event.rig === undefined ? undefined : cableRigOf(trip.gear, event.rig);
  if (rig === undefined) return undefined;
  const isStated = findItem(event.line, "out") !== undefined;
  const isUp = eventsOfUpRigs(timeline).has(event);
  if (!isStated && (isUp || isOutOfOrder(trip, rig.name) || isOutOfOrder(trip, event.rig ?? ""))) {
    return undefined;
  }
  const counterM = isStated
    ? measureOf(event.line, "out", "length", trip.gear.defaults)
    : timeline.spreadAfter.get(event.lineIndex)?.get(rig.name)?.setting.outM;
  return counterM === undefined ? undefined : { rig, counterM, outM: cableOutM(trip.gear, rig, counterM) };
}

const upByTimeline = new WeakMap<Timeline, ReadonlySet<TripEvent>>();

/** Lines that name a rig which isn't in the water. */
function eventsOfUpRigs(timeline: Timeline): ReadonlySet<TripEvent> {
  const up =
    upByTimeline.get(timeline) ??
    new Set(timeline.anomalies.flatMap(({ kind, event }) => (kind === "not-in-water" ? [event] : [])));
  upByTimeline.set(timeline, up);
  return up;
}
