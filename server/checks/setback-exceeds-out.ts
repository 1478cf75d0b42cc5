import type { JournalAnalysis, TripAnalysis } from "../analysis/journal-analysis.ts";
import type { LineDepth } from "../analysis/line-depth.ts";
import { findItem, hasWord, measureOf } from "../model/quantities.ts";
import { propertiesOf } from "../model/trip.ts";
import { SETBACK_EXCEEDS_OUT } from "./catalog/day.ts";
import { DAY_FIXES } from "./catalog/day-titles.ts";
import type { Fix, Rule } from "./check.ts";
import { replace, valuePlace } from "./edits.ts";
import { itemPlace } from "./places.ts";

/** Flags a downrigger's lead that is longer than its cable: more often two numbers swapped than meant. */
export const setbackExceedsOut: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    if (propertiesOf(day.trip, "method").some((line) => hasWord(line, "shallow"))) continue;
    const usual = new Set<string>();
    for (const depth of day.depths) {
      const lengths = statedLengths(day, depth);
      if (lengths === undefined) continue;
      const { setbackM, outM } = lengths;
      const isLong = setbackM > outM;
      const isSettled = usual.has(depth.rig) || hasWord(depth.event.line, "shallow");
      if (isLong) usual.add(depth.rig);
      else usual.delete(depth.rig);
      if (!isLong || isSettled || isTooShallowToSwap(depth, setbackM)) continue;
      const place = itemPlace(depth.event.lineIndex, depth.event.line, "setback");
      const fixes = swap(analysis, depth);
      report(SETBACK_EXCEEDS_OUT, place, { gear: day.trip.gear, setbackM, outM }, { fixes });
    }
  }
};

/** Both lengths, where a line of a downrigger states both: only then can they be swapped. */
function statedLengths(
  { trip }: TripAnalysis,
  { event, rig }: LineDepth,
): { setbackM: number; outM: number } | undefined {
  if (trip.gear.rigs.get(rig)?.kind !== "downrigger") return undefined;
  const setbackM = measureOf(event.line, "setback", "length", trip.gear.defaults);
  const outM = measureOf(event.line, "out", "length", trip.gear.defaults);
  return setbackM === undefined || outM === undefined ? undefined : { setbackM, outM };
}

/** Swapped, there would be more cable than water: then it is meant as it is. */
function isTooShallowToSwap({ bottom }: LineDepth, setbackM: number): boolean {
  return bottom !== undefined && setbackM >= bottom.waterM;
}

function swap({ uri }: JournalAnalysis, { event: { line, lineIndex } }: LineDepth): Fix[] {
  const [out, setback] = [findItem(line, "out"), findItem(line, "setback")];
  if (out === undefined || setback === undefined) return [];
  const [outPlace, setbackPlace] = [valuePlace(lineIndex, out), valuePlace(lineIndex, setback)];
  const edits = [
    replace(uri, outPlace, line.raw.slice(setbackPlace.start, setbackPlace.stop)),
    replace(uri, setbackPlace, line.raw.slice(outPlace.start, outPlace.stop)),
  ];
  return [{ title: DAY_FIXES.swap, edits, isPreferred: true }];
}
