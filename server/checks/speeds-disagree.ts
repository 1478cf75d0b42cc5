import type { CurrentLook } from "../analysis/current-looks.ts";
import { goingByLine } from "../analysis/going.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import type { TripEvent } from "../model/trip.ts";
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
}

/** Flags two speeds of about one minute that no current explains; once for each line. */
export const speedsDisagree: Rule = ({ analysis, report }) => {
  for (const { trip, timeline, water } of analysis.trips) {
    const { gear } = trip;
    const limitMS = thresholdOf(gear, THRESHOLDS.strongestCurrent);
    const going = goingByLine(trip, timeline);
    const said = new Set<TripEvent>();
    const looks = water.looks.filter((look) => !look.isNearTurn && going.get(look.gps.lineIndex)?.isTrolling);
    for (const { one, oneMS, other, otherMS } of pairsOf(looks)) {
      if (Math.abs(oneMS - otherMS) <= limitMS || oneMS <= 0 || otherMS <= 0) continue;
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
function pairsOf(looks: readonly CurrentLook[]): Pair[] {
  const ground = looks.map((look) => ({
    one: look.gps,
    oneMS: look.groundMS,
    other: look.water,
    otherMS: look.waterMS,
  }));
  const both = looks.flatMap((probe) => {
    const top = looks.find((look) => look.gps === probe.gps && look.where === "surface");
    if (probe.where !== "probe" || top === undefined) return [];
    return [{ one: probe.water, oneMS: probe.waterMS, other: top.water, otherMS: top.waterMS }];
  });
  return [...ground, ...both];
}
