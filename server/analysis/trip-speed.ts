/**
 * The speeds that a trip's lines lean on, minute by minute: those read, and where the speed on top or the one at the
 * probe is missing, or was read before a turn, the one that the current of other courses tells.
 */
import type { ReadingAges } from "../model/readings.ts";
import { isSameList } from "../model/same-list.ts";
import type { Trip } from "../model/trip.ts";
import type { Layers } from "../physics/lake-layers.ts";
import { layerAt } from "./current-layer.ts";
import { legAt } from "./legs.ts";
import { dayProfiles } from "./profile-store.ts";
import { type ShearUsed, shearAt } from "./shear-used.ts";
import { MOST_APART_MS, type SpeedUsed, speedAt, trollingSpeeds } from "./speed-used.ts";
import { spanOf } from "./stream-used.ts";
import { wayOf } from "./way-kept.ts";

/**
 * Answers for any minute of a trip; undefined where no reading may be used. The very same speed for the same minute while
 * the lines it is told from are the very same.
 */
export function tripSpeed(trip: Trip, ages: ReadingAges): (timeMs: number) => SpeedUsed | undefined {
  const minutes = minutesOf(trip, ages);
  return (timeMs) => {
    if (minutes.has(timeMs)) return minutes.get(timeMs);
    if (minutes.size >= MOST_MINUTES) minutes.clear();
    const speed = findSpeed(trip, ages, timeMs);
    minutes.set(timeMs, speed);
    return speed;
  };
}

/** Of one trip: more than a day has, for its clock times may be edited. */
const MOST_MINUTES = 5000;

function minutesOf(trip: Trip, ages: ReadingAges): Map<number, SpeedUsed | undefined> {
  const way = wayOf(trip);
  const { staleAfterMs, unusedAfterMs, aheadMs } = ages;
  const madeOf = [staleAfterMs, unusedAfterMs, aheadMs, dayProfiles(trip, ages)];
  if (way.speeds === undefined || !isSameList(way.speeds.madeOf, madeOf))
    way.speeds = { madeOf, at: new Map() };
  return way.speeds.at;
}

function findSpeed(trip: Trip, ages: ReadingAges, timeMs: number): SpeedUsed | undefined {
  const found = speedAt(trollingSpeeds(trip), timeMs, ages);
  const speed = found && completed(trip, found, timeMs, ages);
  const layer = speed?.onTop && layerAt(trip, ages, timeMs);
  return speed === undefined || layer === undefined ? speed : { ...speed, layer };
}

/** A pair of one leg stays as it was read. A speed over ground alone says nothing of the water. */
function completed(trip: Trip, speed: SpeedUsed, timeMs: number, ages: ReadingAges): SpeedUsed {
  const { onTop } = speed;
  const isNow = (one: SpeedUsed): boolean => isOfLeg(trip, one, timeMs);
  if (speed.source === "gps" || (onTop !== undefined && isNow(onTop) === isNow(speed))) return speed;
  const hasDeep = speed.source === "probe" && (onTop === undefined || isNow(speed));
  if (hasDeep && speed.depthM === undefined) return speed;
  const shear = shearAt(trip, timeMs);
  if (shear === undefined) return speed;
  if (!hasDeep) return withDeep(onTop ?? speed, shear) ?? speed;
  const { onTop: _, ...deep } = speed;
  return withTop(deep, shear, layerAt(trip, ages, timeMs));
}

/** True when one of its readings is of the leg of that minute. */
function isOfLeg(trip: Trip, { used }: SpeedUsed, timeMs: number): boolean {
  const leg = legAt(trip, timeMs);
  return used.some(({ event }) => leg?.includes(event) === true);
}

/** The probe's speed with the one on top that the current tells; a shallower probe may see less of the difference. */
function withTop(deep: SpeedUsed, shear: ShearUsed, layer: Layers | undefined): SpeedUsed {
  const { fromM, toM } = spanOf(shear.depthM, layer);
  const share = Math.min(1, Math.max(0, ((deep.depthM ?? 0) - fromM) / (toM - fromM)));
  const value = deep.value + share * shear.topLessDeepMS;
  const sdMS = Math.hypot(deep.sdMS, share * shear.sdMS);
  return { ...deep, onTop: { ...deep, source: "surface", depthM: 0, value, sdMS, byCurrent: shear } };
}

/** The speed on top with the one down there that the current tells. */
function withDeep(top: SpeedUsed, shear: ShearUsed): SpeedUsed | undefined {
  const value = top.value - shear.topLessDeepMS;
  if (value < 0 || Math.abs(shear.topLessDeepMS) > MOST_APART_MS) return undefined;
  const { depthM } = shear;
  const sdMS = Math.hypot(top.sdMS, shear.sdMS);
  return { ...top, source: "probe", rig: undefined, depthM, value, sdMS, byCurrent: shear, onTop: top };
}
