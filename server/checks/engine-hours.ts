import { findItem, measureOf } from "../model/quantities.ts";
import { ENGINE_HOURS } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { Rule } from "./check.ts";
import { itemPlace } from "./places.ts";

/** Flags an engine that has fewer hours at the last return than at the first departure. */
export const engineHours: Rule = ({ analysis, report }) => {
  for (const { trip } of analysis.trips) {
    const stated = trip.events.filter(({ line }) => findItem(line, "engine") !== undefined);
    const out = stated.find(({ line }) => line.verb === "depart");
    const back = stated.findLast(({ line }) => line.verb === "return");
    if (out === undefined || back === undefined) continue;
    const [beforeS, afterS] = [out, back].map(({ line }) =>
      measureOf(line, "engine", "duration", trip.gear.defaults),
    );
    if (beforeS === undefined || afterS === undefined || afterS >= beforeS) continue;
    const [before = "", after = ""] = [out, back].map(({ line }) => {
      const item = findItem(line, "engine");
      return line.raw.slice(item?.valueStart, item?.stop);
    });
    const read = itemPlace(out.lineIndex, out.line, "engine");
    const related = [{ uri: analysis.uri, message: DAY_RELATED.reading, ...read }];
    report(ENGINE_HOURS, itemPlace(back.lineIndex, back.line, "engine"), { before, after }, { related });
  }
};
