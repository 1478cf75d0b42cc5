/** Readings on lines that are on no downrigger: leadcore, copper, wire, flat lines and divers. */
import type { Calibration, Gear, Rig } from "../model/gear-types.ts";
import { nextSetting, type Setting } from "../model/setting.ts";
import { meantMs } from "../model/time-order.ts";
import type { TripEvent } from "../model/trip.ts";
import { startingDiver } from "../physics/calibrate-diver.ts";
import type { LongLineReading } from "../physics/long-line-reading.ts";
import type { Measured, ReadingOf } from "./calibration-readings.ts";
import { gearSince } from "./calibration-used.ts";
import { trippedBy } from "./diver-tripped.ts";
import type { TripAnalysis } from "./journal-analysis.ts";
import { type LongLineTask, longLineTask } from "./long-line-input.ts";
import type { NoTask } from "./no-task.ts";
import { usableTemperatures } from "./odd-temperature.ts";
import { tripSpeed } from "./trip-speed.ts";
import { LONG_LINE_SHARE, profilesOf, waterAt } from "./water-used.ts";
import { inStream } from "./without-depth.ts";

/** A reading on a line that is on no downrigger. */
export interface LineReading extends ReadingOf<LongLineReading> {
  readonly setting: Setting;
  /** The line as the book has it that day; of a diver that was never measured there is none. */
  readonly task: LongLineTask | NoTask;
}

/** Answers what line was out at a probe or touch line, as a way to take a measured number; or why that isn't known. */
export function lineReader(
  day: TripAnalysis,
): (event: TripEvent) => ((measured: Measured) => LineReading) | string {
  const { trip, timeline, ages } = day;
  const { gear } = trip;
  const speedAt = tripSpeed(trip, ages);
  const temperatures = usableTemperatures(trip);
  const profiles = profilesOf(trip);
  const up = new Set(
    timeline.anomalies.filter((one) => one.kind === "not-in-water").map((one) => one.event.lineIndex),
  );
  return (event) => {
    const rig = gear.rigs.get(event.rig ?? "");
    const before = timeline.settingAfter.get(event.lineIndex);
    const why = whyNoLine(rig, event);
    if (rig === undefined || why !== undefined) return why ?? "";
    if (before === undefined || up.has(event.lineIndex)) return `${rig.name} isn't in the water`;
    const setting = nextSetting(before, event.line, gear);
    const { outM } = setting;
    if (outM === undefined) return "how much line was out isn't stated";
    if (rig.kind === "diver" && trippedBy(timeline, event) !== undefined)
      return "the diver was tripped by a fish";
    if (rig.dial !== undefined && setting.dial !== undefined && setting.dial !== rig.dial)
      return `the diver is at dial ${setting.dial}, and the gear book's line is for dial ${rig.dial}`;
    const timeMs = meantMs(trip, event) ?? 0;
    const speed = speedAt(timeMs);
    if (speed === undefined) return "no speed was read near it";
    const { tempC } = waterAt(profiles, temperatures, timeMs, LONG_LINE_SHARE * outM, ages);
    const water = inStream(speed, tempC);
    const bare = longLineTask(uncalibrated(gear, rig), rig, setting, water);
    if (!bare.ok) return bare.why;
    return (measured) => ({
      uri: trip.uri,
      boat: trip.boat,
      date: trip.date,
      zone: trip.zone,
      gear,
      event,
      rig,
      since: gearSince(gear, rig),
      counterM: outM,
      speed,
      setting,
      task: longLineTask(gear, rig, setting, water),
      reading: {
        ...measured,
        line: bare.line,
        spreads: bare.spreads,
        probeAboveJointM: rig.probeAboveBallM,
      },
    });
  };
}

function whyNoLine(rig: Rig | undefined, event: TripEvent): string | undefined {
  if (rig === undefined) return `${event.rig ?? "it"} isn't in the gear book`;
  if (rig.kind === "stacked")
    return `${rig.name} is stacked on ${rig.stackedOn}, which is no downrigger in the gear book`;
  if (rig.kind === "jig") return `${rig.name} is cast or jigged`;
  if (event.line.verb === "probe" && rig.probeAboveBallM === undefined)
    return `where the probe is clipped on ${rig.name} isn't in the gear book (probe 5 ft on its rig line: so far above its diver, weight or leader)`;
  return undefined;
}

const bareGears = new WeakMap<Gear, Map<string, Gear>>();

/** The gear as if nothing had been fitted, the very same each time: tasks are kept by their gear. */
function uncalibrated(gear: Gear, rig: Rig): Gear {
  const bare = bareGears.get(gear) ?? new Map<string, Gear>();
  bareGears.set(gear, bare);
  const made = bare.get(rig.name) ?? withNothingFitted(gear, rig);
  bare.set(rig.name, made);
  return made;
}

/** Lines keep what they were weighed at, a diver starts from an ordinary one. */
function withNothingFitted(gear: Gear, rig: Rig): Gear {
  const calibrations = new Map<string, Calibration>();
  for (const [name, one] of gear.calibrations) {
    if (one.massPerLengthKgM !== undefined)
      calibrations.set(name, {
        ...NOTHING,
        of: name,
        massPerLengthKgM: one.massPerLengthKgM,
        origin: one.origin,
      });
  }
  if (rig.kind === "diver") {
    const { liftAreaM2, dragAreaM2 } = startingDiver();
    const origin = { ...rig.origin, from: gearSince(gear, rig) };
    calibrations.set(rig.name, { ...NOTHING, of: rig.name, liftAreaM2, dragAreaM2, origin });
  }
  return { ...gear, calibrations };
}

const NOTHING: Omit<Calibration, "of" | "origin"> = {
  dragRatio: undefined,
  dragError: undefined,
  counterScale: undefined,
  counterScaleError: undefined,
  counterOffsetM: undefined,
  counterOffsetErrorM: undefined,
  dragScaleLink: undefined,
  dragOffsetLink: undefined,
  scaleOffsetLink: undefined,
  massPerLengthKgM: undefined,
  liftAreaM2: undefined,
  liftAreaErrorM2: undefined,
  dragAreaM2: undefined,
  dragAreaErrorM2: undefined,
  areaLink: undefined,
  readings: undefined,
};
