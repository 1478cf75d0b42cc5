/** What is in the water after a line: the rigs that fish, each cable with the rods clipped to it, and what they run in. */

import type { Gear, Rig } from "../model/gear-types.ts";
import type { ReadingAges } from "../model/readings.ts";
import { temperatureReadings } from "../model/readings.ts";
import type { Setting } from "../model/setting.ts";
import type { CableSpread, RodOnSpread, Timeline } from "../model/timeline.ts";
import { cableRigOf, type Trip, type TripEvent } from "../model/trip.ts";
import { type DownriggerTask, downriggerTask } from "./downrigger-input.ts";
import { type LongLineTask, longLineTask } from "./long-line-input.ts";
import type { SpeedUsed } from "./speed-used.ts";
import { type TowPlace, towPlaceOf } from "./spread-geometry.ts";
import { tripSpeed } from "./trip-speed.ts";
import { LONG_LINE_SHARE, type Profile, profilesOf, waterAt } from "./water-used.ts";
import { inStream } from "./without-depth.ts";

/** A rig in the water with all that is on its cable. */
export interface WetRig {
  readonly rig: Rig;
  readonly setting: Setting;
  /** The rods on it, where it is a downrigger. */
  readonly rods: CableSpread | undefined;
  readonly place: TowPlace;
}

/** What it hangs like. */
export type WetTask =
  | { readonly kind: "downrigger"; readonly task: DownriggerTask }
  | { readonly kind: "long line"; readonly task: LongLineTask };

/** What a trip's readings say of the water, found once. */
export interface TripWater {
  readonly speedAt: (timeMs: number) => SpeedUsed | undefined;
  readonly temperatures: ReturnType<typeof temperatureReadings>;
  readonly profiles: readonly Profile[];
  readonly ages: ReadingAges;
}

/** Gathers a trip's readings. */
export function tripWater(trip: Trip, ages: ReadingAges): TripWater {
  return {
    speedAt: tripSpeed(trip, ages),
    temperatures: temperatureReadings(trip),
    profiles: profilesOf(trip),
    ages,
  };
}

/**
 * The rigs in the water just after a line, in the order of the book, each cable once. Left out: rigs without a side, those cast
 * or jigged, those that ride on the bottom (what lies there has another shape), and rods that are up for a fish.
 */
export function wetRigsAfter({ gear }: Trip, timeline: Timeline, { lineIndex }: TripEvent): WetRig[] {
  const rods = timeline.wetAfter.get(lineIndex) ?? new Map<string, RodOnSpread>();
  const cables = new Map<string, Map<string, RodOnSpread>>();
  const wet: WetRig[] = [];
  for (const [name, rod] of rods) {
    const rig = gear.rigs.get(name);
    const cable = cableRigOf(gear, name);
    if (cable !== undefined) {
      const spread = cables.get(cable.name) ?? new Map<string, RodOnSpread>();
      cables.set(cable.name, spread.set(name, rod));
    } else if (rig !== undefined && rod.isClipped && isTowed(rig))
      push(wet, gear, rig, rod.setting, undefined);
  }
  for (const [name, spread] of cables) {
    const rig = gear.rigs.get(name);
    const own = spread.get(name);
    if (rig === undefined || own === undefined || ![...spread.values()].some((rod) => rod.isClipped))
      continue;
    push(wet, gear, rig, own.setting, spread);
  }
  const order = [...gear.rigs.keys()];
  return wet.sort((a, b) => order.indexOf(a.rig.name) - order.indexOf(b.rig.name));
}

function isTowed({ kind }: Rig): boolean {
  return kind !== undefined && kind !== "jig" && kind !== "stacked";
}

function push(
  wet: WetRig[],
  { beamM }: Gear,
  rig: Rig,
  setting: Setting,
  rods: CableSpread | undefined,
): void {
  const place = towPlaceOf(rig, setting, beamM);
  if (place !== undefined && !setting.onBottom) wet.push({ rig, setting, rods, place });
}

/** The speed of a minute, and the temperature around each rig, in their order; undefined where no speed is known. */
export interface MinuteWater {
  readonly speed: SpeedUsed;
  readonly temperaturesC: readonly number[];
}

/** What the rigs in the water run in at a minute. */
export function waterAround(
  { speedAt, temperatures, profiles, ages }: TripWater,
  wet: readonly WetRig[],
  timeMs: number,
): MinuteWater | undefined {
  const speed = speedAt(timeMs);
  if (speed === undefined) return undefined;
  const temperaturesC = wet.map(({ setting, rods }) => {
    const reachM = (setting.outM ?? 0) * (rods === undefined ? LONG_LINE_SHARE : 1);
    return waterAt(profiles, temperatures, timeMs, reachM, ages).tempC;
  });
  return { speed, temperaturesC };
}

/** What to solve for a rig in its water; `undefined` where its depth can't be known. */
export function wetTaskOf({ gear }: Trip, wet: WetRig, speed: SpeedUsed, tempC: number): WetTask | undefined {
  const { rig, setting, rods } = wet;
  const runs = inStream(speed, tempC);
  if (rods !== undefined) {
    const task = downriggerTask(gear, rig, rods, runs);
    return task.ok ? { kind: "downrigger", task } : undefined;
  }
  const task = longLineTask(gear, rig, setting, runs);
  return task.ok ? { kind: "long line", task } : undefined;
}
