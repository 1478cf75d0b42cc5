import { angleBetween, type CurrentLook } from "../analysis/current-looks.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { findItem } from "../model/quantities.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { STUCK_WHEEL } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { CheckContext, Rule } from "./check.ts";
import { itemPlace } from "./places.ts";
import { speedAt } from "./speed-words.ts";
import { stillWheels } from "./still-wheels.ts";

const LEAST_SAME = 3;
const ONE_COURSE_DEG = 30;

/** Flags a wheel that shows nothing while the boat moves, or the same while the boat's speed changes. */
export const stuckWheel: Rule = (context) => {
  for (const day of context.analysis.trips) {
    for (const look of stillWheels(day)) reportStill(context, day, look);
    for (const looks of byInstrument(day)) reportSame(context, day, looks);
  }
};

function reportStill(
  { report }: CheckContext,
  { trip }: TripAnalysis,
  { water, groundMS }: CurrentLook,
): void {
  const data = { kind: "still" as const, at: speedAt(water), gear: trip.gear, groundMS };
  report(STUCK_WHEEL, itemPlace(water.lineIndex, water.line, "speed"), data);
}

/** The looks of each instrument, in the order of time. */
function byInstrument({ water }: TripAnalysis): CurrentLook[][] {
  const groups = new Map<string, CurrentLook[]>();
  for (const look of water.looks) {
    const key = speedAt(look.water);
    groups.set(key, [...(groups.get(key) ?? []), look]);
  }
  return [...groups.values()].map((looks) => looks.sort((a, b) => a.timeMs - b.timeMs));
}

/** The first run of looks on one course whose wheel shows the very same while the GPS changes. */
function reportSame(
  { analysis, report }: CheckContext,
  { trip }: TripAnalysis,
  looks: readonly CurrentLook[],
): void {
  const limitMS = thresholdOf(trip.gear, THRESHOLDS.wheelChange);
  for (const run of runsOf(looks)) {
    const speeds = run.map((look) => look.groundMS);
    const changeMS = Math.max(...speeds) - Math.min(...speeds);
    const [first, last] = [run[0], run.at(-1)];
    if (run.length < LEAST_SAME || changeMS < limitMS - 1e-9 || !first || !last) continue;
    const data = {
      kind: "same" as const,
      at: speedAt(last.water),
      gear: trip.gear,
      speedMS: last.waterMS,
      count: run.length,
      changeMS,
    };
    const before = itemPlace(first.water.lineIndex, first.water.line, "speed");
    const related = [{ uri: analysis.uri, message: DAY_RELATED.reading, ...before }];
    report(STUCK_WHEEL, itemPlace(last.water.lineIndex, last.water.line, "speed"), data, { related });
    return;
  }
}

/** Looks next to each other with the same digits and about the same course; each reading of the wheel once. */
function runsOf(looks: readonly CurrentLook[]): CurrentLook[][] {
  const runs: CurrentLook[][] = [];
  for (const look of looks) {
    if (look.isNearTurn || look.waterMS === 0) continue;
    const run = runs.at(-1);
    const before = run?.at(-1);
    if (before?.water === look.water) continue;
    const isSame = before !== undefined && digitsOf(before) === digitsOf(look) && isOneCourse(before, look);
    if (isSame) run?.push(look);
    else runs.push([look]);
  }
  return runs;
}

function digitsOf({ water }: CurrentLook): string {
  const item = findItem(water.line, "speed");
  return item === undefined ? "" : water.line.raw.slice(item.valueStart, item.stop);
}

function isOneCourse({ course: one }: CurrentLook, { course: other }: CurrentLook): boolean {
  return one !== undefined && other !== undefined && angleBetween(one.deg, other.deg) <= ONE_COURSE_DEG;
}
