/** The true depth, and the temperature there, beside every set, move and again line, and beside a change that alters one. */
import { type InlayHint, InlayHintKind, type Range } from "vscode-languageserver-types";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { LineDepth } from "../analysis/line-depth.ts";
import { DEPTH_CAUTION, depthLabel, depthSentences } from "../reports/depth-sentences.ts";
import { lureWaterSentences, temperatureLabel } from "../reports/water-sentences.ts";
import { isWhole } from "./hover.ts";
import type { Snapshot } from "./snapshot.ts";

/** What is shown beside a line. */
export interface HintParts {
  readonly depth: boolean;
  readonly temperature: boolean;
}

/** Everything. */
export const ALL_HINTS: HintParts = { depth: true, temperature: true };

/** What a hint says when it is pointed at: with it, or only when it is asked for, since its ranges take longest. */
export type HintReasons = "told" | "asked for";

/** Hints of the lines in a range, right behind the last word; none where part of the line could not be read. */
export function inlayHints(
  snapshot: Snapshot,
  range: Range,
  parts: HintParts,
  reasons: HintReasons,
): InlayHint[] {
  const hints: InlayHint[] = [];
  for (const { day, depth } of snapshot.depthsBetween(range.start.line, range.end.line)) {
    const line = depth.event.lineIndex;
    const last = depth.event.line;
    const label = isWhole(last) ? labelOf(day, depth, parts) : "";
    if (label === "") continue;
    const character = last.items.at(-1)?.stop ?? last.slots.at(-1)?.stop ?? last.verbStop;
    hints.push({
      position: { line, character },
      // The arrow sets it off from what is typed, where colors don't.
      label: `↓ ${label}`,
      kind: InlayHintKind.Parameter,
      paddingLeft: true,
      ...(reasons === "told" ? { tooltip: reasonsOf(day, depth) } : { data: { uri: snapshot.uri } }),
    });
  }
  return hints;
}

function labelOf(day: TripAnalysis, depth: LineDepth, parts: HintParts): string {
  const said = [
    parts.depth ? depthLabel(day.trip.gear, depth) : "",
    parts.temperature ? temperatureLabel(day, depth) : "",
  ];
  return said.filter((part) => part !== "").join(", ");
}

/** What the hint on a line says when it is pointed at; undefined where none is. */
export function hintReasons(snapshot: Snapshot, line: number): string | undefined {
  const known = snapshot.depthAt(line);
  return known === undefined ? undefined : reasonsOf(known.day, known.depth);
}

/** The document that a hint given without its reasons is of. */
export function uriOfHint({ data }: InlayHint): string | undefined {
  const uri: unknown = (data as { uri?: unknown } | null | undefined)?.uri;
  return typeof uri === "string" ? uri : undefined;
}

function reasonsOf(day: TripAnalysis, depth: LineDepth): string {
  return [...depthSentences(day, depth), ...lureWaterSentences(day, depth), DEPTH_CAUTION].join("\n");
}
