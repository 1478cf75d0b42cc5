import { goingByLine } from "../analysis/going.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { Gear } from "../model/gear-types.ts";
import { findItem, measureOf } from "../model/quantities.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { meantMs } from "../model/time-order.ts";
import type { TripEvent } from "../model/trip.ts";
import { SPEED_IMPLAUSIBLE } from "./catalog/day.ts";
import { DAY_FIXES } from "./catalog/day-titles.ts";
import type { Fix, Rule } from "./check.ts";
import { replace, valuePlace } from "./edits.ts";
import { plainMeasure, siOf, withPoint, writtenMeasure } from "./numbers.ts";
import { itemPlace } from "./places.ts";
import { stillWheels } from "./still-wheels.ts";
import { trolledDepths } from "./trolled-depths.ts";
import { clockWords, speedWords } from "./words.ts";

const READINGS = new Set(["probe", "surface", "gps"]);

/** With no line in the water a boat may run so many times as fast as is impossible with one (judgement). */
const RUNNING_TIMES = 4;

/** Flags a speed that nobody trolls at, also one read before the lines were in that their depths lean on. */
export const speedImplausible: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    const { trip, timeline } = day;
    const going = goingByLine(trip, timeline);
    const { gear } = trip;
    const [slowestMS, fastestMS] = trollingSpeeds(gear);
    const [slowMS] = trollingSpeeds(gear);
    const leaningOn = (event: TripEvent, speedMS: number): string | undefined =>
      speedMS < slowMS ? firstLeaning(day, event) : undefined;
    const still = new Set(stillWheels(day).map((look) => look.water));
    for (const event of trip.events) {
      const speedMS = measureOf(event.line, "speed", "speed", gear.defaults);
      const now = going.get(event.lineIndex);
      if (speedMS === undefined || !READINGS.has(event.line.verb) || still.has(event)) continue;
      const isTrolling = now?.isTrolling === true;
      const fastestAtAllMS = thresholdOf(gear, THRESHOLDS.fastBoat) * (isTrolling ? 1 : RUNNING_TIMES);
      const isImpossible = speedMS < 0 || speedMS > fastestAtAllMS;
      const leaning = isTrolling ? undefined : leaningOn(event, speedMS);
      const isBelieved = isTrolling ? isPlausible(speedMS, now.isFishOn, gear) : leaning === undefined;
      if (!isImpossible && isBelieved) continue;
      const fixes = pointFix(analysis.uri, gear, event);
      const typed = plainMeasure(findItem(event.line, "speed"), "speed", event.line.verb, gear.defaults);
      const written = typed === undefined ? speedWords(gear, speedMS) : writtenMeasure(typed);
      const data = { gear, written, speedMS, slowestMS, fastestMS, isImpossible, isTrolling, leaning };
      const severity = isImpossible ? "error" : "warning";
      const place = itemPlace(event.lineIndex, event.line, "speed");
      report(SPEED_IMPLAUSIBLE, place, data, { severity, fixes });
    }
  }
};

/** The clock of the first line whose depth is reckoned with that reading; the boat trolls by then. */
function firstLeaning(day: TripAnalysis, event: TripEvent): string | undefined {
  const first = trolledDepths(day).find(
    ({ speed }) => speed?.used.some((reading) => reading.event === event) === true,
  );
  const timeMs = first === undefined ? null : meantMs(day.trip, first.event);
  return timeMs === null ? undefined : clockWords(timeMs, day.trip.zone);
}

function isPlausible(speedMS: number, isFishOn: boolean, gear: Gear): boolean {
  const [slowestMS, fastestMS] = trollingSpeeds(gear);
  return speedMS < slowestMS ? isFishOn : speedMS <= fastestMS;
}

function trollingSpeeds(gear: Gear): [number, number] {
  return [thresholdOf(gear, THRESHOLDS.slowTroll), thresholdOf(gear, THRESHOLDS.fastTroll)];
}

/** A point may be missing: 2.4 for 24. */
function pointFix(uri: string, gear: Gear, { line, lineIndex }: TripEvent): Fix[] {
  const item = findItem(line, "speed");
  const typed = plainMeasure(item, "speed", line.verb, gear.defaults);
  const meant = typed === undefined ? undefined : withPoint(typed);
  if (item === undefined || meant === undefined) return [];
  const [slowestMS, fastestMS] = trollingSpeeds(gear);
  if (siOf(meant) < slowestMS || siOf(meant) > fastestMS) return [];
  const text = writtenMeasure(meant);
  const edits = [replace(uri, valuePlace(lineIndex, item), text)];
  return [{ title: DAY_FIXES.write(text), edits, isPreferred: false }];
}
