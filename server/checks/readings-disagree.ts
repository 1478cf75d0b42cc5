import { goingByLine } from "../analysis/going.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { measureOf } from "../model/quantities.ts";
import { THRESHOLDS, type ThresholdRow, thresholdOf } from "../model/thresholds.ts";
import { meantMs } from "../model/time-order.ts";
import type { TripEvent } from "../model/trip.ts";
import { READINGS_DISAGREE } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { Rule } from "./check.ts";
import { itemPlace } from "./places.ts";
import { speedAt } from "./speed-words.ts";
import { trolledDepths } from "./trolled-depths.ts";
import { clockWords } from "./words.ts";

/** Lines written for one minute. */
const MINUTE_MS = 60_000;

type What = "speed" | "depth" | "bottom";

/** One number that was read. */
interface Look {
  readonly what: What;
  readonly event: TripEvent;
  readonly timeMs: number;
  readonly si: number;
  /** Readings of the same are of one instrument. */
  readonly instrument: string;
  /** Where a speed was read, m down; undefined where that isn't known, and over ground. */
  readonly depthM: number | undefined;
  /** How often anything happened by then that changes what it reads. */
  readonly stretch: number;
}

const LIMITS: Readonly<Record<What, ThresholdRow>> = {
  speed: THRESHOLDS.speedJump,
  depth: THRESHOLDS.probeJump,
  bottom: THRESHOLDS.bottomJump,
};

/** Speeds read no farther apart than this in depth, m, are of one water (judgement). */
const ONE_WATER_M = 1;

/** Flags two readings of one thing within a minute that can't both be; at the later line, whose number holds. */
export const readingsDisagree: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    const { gear, zone } = day.trip;
    let recent: Look[] = [];
    for (const look of looksOf(day)) {
      recent = recent.filter(({ timeMs }) => look.timeMs - timeMs < MINUTE_MS);
      const other = recent.find((one) => isOfTheSame(one, look) && isApart(day, one, look));
      recent.push(look);
      if (other === undefined) continue;
      const { what, event, si } = look;
      const data = {
        gear,
        what,
        at: atOf(look),
        otherAt: atOf(other),
        si,
        otherSi: other.si,
        clock: clockWords(other.timeMs, zone),
      };
      const read = itemPlace(other.event.lineIndex, other.event.line, what);
      const related = [{ uri: analysis.uri, message: DAY_RELATED.reading, ...read }];
      report(READINGS_DISAGREE, itemPlace(event.lineIndex, event.line, what), data, { related });
    }
  }
};

function atOf({ what, event }: Look): string {
  if (what === "bottom") return "";
  return what === "speed" ? speedAt(event) : `at ${event.rig ?? "the"}'s probe`;
}

function isApart({ trip: { gear } }: TripAnalysis, one: Look, other: Look): boolean {
  return Math.abs(one.si - other.si) > thresholdOf(gear, LIMITS[other.what]) + 1e-9;
}

function isOfTheSame(one: Look, other: Look): boolean {
  if (one.what !== other.what || one.stretch !== other.stretch) return false;
  if (one.instrument === other.instrument) return true;
  const { depthM } = one;
  if (one.what !== "speed" || depthM === undefined || other.depthM === undefined) return false;
  return Math.abs(depthM - other.depthM) <= ONE_WATER_M;
}

/** The times of the readings that depths of trolled lines go by. */
function minutesLeanedOn(day: TripAnalysis): ReadonlySet<number> {
  return new Set(
    trolledDepths(day).flatMap(({ speed, bottom }) => [
      ...(speed?.used.map(({ timeMs }) => timeMs) ?? []),
      ...(bottom === undefined ? [] : [meantMs(day.trip, bottom.event) ?? 0]),
    ]),
  );
}

/** What changes the boat's speed and place. */
const CHANGES_BOAT = new Set(["turn", "run", "drift", "return"]);
/** What changes the depth of a probe. */
const CHANGES_RIG = new Set(["set", "move", "again", "change", "pull", "check", "touch"]);

/** The readings of a day while something is trolled, or that the depth of a trolled line goes by, in the order of time. */
function looksOf(day: TripAnalysis): Look[] {
  const { trip, timeline } = day;
  const going = goingByLine(trip, timeline);
  const leanedOn = minutesLeanedOn(day);
  const moved = new Map<string, number>();
  let boat = 0;
  const looks: Look[] = [];
  for (const event of timeline.ordered) {
    const { line, lineIndex, rig = "" } = event;
    if (CHANGES_BOAT.has(line.verb)) boat++;
    if (CHANGES_RIG.has(line.verb)) moved.set(rig, (moved.get(rig) ?? 0) + 1);
    const timeMs = meantMs(trip, event);
    if (timeMs === null || (going.get(lineIndex)?.isTrolling !== true && !leanedOn.has(timeMs))) continue;
    const measure = (word: string, dimension: "length" | "speed"): number | undefined =>
      measureOf(line, word, dimension, trip.gear.defaults);
    const add = (what: What, si: number | undefined, instrument: string, more: Partial<Look> = {}): void => {
      if (si !== undefined && si >= 0)
        looks.push({ what, event, timeMs, si, instrument, depthM: undefined, stretch: boat, ...more });
    };
    if (line.verb === "surface") add("speed", measure("speed", "speed"), "surface", { depthM: 0 });
    if (line.verb === "gps") add("speed", measure("speed", "speed"), "gps");
    if (line.verb === "sonar") add("bottom", measure("bottom", "length"), "sonar");
    if (line.verb !== "probe") continue;
    const depthM = measure("depth", "length");
    const stretch = 1000 * boat + (moved.get(rig) ?? 0) + (moved.get("all") ?? 0);
    add("speed", measure("speed", "speed"), `probe ${rig}`, { depthM });
    add("depth", depthM, `probe ${rig}`, { stretch });
  }
  return looks;
}
