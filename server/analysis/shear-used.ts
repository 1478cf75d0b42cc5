/**
 * How the water on top runs against that at the probe's depth, at a minute at which one of the two speeds wasn't read.
 * Courses that lie across each other tell the current at both depths; the boat's own course tells what of their
 * difference it feels.
 */
import type { Trip } from "../model/trip.ts";
import { minus, sdAlong, velocityOf } from "../physics/current.ts";
import { type CurrentVector, currentLooks, currentVector } from "./current-looks.ts";
import { courseAt } from "./legs.ts";
import { wayOf } from "./way-kept.ts";

/** The difference along the boat's course. */
export interface ShearUsed {
  /** Speed through the water on top less that at the depth, m/s. */
  readonly topLessDeepMS: number;
  readonly sdMS: number;
  /** The depth the deep current was read at, m. */
  readonly depthM: number;
  /** When the speeds over ground were read that tell it. */
  readonly timesMs: readonly number[];
}

/** A smaller difference than that many of its standard deviations is none to go by: the range that holds 80 of 100. */
const TOLD_SDS = 1.2816;
/** Shallower probes tell of the water on top, m. */
const LEAST_DEPTH_M = 1;

/** The shear at a minute, found once for each; undefined where the courses of the hour don't tell both currents, or tell no difference. */
export function shearAt(trip: Trip, timeMs: number): ShearUsed | undefined {
  const { shears: minutes } = wayOf(trip);
  if (!minutes.has(timeMs)) minutes.set(timeMs, findShear(trip, timeMs));
  return minutes.get(timeMs);
}

function findShear(trip: Trip, timeMs: number): ShearUsed | undefined {
  const looks = currentLooks(trip);
  const deep = currentVector(looks, "probe", timeMs);
  const top = deep && currentVector(looks, "surface", timeMs);
  const course = top && courseAt(trip, timeMs);
  if (deep === undefined || top === undefined || course === undefined) return undefined;
  const depthM = depthOf(deep);
  const isOneNorth = deep.isMagnetic === top.isMagnetic && course.isMagnetic === top.isMagnetic;
  if (depthM === undefined || !isOneNorth) return undefined;
  // Ground velocity is one: what the current adds at a depth, the speed through the water lacks there.
  const between = minus(deep, top);
  const along = velocityOf(course.deg, 1);
  const topLessDeepMS = between.northMS * along.northMS + between.eastMS * along.eastMS;
  const sdMS = Math.hypot(sdAlong(deep, course.deg), sdAlong(top, course.deg));
  if (Math.abs(topLessDeepMS) <= TOLD_SDS * sdMS) return undefined;
  const times = [...deep.looks, ...top.looks].map((look) => look.timeMs);
  return { topLessDeepMS, sdMS, depthM, timesMs: [...new Set(times)].sort((a, b) => a - b) };
}

/** The mean depth of the probe; undefined where it shows none, or hardly any. */
function depthOf({ looks }: CurrentVector): number | undefined {
  const depths = looks.flatMap(({ depthM }) => depthM ?? []);
  if (depths.length === 0) return undefined;
  const mean = depths.reduce((sum, one) => sum + one, 0) / depths.length;
  return mean < LEAST_DEPTH_M ? undefined : mean;
}
