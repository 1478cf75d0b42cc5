/** The true depth of every set, move and again line of a trip: ball, weight and lure, their bands, what they lean on. */
import type { Calibration, Rig } from "../model/gear-types.ts";
import { findItem } from "../model/quantities.ts";
import type { ReadingAges } from "../model/readings.ts";
import type { Setting } from "../model/setting.ts";
import { meantMs } from "../model/time-order.ts";
import type { CableSpread, Timeline } from "../model/timeline.ts";
import { cableRigOf, type Trip, type TripEvent } from "../model/trip.ts";
import { type BottomReading, bottomAt } from "./bottom.ts";
import { isSpeedContradictedNear } from "./contradictions.ts";
import { depthKept } from "./depth-kept.ts";
import type { DepthMemo } from "./depth-memo.ts";
import type { DepthPlace } from "./depth-place.ts";
import { trippedBy } from "./diver-tripped.ts";
import { downriggerDepth } from "./downrigger-depth.ts";
import { longLineDepth } from "./long-line-depth.ts";
import type { DepthLack } from "./no-task.ts";
import { usableTemperatures } from "./odd-temperature.ts";
import type { SliderPlace } from "./slider-depth.ts";
import type { SpeedUsed } from "./speed-used.ts";
import { tripSpeed } from "./trip-speed.ts";
import { LONG_LINE_SHARE, profilesOf, type WaterUsed, waterAt } from "./water-used.ts";
import { contradicted } from "./without-depth.ts";

/** One line's depths; null with a reason where there is none. */
export interface LineDepth {
  readonly event: TripEvent;
  readonly rig: string;
  readonly setting: Setting;
  readonly ball: DepthPlace | null;
  /** Why there is no ball depth, also on a line that has no ball; null where it is known. */
  readonly whyNoBall: string | null;
  /** The diver or in-line weight of a line that is on no downrigger. */
  readonly weight: DepthPlace | null;
  readonly weightIs: "diver" | "weight" | undefined;
  readonly lure: DepthPlace | null;
  /** A second lure on a downrigger's line. */
  readonly slider: SliderPlace | null;
  /** How far a planer board takes the line to the side, m; null without one. It doesn't change the depth. */
  readonly sideM: number | null;
  /** Of a line that is on no downrigger: backing in the water, m, and what was taken for granted. */
  readonly backingM: number;
  readonly assumed: readonly string[];
  /** Depth of the lure's release, m. */
  readonly releaseDepthM: number | null;
  /** Why neither ball nor lure has a depth, as a sentence part. */
  readonly why: string | null;
  /** What would have to be written for one, or can't be as it is. */
  readonly lack: DepthLack | undefined;
  /** Why there is no lure depth though there is one for the ball. */
  readonly whyNoLure: string | null;
  readonly topAngleDeg: number | null;
  /** The model puts something at or above the surface. */
  readonly surfaced: boolean;
  /** In a sheared stream, how many times over an error shows in the depth; null in a uniform one. */
  readonly conditioning: number | null;
  /** Other depths, m, at which the ball could hang as well in this stream; the deepest is given. */
  readonly otherBallDepthsM: readonly number[];
  readonly speed: SpeedUsed | undefined;
  readonly water: WaterUsed | undefined;
  readonly bottom: BottomReading | undefined;
  readonly cableRig: Rig | undefined;
  readonly calibration: Calibration | undefined;
  /** Other rigs' calibrations that narrow the range of one that has none. */
  readonly sharedFrom: readonly Calibration[];
}

export type { DepthPlace } from "./depth-place.ts";

const DEPTH_VERBS = new Set(["set", "move", "again"]);
/** What a change line may alter that alters the depth. */
const CHANGES_DEPTH = ["out", "above", "setback", "lure", "ball", "leader", "dial", "flasher", "slider"];

const isDepthLine = ({ line }: TripEvent): boolean => DEPTH_VERBS.has(line.verb);
const isDepthChange = ({ line }: TripEvent): boolean =>
  line.verb === "change" && CHANGES_DEPTH.some((word) => findItem(line, word) !== undefined);

/** What a trip's depths are computed from besides its lines. */
export interface DepthSources {
  readonly ages: ReadingAges;
  readonly bottomHeldMs: number;
  readonly memo: DepthMemo;
}

/** Depths of all set, move and again lines of a trip, in the order of the file. */
export function lineDepths(trip: Trip, timeline: Timeline, sources: DepthSources): LineDepth[] {
  return depthsOf(trip, timeline, sources, isDepthLine);
}

/** Depths of the change lines that alter one; they are shown beside their lines and counted nowhere. */
export function changeDepths(trip: Trip, timeline: Timeline, sources: DepthSources): LineDepth[] {
  return trip.events.some(isDepthChange) ? depthsOf(trip, timeline, sources, isDepthChange) : [];
}

function depthsOf(
  trip: Trip,
  timeline: Timeline,
  sources: DepthSources,
  isMeant: (event: TripEvent) => boolean,
): LineDepth[] {
  const depthAt = depthSolver(trip, timeline, sources);
  const depths: LineDepth[] = [];
  for (const event of trip.events) {
    if (!isMeant(event) || event.rig === undefined || event.rig === "all") continue;
    const setting = timeline.settingAfter.get(event.lineIndex);
    if (setting === undefined) continue;
    const rods = timeline.spreadAfter.get(event.lineIndex);
    depths.push(depthAt({ event, rig: event.rig, setting, rods }));
  }
  return depths;
}

/** A rig as it is out, and the line of the journal at whose minute its depth is asked for. */
export interface RigAtLine {
  readonly event: TripEvent;
  readonly rig: string;
  readonly setting: Setting;
  /** The rods on its cable, where it is on one. */
  readonly rods: CableSpread | undefined;
}

/** Answers how deep a rig hangs at the minute that a line is meant for; a trip's readings are gathered once. */
export function depthSolver(
  trip: Trip,
  timeline: Timeline,
  { ages, bottomHeldMs, memo }: DepthSources,
): (rig: RigAtLine) => LineDepth {
  const speedAt = tripSpeed(trip, ages);
  const temperatures = usableTemperatures(trip);
  const profiles = profilesOf(trip);
  return ({ event, rig, setting, rods }) => {
    const timeMs = meantMs(trip, event);
    const cableRig = cableRigOf(trip.gear, rig);
    const reachM = roughDepthM(trip, rig, setting, rods);
    const base = {
      event,
      rig,
      setting,
      speed: timeMs === null ? undefined : speedAt(timeMs),
      water: timeMs === null ? undefined : waterAt(profiles, temperatures, timeMs, reachM, ages),
      bottom: timeMs === null ? undefined : bottomAt(trip, timeMs, bottomHeldMs),
      cableRig,
    };
    const isTripped = isDiver(trip, rig) && trippedBy(timeline, event) !== undefined;
    const depth = depthKept(base, { gear: trip.gear, memo, rods, isTripped }, () =>
      cableRig === undefined
        ? longLineDepth(trip, base, isTripped, memo)
        : downriggerDepth(trip, base, rods, memo),
    );
    const isTold = base.speed !== undefined || timeMs === null;
    return isTold || !isSpeedContradictedNear(trip, timeMs, ages) ? depth : contradicted(depth);
  };
}

function isDiver({ gear }: Trip, rig: string): boolean {
  return gear.rigs.get(rig)?.kind === "diver";
}

/** About how deep a line hangs, for the temperature around it: cable goes down, long lines a quarter of their length. */
function roughDepthM(trip: Trip, rig: string, setting: Setting, rods: CableSpread | undefined): number {
  const cableRig = cableRigOf(trip.gear, rig);
  if (cableRig !== undefined) return rods?.get(cableRig.name)?.setting.outM ?? 0;
  return LONG_LINE_SHARE * (setting.outM ?? 0);
}
