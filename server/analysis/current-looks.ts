/**
 * What each speed over ground says of the current, together with a speed through the water read near it. One heading
 * tells only how much the troll runs into the current or with it; headings that differ tell the current itself.
 */
import { hasWord, measureOf } from "../model/quantities.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import {
  angleBetween,
  type CurrentEstimate,
  directionOf,
  fitCurrent,
  type Look,
  sdAlong,
  speedOf,
  velocityOf,
  widestSd,
} from "../physics/current.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import { type Bearing, courseOf } from "./bearings.ts";
import { isContradicted } from "./contradictions.ts";
import { wayOf } from "./way-kept.ts";

/** Where a speed through the water was read. */
export type CurrentDepth = "surface" | "probe";

/** One speed over ground with one speed through the water. */
export interface CurrentLook {
  readonly where: CurrentDepth;
  readonly timeMs: number;
  readonly gps: TripEvent;
  readonly water: TripEvent;
  readonly waterTimeMs: number;
  readonly groundMS: number;
  readonly waterMS: number;
  readonly course: Bearing | undefined;
  /** Depth of the probe, m; 0 on top, undefined where it shows none. */
  readonly depthM: number | undefined;
  /** Speed over ground less that through the water: below zero it runs into the current, m/s. */
  readonly alongMS: number;
  readonly sdMS: number;
  /** No troll goes like that, or no current is that strong, and neither line says `sure`. */
  readonly isDoubted: boolean;
  /** A turn was so near that the speeds may be of different headings. */
  readonly isNearTurn: boolean;
  /** How long before and after it what it says is taken to hold, ms. */
  readonly holdsMs: number;
}

/** A vector known no better than that is no answer, m/s (judgement). */
const WIDEST_SD_MS = 0.25;

const GROUND_SD_MS = 0.045;
const WATER_SD_MS: Readonly<Record<CurrentDepth, number>> = {
  surface: DEFAULTS.surfaceSpeedSdMS.value,
  probe: DEFAULTS.probeSpeedSdMS.value,
};

/**
 * Every look of a day, in the order of time; found once while the lines they are told from are the very same. A line written
 * twice is one.
 */
export function currentLooks(trip: Trip): readonly CurrentLook[] {
  const way = wayOf(trip);
  way.looks ??= findLooks(trip);
  return way.looks;
}

const LOOKED_AT = new Set(["gps", "surface", "probe", "turn"]);

function findLooks(trip: Trip): CurrentLook[] {
  const lines = trip.events.filter(({ instant, line }) => instant !== null && LOOKED_AT.has(line.verb));
  const timed = distinctLines(lines).sort((a, b) => (a.instant?.utcMs ?? 0) - (b.instant?.utcMs ?? 0));
  const turns = timed.filter(({ line }) => line.verb === "turn");
  const speeds = { surface: waterSpeeds(trip, timed, "surface"), probe: waterSpeeds(trip, timed, "probe") };
  return timed.flatMap((gps) => {
    if (gps.line.verb !== "gps" || isContradicted(trip, gps, "speed")) return [];
    return (["surface", "probe"] as const).flatMap(
      (where) => lookOf(trip, gps, where, speeds[where], turns) ?? [],
    );
  });
}

function distinctLines(events: readonly TripEvent[]): TripEvent[] {
  const seen = new Set<string>();
  return events.filter(({ line, instant }) => {
    const key = `${instant?.utcMs ?? ""} ${line.raw.trim()}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

interface WaterSpeed {
  readonly event: TripEvent;
  readonly timeMs: number;
  readonly speedMS: number;
}

function waterSpeeds(trip: Trip, timed: readonly TripEvent[], where: CurrentDepth): WaterSpeed[] {
  return timed.flatMap((event) => {
    if (event.line.verb !== where || event.instant === null) return [];
    if (isContradicted(trip, event, "speed")) return [];
    const speedMS = measureOf(event.line, "speed", "speed", trip.gear.defaults);
    return speedMS === undefined ? [] : [{ event, timeMs: event.instant.utcMs, speedMS }];
  });
}

function lookOf(
  trip: Trip,
  gps: TripEvent,
  where: CurrentDepth,
  speeds: readonly WaterSpeed[],
  turns: readonly TripEvent[],
): CurrentLook | undefined {
  const { gear } = trip;
  const groundMS = measureOf(gps.line, "speed", "speed", gear.defaults);
  const timeMs = gps.instant?.utcMs;
  const togetherMs = 1000 * thresholdOf(gear, THRESHOLDS.speedsTogether);
  const water = timeMs === undefined ? undefined : nearestSpeed(speeds, timeMs, togetherMs);
  if (groundMS === undefined || timeMs === undefined || water === undefined) return undefined;
  const times = [timeMs, water.timeMs];
  const settlesMs = 1000 * thresholdOf(gear, THRESHOLDS.turnSettles);
  return {
    where,
    timeMs,
    gps,
    water: water.event,
    waterTimeMs: water.timeMs,
    groundMS,
    waterMS: water.speedMS,
    course: courseOf(trip, gps),
    depthM: where === "surface" ? 0 : probeDepthM(trip, water.event),
    alongMS: groundMS - water.speedMS,
    isDoubted: isDoubted(trip, gps, groundMS, water),
    sdMS: Math.hypot(GROUND_SD_MS, WATER_SD_MS[where]),
    holdsMs: 1000 * thresholdOf(gear, THRESHOLDS.currentHolds),
    isNearTurn: turns.some(({ instant }) =>
      times.some((time) => Math.abs(time - (instant?.utcMs ?? 0)) <= settlesMs),
    ),
  };
}

function probeDepthM(trip: Trip, event: TripEvent): number | undefined {
  if (isContradicted(trip, event, "depth")) return undefined;
  return measureOf(event.line, "depth", "length", trip.gear.defaults);
}

/** A wheel that stands still and a boat that runs tell nothing of the current. */
function isDoubted({ gear }: Trip, gps: TripEvent, groundMS: number, water: WaterSpeed): boolean {
  if (water.speedMS <= 0 || groundMS <= 0) return true;
  if (hasWord(gps.line, "sure") || hasWord(water.event.line, "sure")) return false;
  const fastestMS = thresholdOf(gear, THRESHOLDS.fastTroll);
  const strongestMS = thresholdOf(gear, THRESHOLDS.strongestCurrent);
  return (
    groundMS > fastestMS || water.speedMS > fastestMS || Math.abs(groundMS - water.speedMS) > strongestMS
  );
}

function nearestSpeed(
  speeds: readonly WaterSpeed[],
  timeMs: number,
  togetherMs: number,
): WaterSpeed | undefined {
  let best: WaterSpeed | undefined;
  let bestMs = togetherMs;
  for (const speed of speeds) {
    const apartMs = Math.abs(speed.timeMs - timeMs);
    if (apartMs > bestMs || (best !== undefined && apartMs === bestMs)) continue;
    [best, bestMs] = [speed, apartMs];
  }
  return best;
}

/** A current as a vector, with the looks it was fitted to. */
export interface CurrentVector extends CurrentEstimate {
  readonly where: CurrentDepth;
  /** The direction toward which it flows, degrees. */
  readonly setDeg: number;
  /** Its speed, m/s, with its spread in that direction. */
  readonly driftMS: number;
  readonly driftSdMS: number;
  readonly looks: readonly CurrentLook[];
  /** All courses are magnetic and the boat's variation isn't stated: so is the set. */
  readonly isMagnetic: boolean;
}

/** The current around a minute; undefined when the courses read then tell one direction only, or tell it too badly. */
export function currentVector(
  looks: readonly CurrentLook[],
  where: CurrentDepth,
  timeMs: number,
): CurrentVector | undefined {
  const near = looks.filter(
    (look) =>
      look.where === where &&
      !look.isNearTurn &&
      !look.isDoubted &&
      look.course !== undefined &&
      Math.abs(look.timeMs - timeMs) <= look.holdsMs,
  );
  const [first] = near;
  const isMagnetic = first?.course?.isMagnetic === true;
  if (near.some((look) => look.course?.isMagnetic !== isMagnetic)) return undefined;
  const fitted = fitCurrent(near.map(physicalLook));
  if (fitted === undefined || widestSd(fitted) > WIDEST_SD_MS) return undefined;
  const setDeg = directionOf(fitted);
  const driftSdMS = sdAlong(fitted, setDeg);
  return { ...fitted, where, setDeg, driftMS: speedOf(fitted), driftSdMS, looks: near, isMagnetic };
}

function physicalLook({ groundMS, waterMS, sdMS, course }: CurrentLook): Look {
  return { ground: velocityOf(course?.deg ?? 0, groundMS), waterSpeedMS: waterMS, sdMS };
}

/** How much faster the water at the probe runs along the troll than that on top, from one minute's looks. */
export interface Shear {
  /** Above zero the deep water pushes more from astern, m/s. */
  readonly alongMS: number;
  readonly sdMS: number;
  readonly depthM: number | undefined;
  readonly probe: CurrentLook;
  readonly surface: CurrentLook;
}

/** The shear at each speed over ground that has both speeds beside it. */
export function shears(looks: readonly CurrentLook[]): Shear[] {
  return looks.flatMap((probe) => {
    const surface = looks.find((look) => look.gps === probe.gps && look.where === "surface");
    if (probe.where !== "probe" || surface === undefined) return [];
    return [
      {
        alongMS: probe.alongMS - surface.alongMS,
        sdMS: Math.hypot(WATER_SD_MS.probe, WATER_SD_MS.surface),
        depthM: probe.depthM,
        probe,
        surface,
      },
    ];
  });
}

export { angleBetween };
