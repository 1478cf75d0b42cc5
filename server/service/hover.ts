/** What the reader gets when he points at a line: depths with their provenance, the trip's summary, a word's meaning. */
import type { Hover, Position } from "vscode-languageserver-types";
import { isRead } from "../../grammar/is-read.ts";
import type { Item, ReadLine } from "../../grammar/journal.ts";
import { type IndexedRow, type ItemRow, VOCABULARY } from "../../grammar/vocabulary.ts";
import { DEPTH_CAUTION, depthSentences } from "../reports/depth-sentences.ts";
import { SUMMARY_CAUTION, summarySentences } from "../reports/summary-sentences.ts";
import { definitionSentence } from "./definitions.ts";
import type { Snapshot } from "./snapshot.ts";

/** The hover at a position; null where there is nothing to say. */
export function hover(snapshot: Snapshot, position: Position): Hover | null {
  const line = snapshot.parse.journal.lines[position.line];
  if (line === undefined || !isRead(line)) return null;
  const column = position.character;
  if (column > line.raw.trimEnd().length) return null;
  const parts = [lineHover(snapshot, position.line), wordHover(snapshot, line, position)];
  const said = parts.filter((part) => part !== "");
  if (said.length === 0) return null;
  return { contents: { kind: "markdown", value: said.join("\n\n---\n\n") } };
}

function lineHover(snapshot: Snapshot, lineIndex: number): string {
  const known = snapshot.depths.get(lineIndex);
  if (known !== undefined) {
    const caution = known.depth.ball === null ? "" : `\n\n*${DEPTH_CAUTION}*`;
    return sentencesOf(depthSentences(known.day, known.depth)) + caution;
  }
  const day = snapshot.analysis.trips.find((one) => one.trip.openerIndex === lineIndex);
  if (day === undefined) return "";
  const title = `**${plainMarkdown(day.trip.date)}, ${plainMarkdown(day.trip.boat)}**`;
  return `${title}\n\n${sentencesOf(summarySentences(day))}\n\n*${SUMMARY_CAUTION}*`;
}

/** Sentences on lines of their own. */
function sentencesOf(sentences: readonly string[]): string {
  return sentences.map(plainMarkdown).join("  \n");
}

/** Names come from the file: nothing in them may act as Markdown. */
function plainMarkdown(text: string): string {
  return text.replaceAll(/[\\`*_[\]<>]/gu, "\\$&");
}

function wordHover(snapshot: Snapshot, line: ReadLine, { line: lineIndex, character }: Position): string {
  const row = VOCABULARY.find(line.kind === "property" ? line.block : "margin", line.verb);
  if (row === undefined) return "";
  if (isWithin(character, line.verbStart, line.verbStop)) return rowWords(row);
  const slot = line.slots.findIndex((one) => isWithin(character, one.start, one.stop));
  const slotRow = row.slots[slot];
  if (slotRow !== undefined)
    return plainMarkdown(definitionSentence(snapshot, lineIndex, slotRow.of, line.slots[slot]?.text ?? ""));
  const item = line.items.find((one) => isWithin(character, one.start, one.stop));
  return item === undefined ? "" : itemWords(snapshot, lineIndex, row.words.get(item.word), item);
}

function isWithin(column: number, start: number, stop: number): boolean {
  return column >= start && column < stop;
}

function rowWords(row: IndexedRow): string {
  return `**${row.verb}**: ${row.doc}\n\n\`${row.example}\``;
}

function itemWords(snapshot: Snapshot, lineIndex: number, row: ItemRow | undefined, item: Item): string {
  if (row === undefined) return "";
  const meaning = `**${row.word}**: ${row.doc}`;
  if (row.type.kind !== "name" || item.value.kind !== "name") return meaning;
  const definition = definitionSentence(snapshot, lineIndex, row.type.of, item.value.text);
  return definition === "" ? meaning : `${meaning}\n\n${plainMarkdown(definition)}`;
}
