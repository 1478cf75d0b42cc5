/** Readings of a trip that tell of a rig's line and counter: probe depths, touches of the bottom, distances behind. */
import { lengthWords } from "../model/figures.ts";
import type { Gear, Rig } from "../model/gear-types.ts";
import { findItem, hasWord, measureOf } from "../model/quantities.ts";
import { meantMs } from "../model/time-order.ts";
import type { CableSpread } from "../model/timeline.ts";
import { cableRigOf, type TripEvent } from "../model/trip.ts";
import type { CalibrationReading } from "../physics/calibration-reading.ts";
import { DEFAULTS } from "../physics/defaults.ts";
import { beyondCable } from "./beyond-cable.ts";
import { bottomNear } from "./bottom.ts";
import { cableOutM } from "./cable-out.ts";
import { gearSince } from "./calibration-used.ts";
import { isContradicted } from "./contradictions.ts";
import { type DownriggerTask, downriggerTask } from "./downrigger-input.ts";
import type { TripAnalysis } from "./journal-analysis.ts";
import { type LineReading, lineReader } from "./line-readings.ts";
import { usableTemperatures } from "./odd-temperature.ts";
import type { SpeedUsed } from "./speed-used.ts";
import { tripSpeed } from "./trip-speed.ts";
import { profilesOf, waterAt } from "./water-used.ts";
import { inStream } from "./without-depth.ts";

/** One measured number beside the setting it was read at, whatever the rig. */
export interface ReadingOf<Reading> {
  readonly uri: string;
  readonly boat: string;
  readonly date: string;
  readonly zone: string | undefined;
  /** The boat's gear that day. */
  readonly gear: Gear;
  readonly event: TripEvent;
  readonly rig: Rig;
  /** Day on which that rig, its cable and its ball came to be as they were; empty from the beginning. */
  readonly since: string;
  /** What the counter showed, m. */
  readonly counterM: number;
  readonly speed: SpeedUsed;
  /** The same for a fit. */
  readonly reading: Reading;
}

/** What every reading has, on a downrigger or on any other line. */
export type AnyReading = ReadingOf<Measured>;

/** A reading on a downrigger. */
export interface RigReading extends ReadingOf<CalibrationReading> {
  /** The rig as the book has it that day, with the rods clipped at that minute. */
  readonly task: DownriggerTask;
}

/** A probe or touch line that tells nothing, and why, as a sentence part. */
export interface UnusedReading {
  readonly event: TripEvent;
  readonly rig: string;
  readonly why: string;
}

/** The readings of a trip in the order of the file. */
export interface ReadingsOfTrip {
  readonly used: readonly RigReading[];
  /** On leadcore, copper, wire, flat lines and divers. */
  readonly ofLines: readonly LineReading[];
  readonly unused: readonly UnusedReading[];
}

const known = new WeakMap<TripAnalysis, ReadingsOfTrip>();

/** Collects a trip's readings; kept with the trip. */
export function calibrationReadings(day: TripAnalysis): ReadingsOfTrip {
  const kept = known.get(day) ?? collect(day);
  known.set(day, kept);
  return kept;
}

function collect(day: TripAnalysis): ReadingsOfTrip {
  const used: RigReading[] = [];
  const ofLines: LineReading[] = [];
  const unused: UnusedReading[] = [];
  const settingAt = settingReader(day);
  const lineAt = lineReader(day);
  for (const event of day.trip.events) {
    const measured = measuredOn(day, event);
    if (measured.length === 0) continue;
    if (isContradicted(day.trip, event, "depth")) {
      unused.push({ event, rig: event.rig ?? "", why: "its probe shows two depths in that minute" });
      continue;
    }
    if (cableRigOf(day.trip.gear, event.rig ?? "") === undefined) {
      const line = lineAt(event);
      if (typeof line === "string") unused.push({ event, rig: event.rig ?? "", why: line });
      else for (const one of measured) ofLines.push(line(one));
      continue;
    }
    const setting = settingAt(event);
    if (typeof setting === "string") unused.push({ event, rig: event.rig ?? "", why: setting });
    else
      for (const one of measured) {
        const why = whyBeyond(day.trip.gear, event, setting, one);
        if (why === undefined) used.push(readingOf(day, event, setting, one));
        else unused.push({ event, rig: event.rig ?? "", why });
      }
  }
  return { used, ofLines, unused };
}

/** Why a reading can't be of the cable that was out; one whose line says `sure` counts all the same. */
function whyBeyond(
  gear: Gear,
  { line }: TripEvent,
  { rig, counterM }: SettingAt,
  { as, measuredM }: Measured,
): string | undefined {
  const aboveBallM = as === "probe-depth" ? (rig.probeAboveBallM ?? 0) : 0;
  const outM = Math.max(counterM, cableOutM(gear, rig, counterM));
  if (hasWord(line, "sure") || !beyondCable(gear, measuredM + aboveBallM, outM).isBeyond) return undefined;
  const where = as.endsWith("behind") ? " behind" : " deep";
  return `${lengthWords(gear, measuredM)}${where} can't be with ${lengthWords(gear, counterM)} of cable out (if it is so, write sure on its line)`;
}

/** What was measured on a line, and the instrument's own error, m. */
export type Measured = Pick<CalibrationReading, "as" | "measuredM" | "sdM">;

const NOTHING: readonly Measured[] = [];

/** What a line measured; nothing for lines of other kinds. */
function measuredOn({ trip }: TripAnalysis, event: TripEvent): readonly Measured[] {
  const { line } = event;
  if (line.verb !== "probe" && line.verb !== "touch") return NOTHING;
  const timeMs = meantMs(trip, event);
  if (timeMs === null) return NOTHING;
  const length = (word: string): number | undefined => measureOf(line, word, "length", trip.gear.defaults);
  const isProbe = line.verb === "probe";
  const depthM = isProbe ? length("depth") : (length("bottom") ?? bottomNear(trip, timeMs)?.waterM);
  const behindM = length("behind");
  const sdM = isProbe ? DEFAULTS.probeDepthSdM.value : DEFAULTS.touchDepthSdM.value;
  return [
    ...(depthM === undefined
      ? []
      : [{ as: isProbe ? ("probe-depth" as const) : ("ball-depth" as const), measuredM: depthM, sdM }]),
    ...(behindM === undefined
      ? []
      : [
          {
            as: isProbe ? ("probe-behind" as const) : ("ball-behind" as const),
            measuredM: behindM,
            sdM: DEFAULTS.behindSdM.value,
          },
        ]),
  ];
}

interface SettingAt {
  readonly rig: Rig;
  readonly counterM: number;
  readonly speed: SpeedUsed;
  readonly task: DownriggerTask;
}

/** Answers what was out at a line, and how fast it went; or why that isn't known. */
function settingReader(day: TripAnalysis): (event: TripEvent) => SettingAt | string {
  const { trip, timeline, ages } = day;
  const speedAt = tripSpeed(trip, ages);
  const temperatures = usableTemperatures(trip);
  const profiles = profilesOf(trip);
  const up = new Set(
    timeline.anomalies.filter((one) => one.kind === "not-in-water").map((one) => one.event.lineIndex),
  );
  return (event) => {
    const rig = cableRigOf(trip.gear, event.rig ?? "");
    if (rig === undefined) return `${event.rig ?? "it"} is no downrigger in the gear book`;
    const timeMs = meantMs(trip, event) ?? 0;
    const spread = spreadWith(day, event, rig, up.has(event.lineIndex));
    const own = spread?.get(rig.name)?.setting;
    if (spread === undefined || own?.outM === undefined) return "how much cable was out isn't stated";
    if (event.line.verb === "probe" && own.onBottom) return "the ball was on the bottom";
    const speed = speedAt(timeMs);
    if (speed === undefined) return "no speed was read near it";
    const water = waterAt(profiles, temperatures, timeMs, own.outM, ages);
    const task = downriggerTask(trip.gear, rig, spread, inStream(speed, water.tempC));
    if (!task.ok) return task.why;
    if (event.line.verb === "probe" && rig.probeAboveBallM === undefined)
      return `where the probe rides on ${rig.name} isn't in the gear book (probe 1.25 ft on its rig line)`;
    return { rig, counterM: own.outM, speed, task };
  };
}

/** The rods on the cable at a line, with the cable out that the line itself states. */
function spreadWith(
  { trip, timeline }: TripAnalysis,
  { line, lineIndex }: TripEvent,
  rig: Rig,
  isUp: boolean,
): CableSpread | undefined {
  const spread = timeline.spreadAfter.get(lineIndex);
  if (findItem(line, "out") === undefined) return isUp ? undefined : spread;
  const outM = measureOf(line, "out", "length", trip.gear.defaults);
  const own = spread?.get(rig.name);
  if (spread === undefined || own === undefined) return undefined;
  return new Map(spread).set(rig.name, { ...own, setting: { ...own.setting, outM } });
}

function readingOf({ trip }: TripAnalysis, event: TripEvent, at: SettingAt, measured: Measured): RigReading {
  const { rig, counterM, speed, task } = at;
  return {
    uri: trip.uri,
    boat: trip.boat,
    date: trip.date,
    zone: trip.zone,
    gear: trip.gear,
    event,
    rig,
    since: gearSince(trip.gear, rig),
    counterM,
    speed,
    task,
    reading: { ...measured, rig: task.downrigger, speedSdMS: speed.sdMS },
  };
}
