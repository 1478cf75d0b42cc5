import { NO_TRIP } from "./catalog/language.ts";
import type { Rule } from "./check.ts";
import { verbPlace } from "./places.ts";
import { rowOf } from "./sound-lines.ts";
import { soundLinesIn } from "./under-openers.ts";

/** Events that a gear book may hold. */
const ANYWHERE: ReadonlySet<string> = new Set(["serviced", "note"]);

/** Flags events above the first trip of a file, once: they would count for nothing. */
export const noTrip: Rule = ({ analysis, report }) => {
  const firstTrip = analysis.trips[0]?.trip.openerIndex ?? analysis.parse.journal.lines.length;
  const lost = soundLinesIn({ analysis, owner: undefined, start: 0, stop: firstTrip }).filter(
    ({ line }) => rowOf(line)?.place === "event" && !ANYWHERE.has(line.verb),
  );
  const [first] = lost;
  if (first === undefined) return;
  report(NO_TRIP, verbPlace(first.lineIndex, first.line), { verb: first.line.verb, count: lost.length });
};
