/** A trip in figures: hours, rod-hours, fish, bites, and the speeds, temperatures and depths they came at. */
import { type Extent, extentOf } from "../model/extent.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { meantMs, misplacedLines, slippedLines } from "../model/time-order.ts";
import type { Timeline } from "../model/timeline.ts";
import type { Trip } from "../model/trip.ts";
import { type Bite, bitesOf, lureOfBite } from "./bites.ts";
import { goingByLine } from "./going.ts";
import type { LineDepth } from "./line-depth.ts";
import { usableTemperatures } from "./odd-temperature.ts";
import { type PoissonRange, poissonRange } from "./poisson-range.ts";
import type { SliderPlace } from "./slider-depth.ts";
import { trollingSpeeds } from "./speed-used.ts";
import type { WaterDay } from "./water-day.ts";
import { summarizeWater, type WaterSummary } from "./water-summary.ts";

/** Kept, released and unsaid fish of one species. */
export interface SpeciesCount {
  readonly species: string;
  readonly kept: number;
  readonly released: number;
  readonly unsaid: number;
}

export type { Extent } from "../model/extent.ts";

/** What caught: one landed fish, with the depth its line was last computed at. */
interface CatchDepth {
  readonly lineIndex: number;
  readonly rig: string;
  readonly species: string | undefined;
  readonly lure: string | undefined;
  /** Depth of the lure, or of the ball where the lure's is unknown, m; null where neither is. */
  readonly depthM: number | null;
  /** Minutes after sunrise at which it struck, else was landed; null without a position, time zone or clock. */
  readonly sunriseMinutes: number | null;
}

/** One trip's summary. Hours are null where the log doesn't say. */
export interface TripSummary {
  readonly date: string;
  readonly boat: string;
  readonly openerIndex: number;
  readonly departMs: number | null;
  readonly returnMs: number | null;
  readonly hours: number | null;
  /** With the lure in the water: fishing, or a fish on. */
  readonly rodHoursWet: number;
  readonly rodHoursFishing: number;
  readonly rodHoursByRig: readonly { rig: string; wet: number; fishing: number }[];
  /** Rods that still fished at the end. */
  readonly assumedPulls: number;
  readonly species: readonly SpeciesCount[];
  readonly landed: number;
  readonly lost: number;
  readonly broke: number;
  readonly missed: number;
  readonly open: number;
  /** Landed fish per rod-hour fishing, with the 80 % range of rates that would fit as well. */
  readonly landedPerRodHour: { readonly rate: number; readonly range: PoissonRange } | null;
  readonly speedsMS: {
    readonly down: Extent | null;
    readonly surface: Extent | null;
    readonly ground: Extent | null;
  };
  readonly tempsC: { readonly down: Extent | null; readonly surface: Extent | null };
  readonly caughtAt: readonly CatchDepth[];
  readonly depthsComputed: number;
  readonly depthLines: number;
  /** Lines that can't be read, or only in part: what can't be read is in no figure. */
  readonly unreadLines: number;
  /** Lines counted half a day or a day later than they say, and others out of the order of time, counted as they say. */
  readonly slippedLines: number;
  readonly misplacedLines: number;
  /** Layers, current, way and light. */
  readonly water: WaterSummary;
}

const HOUR_MS = 3_600_000;
const COVERAGE = 0.8;

/** Sums up a trip. */
export function summarize(
  trip: Trip,
  timeline: Timeline,
  depths: readonly LineDepth[],
  water: WaterDay,
): TripSummary {
  const bites = bitesOf(trip, timeline);
  const ended = (end: Bite["end"]): number => bites.filter((bite) => bite.end === end).length;
  const rodHoursByRig = rodHours(trip, timeline);
  const fishing = sum(rodHoursByRig.map((rig) => rig.fishing));
  const landed = ended("landed");
  const departMs = timeOf(trip, "depart");
  const returnMs = timeOf(trip, "return");
  const span = spanMs(trip, timeline, departMs, returnMs);
  return {
    date: trip.date,
    boat: trip.boat,
    openerIndex: trip.openerIndex,
    departMs,
    returnMs,
    hours: span === null ? null : span / HOUR_MS,
    rodHoursWet: sum(rodHoursByRig.map((rig) => rig.wet)),
    rodHoursFishing: fishing,
    rodHoursByRig,
    assumedPulls: timeline.assumedPulls.filter(({ state }) => state === "fishing").length,
    species: speciesCounts(bites),
    landed,
    lost: ended("lost"),
    broke: ended("broke"),
    missed: ended("missed"),
    open: ended("open"),
    landedPerRodHour: rateOf(landed, fishing),
    speedsMS: speedExtents(trip, timeline),
    tempsC: tempExtents(trip),
    caughtAt: caughtAt(trip, bites, timeline, depths, water),
    depthsComputed: depths.filter((depth) => depth.why === null).length,
    depthLines: depths.length,
    unreadLines: trip.unreadLines,
    slippedLines: slippedLines(trip).size,
    misplacedLines: misplacedLines(trip).size - slippedLines(trip).size,
    water: summarizeWater(trip, timeline, water, bites),
  };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function timeOf(trip: Trip, verb: string): number | null {
  const found = trip.events.find((event) => event.line.verb === verb && event.instant !== null);
  return found === undefined ? null : meantMs(trip, found);
}

function spanMs(
  trip: Trip,
  timeline: Timeline,
  departMs: number | null,
  returnMs: number | null,
): number | null {
  const start = timeline.ordered.find((event) => event.instant !== null);
  const first = departMs ?? (start === undefined ? null : meantMs(trip, start));
  const last = returnMs ?? timeline.endMs;
  return first === null || last === null || last <= first ? null : last - first;
}

/** Rod-hours by rig; a cast or jigged rod counts its anglers, a rig of several rods its rods. */
function rodHours(trip: Trip, timeline: Timeline): { rig: string; wet: number; fishing: number }[] {
  const hours = new Map<string, { rig: string; wet: number; fishing: number }>();
  for (const stretch of timeline.stretches) {
    const rods = stretch.setting.anglers ?? trip.gear.rigs.get(stretch.rig)?.rods ?? 1;
    const hoursTo = (ms: number): number => ((ms - stretch.fromMs) / HOUR_MS) * rods;
    const row = hours.get(stretch.rig) ?? { rig: stretch.rig, wet: 0, fishing: 0 };
    row.wet += hoursTo(stretch.wetToMs);
    if (stretch.state === "fishing") row.fishing += hoursTo(stretch.toMs);
    hours.set(stretch.rig, row);
  }
  return [...hours.values()];
}

function speciesCounts(bites: readonly Bite[]): SpeciesCount[] {
  const counts = new Map<string, SpeciesCount>();
  for (const bite of bites) {
    if (bite.end !== "landed" || bite.fish === undefined) continue;
    const species = bite.fish.species ?? "fish";
    const row = counts.get(species) ?? { species, kept: 0, released: 0, unsaid: 0 };
    counts.set(species, { ...row, [bite.fish.fate]: row[bite.fish.fate] + 1 });
  }
  return [...counts.values()];
}

function rateOf(landed: number, rodHoursFishing: number): TripSummary["landedPerRodHour"] {
  const range = poissonRange(landed, COVERAGE);
  if (rodHoursFishing <= 0 || range === undefined) return null;
  return {
    rate: landed / rodHoursFishing,
    range: { low: range.low / rodHoursFishing, high: range.high / rodHoursFishing },
  };
}

/** Of speeds at a troll: none that is doubted, and none faster than a troll while nothing is towed, `sure` or not. */
function speedExtents(trip: Trip, timeline: Timeline): TripSummary["speedsMS"] {
  const going = goingByLine(trip, timeline);
  const fastestMS = thresholdOf(trip.gear, THRESHOLDS.fastTroll);
  const readings = trollingSpeeds(trip).filter(
    ({ value, event }) => value <= fastestMS || going.get(event.lineIndex)?.isTrolling === true,
  );
  const of = (source: string): Extent | null =>
    extentOf(readings.filter((reading) => reading.source === source).map((reading) => reading.value));
  return { down: of("probe"), surface: of("surface"), ground: of("gps") };
}

function tempExtents(trip: Trip): TripSummary["tempsC"] {
  const readings = usableTemperatures(trip);
  const of = (source: string): Extent | null =>
    extentOf(readings.filter((reading) => reading.source === source).map((reading) => reading.value));
  return { down: of("probe"), surface: of("surface") };
}

/** A free slider's depth is not known well enough to say what it caught at. */
function pinnedSlider(depth: LineDepth | undefined): SliderPlace | null {
  const slider = depth?.slider ?? null;
  return slider?.isFree === true ? null : slider;
}

/** Each landed fish with the last depth computed for its rig before the bite. */
function caughtAt(
  { gear }: Trip,
  bites: readonly Bite[],
  timeline: Timeline,
  depths: readonly LineDepth[],
  water: WaterDay,
): CatchDepth[] {
  const order = new Map(timeline.ordered.map((event, index) => [event.lineIndex, index]));
  const rank = (lineIndex: number): number => order.get(lineIndex) ?? -1;
  return bites
    .filter((bite) => bite.end === "landed")
    .map((bite) => {
      const at = rank((bite.strike ?? bite.last).lineIndex);
      const before = depths
        .filter((depth) => depth.rig === bite.rig && rank(depth.event.lineIndex) < at)
        .sort((a, b) => rank(b.event.lineIndex) - rank(a.event.lineIndex))[0];
      return {
        lineIndex: bite.last.lineIndex,
        rig: bite.rig,
        species: bite.fish?.species,
        lure: lureOfBite(bite, timeline, gear),
        depthM: (bite.onSlider ? pinnedSlider(before) : (before?.lure ?? before?.ball))?.depthM ?? null,
        sunriseMinutes: water.lightAt(bite.strike ?? bite.last)?.sunriseMinutes ?? null,
      };
    });
}
