import type { Crossing } from "../analysis/crossings.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import type { TripEvent } from "../model/trip.ts";
import { LINES_MAY_CROSS } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { RelatedPlace, Rule } from "./check.ts";
import { slotPlace, verbPlace } from "./places.ts";
import { clockWords } from "./words.ts";

/** Says which two lines come too near to each other: the nearest two of a line, and two rigs once in a trip. */
export const linesMayCross: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    const { gear, zone } = day.trip;
    const marginM = thresholdOf(gear, THRESHOLDS.crossingMargin);
    for (const crossing of worstOnes(day.crossings)) {
      const { event, isTurn, one, other } = crossing;
      const clock = clockWords(event.instant?.utcMs ?? 0, zone);
      const place = isTurn ? verbPlace(event.lineIndex, event.line) : slotPlace(event.lineIndex, event.line);
      const rigs = isTurn ? [one.rig, other.rig] : [other.rig];
      const related = rigs.flatMap((rig) => putInAt(day, event, rig, analysis.uri));
      report(LINES_MAY_CROSS, place, { gear, crossing, marginM, clock }, { related });
    }
  }
};

/** The nearest pair of each line of the journal, among those not spoken of before. */
function worstOnes(crossings: readonly Crossing[]): Crossing[] {
  const said = new Set<string>();
  const worst: Crossing[] = [];
  for (const { event } of crossings) {
    if (worst.at(-1)?.event === event) continue;
    const fresh = crossings.filter((other) => other.event === event && !said.has(pairOf(other)));
    const [nearest] = fresh.sort((a, b) => a.distanceM - b.distanceM);
    if (nearest === undefined) continue;
    said.add(pairOf(nearest));
    worst.push(nearest);
  }
  return worst;
}

function pairOf({ one, other }: Crossing): string {
  return JSON.stringify([one.rig, other.rig].sort());
}

const PUTS_OUT = new Set(["set", "move", "again"]);

/** The last line before that says how a rig is out. */
function putInAt(
  { timeline: { ordered } }: TripAnalysis,
  event: TripEvent,
  rig: string,
  uri: string,
): RelatedPlace[] {
  const before = ordered.slice(0, ordered.indexOf(event));
  const last = before.findLast((one) => one.rig === rig && PUTS_OUT.has(one.line.verb));
  if (last === undefined) return [];
  return [{ uri, message: DAY_RELATED.lineOf(rig), ...slotPlace(last.lineIndex, last.line) }];
}
