import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { LineDepth } from "../analysis/line-depth.ts";
import type { DepthLack } from "../analysis/no-task.ts";
import type { GearOrigin } from "../model/gear-types.ts";
import { findItem } from "../model/quantities.ts";
import type { TripEvent } from "../model/trip.ts";
import { NO_DEPTH } from "./catalog/day.ts";
import { DAY_RELATED } from "./catalog/day-titles.ts";
import type { CheckContext, Place, RelatedPlace, Rule } from "./check.ts";
import { gearFixes } from "./give-gear.ts";
import { itemPlace, slotPlace } from "./places.ts";
import { isSaidOfNumber } from "./said-of-number.ts";
import { trolledDepths } from "./trolled-depths.ts";

type Lacking = LineDepth & { readonly lack: DepthLack };

/** Says what a depth would need: once a trip for each piece of gear, each unstated word of a rig. */
export const noDepth: Rule = (context) => {
  for (const day of context.analysis.trips) {
    const lacking = trolledDepths(day).filter(
      (depth): depth is Lacking => depth.lack !== undefined && isUnsaid(context, day, depth, depth.lack),
    );
    if (lacking.length > 0 && day.trip.gear.cables.size === 0) reportBare(context, day, lacking);
    else reportEach(context, day, lacking);
  }
};

/** A book without any cable or line is one gap, however many rigs. */
function reportBare({ report }: CheckContext, { trip }: TripAnalysis, lacking: readonly Lacking[]): void {
  const [first] = lacking;
  if (first === undefined) return;
  const rigs = [...new Set(lacking.map((depth) => depth.rig))];
  const place = slotPlace(first.event.lineIndex, first.event.line);
  report(NO_DEPTH, place, { kind: "bare", rigs, boat: trip.boat });
}

function reportEach(context: CheckContext, day: TripAnalysis, lacking: readonly Lacking[]): void {
  const said = new Set<string>();
  for (const { event, lack, why } of lacking) {
    const key = JSON.stringify(lack);
    if (said.has(key) || why === null) continue;
    said.add(key);
    const place = lack.at === "line" ? itemOrRig(event, lack.word) : slotPlace(event.lineIndex, event.line);
    const severity = lack.at === "line" ? "hint" : "information";
    const related = relatedGear(day, lack);
    const fixes = () => gearFixes(day.trip.gear, lack);
    context.report(NO_DEPTH, place, { kind: "why", why }, { severity, related, fixes });
  }
}

function itemOrRig({ line, lineIndex }: TripEvent, word: string): Place {
  const isWritten = findItem(line, word) !== undefined;
  return isWritten ? itemPlace(lineIndex, line, word) : slotPlace(lineIndex, line);
}

/**
 * False where another check speaks: of an unknown name in this file, of backing that the rig needs, of an odd
 * number; and for a line that states nothing but its rig.
 */
function isUnsaid(context: CheckContext, day: TripAnalysis, depth: LineDepth, lack: DepthLack): boolean {
  const { setting, event } = depth;
  if (setting.onBottom && setting.outM === undefined) return false;
  if (lack.at === "name") return originOf(day, lack)?.uri !== context.analysis.uri;
  if (lack.at === "number") return !isSaidOfNumber(context, day, depth, lack.value);
  if (lack.at === "line") return !isOfBall(depth, lack.word) && isLeftOut(context, event, lack.word);
  const holdsM = day.trip.gear.rigs.get(depth.rig)?.holdsM;
  return lack.word !== "backing" || holdsM === undefined;
}

/** How much cable a stacked rod's ball has out is for the ball's own lines to say. */
function isOfBall({ rig, cableRig }: LineDepth, word: string): boolean {
  return word === "out" && cableRig !== undefined && cableRig.name !== rig;
}

/** A line that can't be read whole, or lacks a unit, is told that. */
function isLeftOut({ analysis }: CheckContext, { line, lineIndex }: TripEvent, word: string): boolean {
  if (analysis.parse.issues[lineIndex] !== null || line.items.length === 0) return false;
  return word === "dial" || findItem(line, word) === undefined;
}

function originOf({ trip: { gear } }: TripAnalysis, lack: DepthLack): GearOrigin | undefined {
  if (lack.at === "gear" && lack.of === "cable") return gear.cables.get(lack.name)?.origin;
  if (lack.at === "gear" || lack.at === "name") return gear.rigs.get(lack.name)?.origin;
  return undefined;
}

function relatedGear(day: TripAnalysis, lack: DepthLack): RelatedPlace[] {
  const origin = originOf(day, lack);
  if (origin === undefined || lack.at === "line" || lack.at === "number") return [];
  const { uri, line, lineIndex } = origin;
  return [{ uri, message: DAY_RELATED.gearLine(lack.name), ...slotPlace(lineIndex, line) }];
}
