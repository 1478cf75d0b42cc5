/** What a day's water and light were: layers and bands as they were read, current by leg, sun and moon, fish by hour. */
import type { Timeline } from "../model/timeline.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import type { Bite } from "./bites.ts";
import type { CurrentLook } from "./current-looks.ts";
import type { WaterLayers } from "./layers-at.ts";
import { type Moon, moonAt, type SunDay } from "./light.ts";
import { placeNear } from "./positions.ts";
import type { BandDepths } from "./temperature-at.ts";
import type { Leg } from "./track.ts";
import type { WaterDay } from "./water-day.ts";
import type { WaterProfile } from "./water-profile.ts";

/** The layers and bands at the minute of one lowered profile. */
export interface LayersRead {
  readonly timeMs: number;
  readonly layers: WaterLayers;
  /** Line numbers of the readings in it, from 0. */
  readonly lines: readonly number[];
  readonly bands: readonly { readonly species: string; readonly depths: readonly BandDepths[] }[];
}

/** The current along a leg, m/s; below zero the boat ran into it. */
export interface AlongLeg {
  readonly alongMS: number;
  /** Of one pair of speeds: what an instrument is off stays the same from one to the next, so a mean is no better. */
  readonly sdMS: number;
}

/** A leg with the mean of what each pair of speeds said of the current along it. */
export interface LegCurrent {
  readonly leg: Leg;
  readonly onTop: AlongLeg | null;
  readonly atProbe: AlongLeg | null;
  /** Line numbers of the speeds they were taken from, from 0. */
  readonly lines: readonly number[];
}

/** Fish landed in one hour of the clock, and the rod-hours fished in it. */
export interface LandedHour {
  readonly fromMs: number;
  readonly landed: number;
  readonly rodHours: number;
}

/** The water's and light's part of a summary. */
export interface WaterSummary {
  readonly layers: readonly LayersRead[];
  readonly legs: readonly LegCurrent[];
  readonly distanceM: number | null;
  readonly sun: SunDay | null;
  readonly moon: Moon | null;
  readonly landedByHour: readonly LandedHour[];
}

const HOUR_MS = 3_600_000;

/** Sums up the water of a day. */
export function summarizeWater(
  trip: Trip,
  timeline: Timeline,
  water: WaterDay,
  bites: readonly Bite[],
): WaterSummary {
  const firstMs = timeline.ordered.find((event) => event.instant !== null)?.instant?.utcMs;
  const place = firstMs === undefined ? undefined : placeNear(trip, water.track.fixes, firstMs);
  return {
    layers: trip.events.flatMap((event) => layersRead(water, event) ?? []),
    legs: water.track.legs.map((leg) => legCurrent(leg, water.looks)),
    distanceM: water.track.distanceM ?? null,
    sun: water.sun ?? null,
    moon:
      place === undefined || firstMs === undefined || trip.zone === undefined ? null : moonAt(place, firstMs),
    landedByHour: landedByHour(trip, timeline, bites),
  };
}

function layersRead(water: WaterDay, { line, instant }: TripEvent): LayersRead | undefined {
  const profile = line.verb === "profile" && instant !== null ? water.profileAt(instant.utcMs) : undefined;
  if (profile === undefined) return undefined;
  return {
    timeMs: profile.timeMs,
    layers: water.layersOf(profile) ?? { kind: "too-few" },
    lines: readingsIn(profile),
    bands: water
      .bandsAt(profile)
      .map(({ band, depths }) => ({ species: band.species, depths: depths ?? [] })),
  };
}

/** Every reading that a profile was made of. */
function readingsIn({ nodes }: WaterProfile): number[] {
  return distinct(nodes.flatMap((node) => node.points.map(({ event }) => event.lineIndex)));
}

function distinct(lines: readonly number[]): number[] {
  return [...new Set(lines)].sort((a, b) => a - b);
}

function legCurrent(leg: Leg, looks: readonly CurrentLook[]): LegCurrent {
  const on = looks.filter((look) => !look.isNearTurn && !look.isDoubted && leg.events.includes(look.gps));
  const mean = (where: CurrentLook["where"]): AlongLeg | null => {
    const there = on.filter((look) => look.where === where);
    const [first] = there;
    if (first === undefined) return null;
    const alongMS = there.reduce((sum, look) => sum + look.alongMS, 0) / there.length;
    return { alongMS, sdMS: first.sdMS };
  };
  const lines = on.flatMap(({ gps, water }) => [gps.lineIndex, water.lineIndex]);
  return { leg, onTop: mean("surface"), atProbe: mean("probe"), lines: distinct(lines) };
}

/** Every hour of the clock in which a rod fished. */
function landedByHour(trip: Trip, timeline: Timeline, bites: readonly Bite[]): LandedHour[] {
  const hours = new Map<number, { landed: number; rodHours: number }>();
  const at = (hour: number): { landed: number; rodHours: number } => {
    const row = hours.get(hour) ?? { landed: 0, rodHours: 0 };
    hours.set(hour, row);
    return row;
  };
  for (const { rig, setting, state, fromMs, toMs } of timeline.stretches) {
    if (state !== "fishing") continue;
    const rods = setting.anglers ?? trip.gear.rigs.get(rig)?.rods ?? 1;
    for (let hour = Math.floor(fromMs / HOUR_MS); hour * HOUR_MS < toMs; hour++) {
      const spentMs = Math.min(toMs, (hour + 1) * HOUR_MS) - Math.max(fromMs, hour * HOUR_MS);
      at(hour).rodHours += (spentMs / HOUR_MS) * rods;
    }
  }
  for (const bite of bites) {
    const ms = (bite.strike ?? bite.last).instant?.utcMs;
    if (bite.end === "landed" && ms !== undefined) at(Math.floor(ms / HOUR_MS)).landed++;
  }
  return [...hours].sort(([a], [b]) => a - b).map(([hour, row]) => ({ fromMs: hour * HOUR_MS, ...row }));
}
