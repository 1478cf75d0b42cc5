/** The true depth of every set, move and again line of a trip: ball and lure, their bands, and what they lean on. */
import type { Calibration, Rig } from "../model/gear-types.ts";
import type { ReadingAges } from "../model/readings.ts";
import { speedReadings, temperatureReadings } from "../model/readings.ts";
import type { Setting } from "../model/setting.ts";
import type { CableSpread, Timeline } from "../model/timeline.ts";
import { cableRigOf, type Trip, type TripEvent } from "../model/trip.ts";
import type { BandedPlace } from "../physics/downrigger-band.ts";
import { type BottomReading, bottomAt } from "./bottom.ts";
import { type DepthMemo, solveTask } from "./depth-memo.ts";
import { type DownriggerTask, downriggerTask, type NoTask } from "./downrigger-input.ts";
import { type SpeedUsed, speedAt } from "./speed-used.ts";
import { profilesOf, type WaterUsed, waterAt } from "./water-used.ts";

/** A depth with its 80 % band and the distance behind, m. */
export interface DepthPlace {
  readonly depthM: number;
  readonly lowM: number;
  readonly highM: number;
  readonly behindM: number;
  /** Change of depth per m/s of speed, and per m on the counter. */
  readonly depthPerSpeed: number;
  readonly depthPerOut: number;
  /** The model went deeper than the bottom, which stopped it. */
  readonly onBottom: boolean;
}

/** One line's depths; null with a reason where there is none. */
export interface LineDepth {
  readonly event: TripEvent;
  readonly rig: string;
  readonly setting: Setting;
  readonly ball: DepthPlace | null;
  readonly lure: DepthPlace | null;
  /** Depth of the lure's release, m. */
  readonly releaseDepthM: number | null;
  /** Why there is no ball depth, as a sentence part. */
  readonly why: string | null;
  /** Why there is no lure depth though there is one for the ball. */
  readonly whyNoLure: string | null;
  readonly topAngleDeg: number | null;
  /** The model puts something at or above the surface. */
  readonly surfaced: boolean;
  readonly speed: SpeedUsed | undefined;
  readonly water: WaterUsed | undefined;
  readonly bottom: BottomReading | undefined;
  readonly cableRig: Rig | undefined;
  readonly calibration: Calibration | undefined;
  /** Other rigs' calibrations that narrow the range of one that has none. */
  readonly sharedFrom: readonly Calibration[];
}

const DEPTH_VERBS = new Set(["set", "move", "again"]);

/** What a trip's depths are computed from besides its lines. */
export interface DepthSources {
  readonly ages: ReadingAges;
  readonly bottomHeldMs: number;
  readonly memo: DepthMemo;
}

/** Depths of all set, move and again lines of a trip, in the order of the file. */
export function lineDepths(trip: Trip, timeline: Timeline, sources: DepthSources): LineDepth[] {
  const speeds = speedReadings(trip);
  const temperatures = temperatureReadings(trip);
  const profiles = profilesOf(trip);
  const depths: LineDepth[] = [];
  for (const event of trip.events) {
    if (!DEPTH_VERBS.has(event.line.verb) || event.rig === undefined || event.rig === "all") continue;
    const setting = timeline.settingAfter.get(event.lineIndex);
    if (setting === undefined) continue;
    const timeMs = event.instant?.utcMs;
    const cableRig = cableRigOf(trip.gear, event.rig);
    const rods = timeline.spreadAfter.get(event.lineIndex);
    const speed = timeMs === undefined ? undefined : speedAt(speeds, timeMs, sources.ages);
    const outM = (cableRig === undefined ? undefined : rods?.get(cableRig.name)?.setting.outM) ?? 0;
    const water =
      timeMs === undefined ? undefined : waterAt(profiles, temperatures, timeMs, outM, sources.ages);
    const bottom = timeMs === undefined ? undefined : bottomAt(trip, timeMs, sources.bottomHeldMs);
    const base = { event, rig: event.rig, setting, speed, water, bottom, cableRig };
    const task = taskOf(trip, event, cableRig, rods, speed, water);
    depths.push(task.ok ? solved(base, task, sources.memo) : unsolved(base, task.why));
  }
  return depths;
}

type Base = Pick<LineDepth, "event" | "rig" | "setting" | "speed" | "water" | "bottom" | "cableRig">;

function taskOf(
  trip: Trip,
  event: TripEvent,
  cableRig: Rig | undefined,
  rods: CableSpread | undefined,
  speed: SpeedUsed | undefined,
  water: WaterUsed | undefined,
): DownriggerTask | NoTask {
  const rig = trip.gear.rigs.get(event.rig ?? "");
  if (rig === undefined) return { ok: false, why: `${event.rig} isn't in the gear book` };
  if (cableRig === undefined && rig.kind === "stacked") {
    return {
      ok: false,
      why: `${rig.name} is stacked on ${rig.stackedOn}, which is no downrigger in the gear book`,
    };
  }
  if (cableRig === undefined || rods === undefined) {
    return { ok: false, why: `depths of ${rig.kind ?? "such"} lines aren't computed yet` };
  }
  if (event.instant === null) return { ok: false, why: "the line has no clock time, so no speed to go by" };
  if (speed === undefined || water === undefined) {
    return { ok: false, why: "no speed reading within reach (probe, surface or gps)" };
  }
  return downriggerTask(trip.gear, cableRig, rods, {
    speedMS: speed.value,
    speedSdMS: speed.sdMS,
    waterTemperatureC: water.tempC,
  });
}

function unsolved(base: Base, why: string): LineDepth {
  return {
    ...base,
    ball: null,
    lure: null,
    releaseDepthM: null,
    why,
    whyNoLure: null,
    topAngleDeg: null,
    surfaced: false,
    calibration: undefined,
    sharedFrom: [],
  };
}

function solved(base: Base, task: DownriggerTask, memo: DepthMemo): LineDepth {
  const answer = solveTask(task, memo);
  if (!answer.ok) return { ...unsolved(base, answer.why), calibration: task.calibration };
  const rod = answer.rods.find((one) => one.id === base.rig);
  const whyNoLure =
    rod === undefined
      ? "no lure is stated"
      : base.setting.setbackM === undefined
        ? "its setback behind the release isn't stated"
        : null;
  const waterM = base.bottom?.waterM;
  return {
    ...base,
    ball: placeOf(answer.ball, waterM),
    lure: rod === undefined || whyNoLure !== null ? null : placeOf(rod.lure, waterM),
    releaseDepthM: rod?.release.depthM ?? null,
    why: null,
    whyNoLure,
    topAngleDeg: answer.solved.topAngleDeg,
    surfaced: answer.solved.surfaced,
    calibration: task.calibration,
    sharedFrom: task.sharedFrom,
  };
}

/** The bottom stops what the model would put below it. The band is solved when it is looked at. */
function placeOf(place: BandedPlace, waterM: number | undefined): DepthPlace {
  const limit = waterM ?? Number.POSITIVE_INFINITY;
  return {
    depthM: Math.min(place.depthM, limit),
    get lowM() {
      return Math.min(place.lowM, limit);
    },
    get highM() {
      return Math.min(place.highM, limit);
    },
    behindM: place.behindM,
    get depthPerSpeed() {
      return place.depthPerSpeed;
    },
    get depthPerOut() {
      return place.depthPerOut;
    },
    onBottom: place.depthM >= limit,
  };
}
