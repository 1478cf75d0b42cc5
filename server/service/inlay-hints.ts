/** The true depth beside every set, move and again line, and beside a change that alters one. */
import { type InlayHint, InlayHintKind, type Range } from "vscode-languageserver-types";
import { DEPTH_CAUTION, depthLabel, depthSentences } from "../reports/depth-sentences.ts";
import { isWhole } from "./hover.ts";
import type { Snapshot } from "./snapshot.ts";

/** Hints of the lines in a range, right behind the last word; none where part of the line could not be read. */
export function inlayHints(snapshot: Snapshot, range: Range): InlayHint[] {
  const hints: InlayHint[] = [];
  for (const { day, depth } of snapshot.depthsBetween(range.start.line, range.end.line)) {
    const line = depth.event.lineIndex;
    const last = depth.event.line;
    const label = isWhole(last) ? depthLabel(day.trip.gear, depth) : "";
    if (label === "") continue;
    const character = last.items.at(-1)?.stop ?? last.slots.at(-1)?.stop ?? last.verbStop;
    hints.push({
      position: { line, character },
      // The arrow sets it off from what is typed, where colors don't.
      label: `↓ ${label}`,
      kind: InlayHintKind.Parameter,
      paddingLeft: true,
      tooltip: [...depthSentences(day, depth), DEPTH_CAUTION].join("\n"),
    });
  }
  return hints;
}
