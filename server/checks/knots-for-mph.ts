import type { CurrentDepth, CurrentLook } from "../analysis/current-looks.ts";
import { angleBetween } from "../analysis/current-looks.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { findItem } from "../model/quantities.ts";
import type { TripEvent } from "../model/trip.ts";
import { KNOTS_FOR_MPH } from "./catalog/day.ts";
import { DAY_FIXES } from "./catalog/day-titles.ts";
import type { Fix, Rule } from "./check.ts";
import { plainMeasure, writtenMeasure } from "./numbers.ts";
import { itemPlace } from "./places.ts";
import { speedAt } from "./speed-words.ts";

/** A nautical mile in statute miles. */
const RATIO = 1852 / 1609.344;
/** Speeds have one decimal: each ratio may be that far off, their mean that far (judgement). */
const EACH_OFF = 0.05;
const MEAN_OFF = 0.02;
const LEAST_PAIRS = 3;
/** On one course a current would do the same. */
const LEAST_TURN_DEG = 90;

/** Flags an instrument whose speeds are 1.15 times less than another's on every course. */
export const knotsForMph: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    for (const where of ["surface", "probe"] as const) {
      const slow = steadilySlow(day, where);
      const [first] = slow;
      if (first === undefined) continue;
      const lines = [...new Set(slow.map((pair) => pair.slow))];
      const data = { count: slow.length, slowAt: speedAt(first.slow), fastAt: speedAt(first.fast) };
      const place = itemPlace(first.slow.lineIndex, first.slow.line, "speed");
      report(KNOTS_FOR_MPH, place, data, { fixes: writeKnots(analysis.uri, day, lines) });
    }
  }
};

interface Pair {
  readonly slow: TripEvent;
  readonly fast: TripEvent;
  readonly ratio: number;
}

/** The pairs of one instrument and the GPS, if all keep the ratio the same way round and the boat turned between. */
function steadilySlow({ trip, water }: TripAnalysis, where: CurrentDepth): Pair[] {
  const looks = water.looks.filter((look) => look.where === where && !look.isNearTurn && look.waterMS > 0);
  if (looks.length < LEAST_PAIRS || !hasTurned(looks)) return [];
  const ratios = looks.map((look) => look.groundMS / look.waterMS);
  const isWaterSlow = (ratios[0] ?? 0) > 1;
  const pairs = looks.map((look, i): Pair => {
    const ratio = ratios[i] ?? 0;
    const [slow, fast] = isWaterSlow ? [look.water, look.gps] : [look.gps, look.water];
    return { slow, fast, ratio: isWaterSlow ? ratio : 1 / ratio };
  });
  const mean = pairs.reduce((sum, pair) => sum + pair.ratio, 0) / pairs.length;
  const isSteady = pairs.every((pair) => Math.abs(pair.ratio / RATIO - 1) <= EACH_OFF);
  const isTyped = pairs.every(({ slow }) => unitOf(trip.gear, slow)?.unit === "mph");
  return isSteady && isTyped && Math.abs(mean / RATIO - 1) <= MEAN_OFF ? pairs : [];
}

function hasTurned(looks: readonly CurrentLook[]): boolean {
  const courses = looks.flatMap(({ course }) => (course === undefined ? [] : [course.deg]));
  return courses.some((one) => courses.some((other) => angleBetween(one, other) >= LEAST_TURN_DEG));
}

function unitOf(gear: TripAnalysis["trip"]["gear"], { line }: TripEvent): ReturnType<typeof plainMeasure> {
  return plainMeasure(findItem(line, "speed"), "speed", line.verb, gear.defaults);
}

function writeKnots(uri: string, { trip }: TripAnalysis, lines: readonly TripEvent[]): Fix[] {
  const edits = lines.flatMap((event) => {
    const item = findItem(event.line, "speed");
    const typed = unitOf(trip.gear, event);
    if (item === undefined || typed === undefined) return [];
    return [
      {
        uri,
        lineIndex: event.lineIndex,
        start: item.valueStart,
        stop: item.stop,
        text: writtenMeasure({ ...typed, unit: "kn" }),
      },
    ];
  });
  return [{ title: DAY_FIXES.writeKnots(edits.length), edits, isPreferred: false }];
}
