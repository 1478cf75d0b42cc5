/** The true depth, and the temperature there, beside every set, move and again line, and beside a change that alters one. */
import { type InlayHint, InlayHintKind, type Range } from "vscode-languageserver-types";
import { DEPTH_CAUTION, depthLabel, depthSentences } from "../reports/depth-sentences.ts";
import { lureWaterSentences, temperatureLabel } from "../reports/water-sentences.ts";
import { ALL_HINTS, type HintParts } from "./hint-kinds.ts";
import { isWhole } from "./hover.ts";
import type { DayDepth, Snapshot } from "./snapshot.ts";

/** Which hints are wanted, and whether their tooltips may be asked for later. */
export interface HintChoice {
  readonly parts: HintParts;
  readonly isLazy: boolean;
}

/** What a hint carries so that its tooltip can be made later. */
interface HintData {
  readonly uri: string;
  readonly line: number;
}

const EVERYTHING: HintChoice = { parts: ALL_HINTS, isLazy: false };

/** Hints of the lines in a range, right behind the last word; none where part of the line could not be read. */
export function inlayHints(
  snapshot: Snapshot,
  range: Range,
  { parts, isLazy }: HintChoice = EVERYTHING,
): InlayHint[] {
  const hints: InlayHint[] = [];
  if (!Object.values(parts).includes(true)) return hints;
  for (const known of snapshot.depthsBetween(range.start.line, range.end.line)) {
    const { lineIndex: line, line: last } = known.depth.event;
    const label = isWhole(last) ? labelOf(known, parts) : "";
    if (label === "") continue;
    const character = last.items.at(-1)?.stop ?? last.slots.at(-1)?.stop ?? last.verbStop;
    const data: HintData = { uri: snapshot.uri, line };
    hints.push({
      position: { line, character },
      // The arrow sets it off from what is typed, where colors don't.
      label: `↓ ${label}`,
      kind: InlayHintKind.Parameter,
      paddingLeft: true,
      ...(isLazy ? { data } : { tooltip: tooltipOf(known) }),
    });
  }
  return hints;
}

/** A hint with its tooltip; as it was where its line has no depth any more. */
export function resolveInlayHint(snapshot: Snapshot, hint: InlayHint): InlayHint {
  const data: HintData = hint.data;
  const known = snapshot.depthAt(data.line);
  return known === undefined ? hint : { ...hint, tooltip: tooltipOf(known) };
}

function labelOf({ day, depth }: DayDepth, parts: HintParts): string {
  const said = [
    parts.depth ? depthLabel(day.trip.gear, depth) : "",
    parts.temperature ? temperatureLabel(day, depth) : "",
  ];
  return said.filter((part) => part !== "").join(", ");
}

function tooltipOf({ day, depth }: DayDepth): string {
  return [...depthSentences(day, depth), ...lureWaterSentences(day, depth), DEPTH_CAUTION].join("\n");
}
