/** What the reader gets when he points at a line: depths with their provenance, the trip's summary, a word's meaning. */
import type { Hover, Position } from "vscode-languageserver-types";
import { isRead } from "../../grammar/is-read.ts";
import type { ReadLine } from "../../grammar/journal.ts";
import { DEPTH_CAUTION, depthSentences } from "../reports/depth-sentences.ts";
import { gearChangeSentences } from "../reports/gear-change-sentences.ts";
import { lightSentences } from "../reports/light-sentences.ts";
import { readingSentences } from "../reports/reading-sentences.ts";
import { rodLiftSentences } from "../reports/rod-lift-sentences.ts";
import { SUMMARY_CAUTION, summarySentences } from "../reports/summary-sentences.ts";
import { waterReadingSentences } from "../reports/water-reading-sentences.ts";
import { lureWaterSentences } from "../reports/water-sentences.ts";
import { plainMarkdown } from "./markdown.ts";
import { isWithin } from "./name-at.ts";
import type { Snapshot } from "./snapshot.ts";
import { problemHover, wordHover } from "./word-hover.ts";

/** The hover at a position; null where there is nothing to say, in comments and in notes. */
export function hover(snapshot: Snapshot, position: Position): Hover | null {
  const line = snapshot.parse.journal.lines[position.line];
  if (line === undefined) return null;
  if (line.kind === "unreadable") return hoverOf([problemHover(snapshot, position)]);
  if (!isRead(line) || !isOnWords(line, position.character)) return null;
  return hoverOf([lineHover(snapshot, position.line, line), wordHover(snapshot, line, position)]);
}

function hoverOf(parts: readonly string[]): Hover | null {
  const said = parts.filter((part) => part !== "");
  if (said.length === 0) return null;
  return { contents: { kind: "markdown", value: said.join("\n\n---\n\n") } };
}

/** Neither before the first word nor behind the last one. */
function isOnWords({ raw, comment }: ReadLine, column: number): boolean {
  const words = raw.slice(0, raw.length - (comment?.length ?? 0));
  return isWithin(column, words.length - words.trimStart().length, words.trimEnd().length);
}

function lineHover(snapshot: Snapshot, lineIndex: number, line: ReadLine): string {
  const known = snapshot.depthAt(lineIndex);
  if (known !== undefined) {
    if (!isWhole(line)) return "No depth: part of this line can't be read.";
    const caution = known.depth.why !== null ? "" : `\n\n*${DEPTH_CAUTION}*`;
    const { day, depth } = known;
    const said = [
      ...depthSentences(day, depth),
      ...rodLiftSentences(day, depth),
      ...lureWaterSentences(day, depth),
      ...gearChangeSentences(day, depth),
    ];
    return sentencesOf(said) + caution;
  }
  const day = snapshot.tripAt(lineIndex);
  if (day !== undefined && day.trip.openerIndex !== lineIndex && isWhole(line)) {
    const isGear = line.verb === "probe" || line.verb === "touch";
    const expected = isGear ? readingSentences(day, lineIndex) : [];
    return sentencesOf([
      ...expected,
      ...waterReadingSentences(day, lineIndex),
      ...lightSentences(day, lineIndex),
    ]);
  }
  if (day?.trip.openerIndex !== lineIndex) return "";
  const title = `**${plainMarkdown(day.trip.boat)}, ${plainMarkdown(day.trip.date)}**`;
  return `${title}\n\n${sentencesOf(summarySentences(day))}\n\n*${SUMMARY_CAUTION}*`;
}

/** False while a word or number of the line could not be read: what it would change isn't known. */
export function isWhole(line: ReadLine): boolean {
  return line.items.every((item) => item.value.kind !== "unread");
}

/** Sentences on lines of their own. */
function sentencesOf(sentences: readonly string[]): string {
  return sentences.map(plainMarkdown).join("  \n");
}
