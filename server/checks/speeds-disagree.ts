import { goingByLine } from "../analysis/going.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import { MOST_APART_MS } from "../analysis/speed-used.ts";
import { fromSource, type Reading, speedReadings } from "../model/readings.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { meantMs } from "../model/time-order.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import { SPEEDS_DISAGREE } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { Rule } from "./check.ts";
import { itemPlace } from "./places.ts";
import { speedAt } from "./speed-words.ts";

interface Pair {
  readonly one: TripEvent;
  readonly oneMS: number;
  readonly other: TripEvent;
  readonly otherMS: number;
  /** They differ by more than there is current from here on, m/s. */
  readonly limitMS: number;
}

/** Flags two speeds of about one minute that no current explains; once for each line. */
export const speedsDisagree: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    const { gear } = day.trip;
    const said = new Set<TripEvent>();
    for (const { one, oneMS, other, otherMS, limitMS } of pairsOf(day)) {
      if (Math.abs(oneMS - otherMS) <= limitMS + 1e-9 || oneMS <= 0 || otherMS <= 0) continue;
      if (said.has(one) || said.has(other)) continue;
      said.add(one).add(other);
      const data = { gear, oneMS, oneAt: speedAt(one), otherMS, otherAt: speedAt(other), limitMS };
      const read = itemPlace(other.lineIndex, other.line, "speed");
      const related = [{ uri: analysis.uri, message: DAY_RELATED.reading, ...read }];
      report(SPEEDS_DISAGREE, itemPlace(one.lineIndex, one.line, "speed"), data, { related });
    }
  }
};

/** Ground against water first, then top against probe. */
function pairsOf({ trip, timeline, water }: TripAnalysis): Pair[] {
  const going = goingByLine(trip, timeline);
  const isTrolling = ({ lineIndex }: TripEvent): boolean => going.get(lineIndex)?.isTrolling === true;
  const limitMS = thresholdOf(trip.gear, THRESHOLDS.strongestCurrent);
  const ground = water.looks
    .filter((look) => !look.isNearTurn && isTrolling(look.gps))
    .map(({ gps, groundMS, water, waterMS }) => ({
      one: gps,
      oneMS: groundMS,
      other: water,
      otherMS: waterMS,
      limitMS,
    }));
  const speeds = speedReadings(trip).filter(({ event }) => isTrolling(event));
  return [...ground, ...topAndProbe(trip, speeds, Math.min(limitMS, MOST_APART_MS))];
}

/** Each speed at a probe with the nearest on top; farther apart than `limitMS` one of the two is not used. */
function topAndProbe(trip: Trip, speeds: readonly Reading[], limitMS: number): Pair[] {
  const turnsMs = trip.events.flatMap((event) =>
    event.line.verb === "turn" ? (meantMs(trip, event) ?? []) : [],
  );
  const [togetherMs, settlesMs] = [THRESHOLDS.speedsTogether, THRESHOLDS.turnSettles].map(
    (threshold) => 1000 * thresholdOf(trip.gear, threshold),
  );
  const isNearTurn = ({ timeMs }: Reading): boolean =>
    turnsMs.some((turnMs) => Math.abs(turnMs - timeMs) <= (settlesMs ?? 0));
  const tops = fromSource(speeds, "surface").filter((top) => !isNearTurn(top));
  return fromSource(speeds, "probe").flatMap((probe) => {
    const apartMs = (top: Reading): number => Math.abs(top.timeMs - probe.timeMs);
    const [top] = tops.toSorted((a, b) => apartMs(a) - apartMs(b));
    if (top === undefined || apartMs(top) > (togetherMs ?? 0) || isNearTurn(probe)) return [];
    return [{ one: probe.event, oneMS: probe.value, other: top.event, otherMS: top.value, limitMS }];
  });
}
