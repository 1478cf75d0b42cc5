import type { Item } from "../../grammar/journal.ts";
import { DAY_BOUNDS, type DayBound } from "../model/day-bounds.ts";
import type { Trip, TripEvent } from "../model/trip.ts";
import { LENGTH_IMPLAUSIBLE } from "./catalog/day.ts";
import { FIX_TITLES } from "./catalog/titles.ts";
import type { CheckContext, Fix, LineRule } from "./check.ts";
import { replace, valuePlace } from "./edits.ts";
import { oddMeasure } from "./odd-measure.ts";
import { meantUnit } from "./usual-units.ts";

/** Flags lengths and depths that can't be. */
export const lengthImplausible: LineRule = (context, trip, event) => {
  for (const item of event.line.items) checkItem(context, trip, event, item);
};

const byVerb = new Map<string, ReadonlyMap<string, DayBound>>();

/** The bounds for a verb's words. */
function boundsOf(verb: string): ReadonlyMap<string, DayBound> {
  const known = byVerb.get(verb);
  if (known !== undefined) return known;
  const own = DAY_BOUNDS.filter(({ verbs }) => verbs.includes(verb));
  const bounds = new Map(own.map((bound) => [bound.word, bound]));
  byVerb.set(verb, bounds);
  return bounds;
}

function checkItem({ analysis, report }: CheckContext, { gear }: Trip, event: TripEvent, item: Item): void {
  const { line, lineIndex } = event;
  const stated = boundsOf(line.verb).get(item.word);
  if (stated === undefined) return;
  const bound = gear.water === "salt" && stated.isHighFreshOnly === true ? withoutHigh(stated) : stated;
  const unit = meantUnit(item.word, line.verb, "length", gear.defaults);
  const odd = oddMeasure(item, bound, { verb: line.verb, unit });
  if (odd === undefined) return;
  const { written, isTooLittle } = odd;
  // A bottom of 1600 ft is no bottom of 1600 in.
  const slips = isTooLittle ? odd.slips : [];
  const fixes = slips.map(
    (text): Fix => ({
      title: FIX_TITLES.write(text),
      edits: [replace(analysis.uri, valuePlace(lineIndex, item), text)],
      isPreferred: slips.length === 1,
    }),
  );
  const place = { lineIndex, start: item.start, stop: item.stop };
  const severity = isTooLittle ? "error" : "warning";
  report(LENGTH_IMPLAUSIBLE, place, { written, bound, slips, isTooLittle }, { severity, fixes });
}

function withoutHigh({ high: _, ...bound }: DayBound): DayBound {
  return bound;
}
