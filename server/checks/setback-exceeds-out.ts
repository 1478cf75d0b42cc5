import type { JournalAnalysis, TripAnalysis } from "../analysis/journal-analysis.ts";
import type { LineDepth } from "../analysis/line-depth.ts";
import { findItem, hasWord } from "../model/quantities.ts";
import { propertiesOf } from "../model/trip.ts";
import { SETBACK_EXCEEDS_OUT } from "./catalog/day.ts";
import { DAY_FIXES, DAY_RELATED } from "./catalog/day-titles.ts";
import type { Fix, RelatedPlace, Rule } from "./check.ts";
import { replace, valuePlace } from "./edits.ts";
import { itemPlace } from "./places.ts";

/**
 * Flags a downrigger's lead that is longer than its cable: on one line more often two numbers swapped than meant; where
 * one of the two stays as it was, perhaps forgotten.
 */
export const setbackExceedsOut: Rule = ({ analysis, report }) => {
  for (const day of analysis.trips) {
    if (propertiesOf(day.trip, "method").some((line) => hasWord(line, "shallow"))) continue;
    const usual = new Set<string>();
    for (const depth of day.depths) {
      const lengths = lengthsOf(day, depth);
      if (lengths === undefined) continue;
      const { setbackM, outM, carried } = lengths;
      const isLong = setbackM > outM;
      const isSettled = usual.has(depth.rig) || hasWord(depth.event.line, "shallow");
      if (isLong) usual.add(depth.rig);
      else usual.delete(depth.rig);
      if (!isLong || isSettled || isTooShallowToSwap(depth, setbackM)) continue;
      const { lineIndex, line } = depth.event;
      const data = { gear: day.trip.gear, setbackM, outM, carried };
      if (carried === undefined) {
        const odd = oddUnit(day, depth);
        const place = itemPlace(lineIndex, line, odd === undefined ? "setback" : "out");
        const fixes = odd === undefined ? swap(analysis, depth) : inOwnUnit(analysis, depth, odd);
        report(SETBACK_EXCEEDS_OUT, place, { ...data, odd }, { fixes });
      } else {
        const place = itemPlace(lineIndex, line, carried === "setback" ? "out" : "setback");
        const related = lineBefore(analysis, day, depth, carried);
        report(SETBACK_EXCEEDS_OUT, place, data, { severity: "information", related });
      }
    }
  }
};

interface Lengths {
  readonly setbackM: number;
  readonly outM: number;
  /** The one that isn't on the line and stays as it was. */
  readonly carried: "setback" | "out" | undefined;
}

/** Both lengths of a downrigger's own line that states one of them at least; none on deck. */
function lengthsOf({ trip }: TripAnalysis, { event, rig, setting }: LineDepth): Lengths | undefined {
  if (trip.gear.rigs.get(rig)?.kind !== "downrigger") return undefined;
  const { setbackM, outM } = setting;
  // With nothing out another check has the word.
  if (setbackM === undefined || outM === undefined || outM <= 0) return undefined;
  const [says, saysOut] = ["setback", "out"].map((word) => findItem(event.line, word) !== undefined);
  if (!says && !saysOut) return undefined;
  return { setbackM, outM, carried: !says ? "setback" : !saysOut ? "out" : undefined };
}

/** The last line before that says what stays as it was. */
function lineBefore(
  { uri }: JournalAnalysis,
  { timeline: { ordered } }: TripAnalysis,
  { event, rig }: LineDepth,
  word: "setback" | "out",
): RelatedPlace[] {
  const before = ordered.slice(0, ordered.indexOf(event));
  const last = before.findLast((one) => one.rig === rig && findItem(one.line, word) !== undefined);
  if (last === undefined) return [];
  return [{ uri, message: DAY_RELATED.statedHere, ...itemPlace(last.lineIndex, last.line, word) }];
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

/** Cable out in a unit that the boat's book doesn't use: a slip of the unit explains it better than a swap. */
interface OddUnit {
  readonly typed: string;
  /** The same number in the boat's own unit. */
  readonly meant: string;
}

function oddUnit({ trip: { gear } }: TripAnalysis, { event: { line } }: LineDepth): OddUnit | undefined {
  const out = findItem(line, "out");
  const own = gear.defaults.byDimension.get("length")?.unit;
  if (out?.value.kind !== "quantity" || own === undefined) return undefined;
  const [part, ...others] = out.value.parts;
  if (part?.unit == null || others.length > 0 || part.unit === own) return undefined;
  return { typed: line.raw.slice(out.valueStart, out.stop), meant: `${part.number} ${own}` };
}

function inOwnUnit({ uri }: JournalAnalysis, { event: { line, lineIndex } }: LineDepth, odd: OddUnit): Fix[] {
  const out = findItem(line, "out");
  if (out === undefined) return [];
  const edit = replace(uri, valuePlace(lineIndex, out), odd.meant);
  return [{ title: DAY_FIXES.write(odd.meant), edits: [edit], isPreferred: true }];
}
