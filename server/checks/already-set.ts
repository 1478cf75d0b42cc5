import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import { isOutOfOrder } from "../model/time-order.ts";
import type { TripEvent } from "../model/trip.ts";
import { ALREADY_SET } from "./catalog/day.ts";
import { DAY_FIXES, DAY_RELATED } from "./catalog/day-titles.ts";
import type { Fix, Rule } from "./check.ts";
import { replace } from "./edits.ts";
import { insertLine } from "./move-lines.ts";
import { slotPlace, verbPlace } from "./places.ts";
import { stampText } from "./stamp-edits.ts";

/** What a `move` may say besides its rig. */
const AMOUNTS = new Set(["out", "above", "dial", "board", "setback", "anglers", "shallow", "on-bottom"]);
const ANYWHERE = new Set(["sure", "remark"]);

/** Flags a rig that is set while it is fishing. */
export const alreadySet: Rule = ({ analysis, report }) => {
  for (const { trip, timeline } of analysis.trips) {
    for (const { kind, event, rig, since } of timeline.anomalies) {
      if (kind !== "already-set" || isOutOfOrder(trip, rig)) continue;
      const related =
        since === undefined
          ? []
          : [{ uri: analysis.uri, message: DAY_RELATED.putIn, ...verbPlace(since.lineIndex, since.line) }];
      const data = { rig, since: since?.line.clock ?? undefined };
      report(ALREADY_SET, slotPlace(event.lineIndex, event.line), data, {
        related,
        fixes: fixesOf(analysis, event),
      });
    }
  }
};

function fixesOf(analysis: JournalAnalysis, event: TripEvent): Fix[] {
  const { line, lineIndex } = event;
  const verb = verbPlace(lineIndex, line);
  const fixes: Fix[] = ["again", "move"].map((word) => ({
    title: DAY_FIXES.write(word),
    edits: [replace(analysis.uri, verb, word)],
    isPreferred: false,
  }));
  const isMove = line.items.every(({ word }) => AMOUNTS.has(word) || ANYWHERE.has(word));
  const slot = line.slots[0];
  const name = slot === undefined ? "" : line.raw.slice(slot.start, slot.stop);
  const pull = [stampText(line), "pull", name].filter((part) => part !== "").join(" ");
  const edits = [insertLine(analysis, lineIndex, pull)];
  const addPull = { title: DAY_FIXES.addAbove(pull), edits, isPreferred: false };
  return [...(isMove ? fixes.reverse() : fixes.slice(0, 1)), addPull];
}
