/** Completion: what may stand at the cursor, from the vocabulary and the books, the last value on that rig first. */
import { type CompletionItem, CompletionItemKind, type Position } from "vscode-languageserver-types";
import { isRead } from "../../grammar/is-read.ts";
import type { ReadLine } from "../../grammar/journal.ts";
import { readLine } from "../../grammar/read-line.ts";
import { UNITS } from "../../grammar/units.ts";
import { type IndexedRow, type ItemRow, type LinePlace, VOCABULARY } from "../../grammar/vocabulary.ts";
import { lastValues } from "./last-values.ts";
import { namesOf } from "./name-completion.ts";
import type { Snapshot } from "./snapshot.ts";

/** What may follow at a position, best first. */
export function completion(snapshot: Snapshot, position: Position): CompletionItem[] {
  const line = snapshot.parse.journal.lines[position.line];
  const block = snapshot.parse.blocks[position.line] ?? "margin";
  if (line === undefined || line.kind === "note-text") return [];
  const typed = line.raw.slice(0, position.character);
  if (/(?:^|\s)#/u.test(typed)) return [];
  const before = typed.replace(/\S*$/u, "");
  const reading = readLine(`${before}`, "", block, VOCABULARY);
  if (!isRead(reading.line)) {
    if (/^\s*(?:[\d~:+-]+\s+)*$/u.test(before)) return verbItems(placeOf(before, block));
    return [];
  }
  const row = VOCABULARY.find(
    reading.line.kind === "property" ? reading.line.block : "margin",
    reading.line.verb,
  );
  if (row === undefined) return [];
  const { issue } = reading;
  if (reading.line.slots.length < row.slots.length) {
    const slot = row.slots[reading.line.slots.length];
    return slot === undefined ? [] : ranked(namesOf(snapshot, position.line, slot.of, reading.line));
  }
  if (issue?.code === "syntax" && issue.reason === "missing-value") {
    const item = row.words.get(issue.word);
    return item === undefined ? [] : ranked(valueItems(snapshot, position.line, item, reading.line));
  }
  return ranked([...unitItems(reading.line, row), ...itemItems(snapshot, position.line, row, reading.line)]);
}

function placeOf(before: string, block: string): LinePlace {
  const hasClock = /\d:\d\d/u.test(before);
  return /^\s/u.test(before) && !hasClock && (block === "trip" || block === "boat") ? block : "margin";
}

/** Keeps the order in which the items were made. */
function ranked(items: readonly CompletionItem[]): CompletionItem[] {
  return items.map((item, index) => ({ ...item, sortText: String(index).padStart(4, "0") }));
}

function verbItems(place: LinePlace): CompletionItem[] {
  const rows = VOCABULARY.rows.filter((row) => VOCABULARY.find(place, row.verb) === row);
  const events = rows.filter((row) => row.place === "event");
  return ranked(
    [...events, ...rows.filter((row) => row.place !== "event")].map((row) => ({
      label: row.verb,
      kind: CompletionItemKind.Keyword,
      detail: row.doc,
      documentation: { kind: "markdown", value: `\`${row.example}\`` },
    })),
  );
}

function itemItems(snapshot: Snapshot, lineIndex: number, row: IndexedRow, line: ReadLine): CompletionItem[] {
  const last = lastValues(snapshot, lineIndex, line);
  const open = row.items.filter(
    (item) => item.many || !line.items.some((given) => isTaken(row, item, given.word)),
  );
  const suggested = open.flatMap((item) => {
    const value = last.get(item.word);
    return value === undefined
      ? []
      : [{ label: `${item.word} ${value}`, kind: CompletionItemKind.Snippet, detail: "as last on this rig" }];
  });
  const words = open
    .filter((item) => !(item.bare && item.type.kind === "name"))
    .map((item) => ({
      label: item.word,
      kind: item.type.kind === "flag" ? CompletionItemKind.EnumMember : CompletionItemKind.Property,
      detail: item.doc,
    }));
  return [...suggested, ...words];
}

function isTaken(row: IndexedRow, item: ItemRow, given: string): boolean {
  if (given === item.word) return true;
  return item.group !== undefined && row.words.get(given)?.group === item.group;
}

/** Units for a number that has none yet. */
function unitItems(line: ReadLine, row: IndexedRow): CompletionItem[] {
  const last = line.items.at(-1);
  if (last === undefined || line.raw.slice(last.stop).trim() !== "") return [];
  const { value } = last;
  const parts = value.kind === "quantity" ? value.parts : value.kind === "range" ? value.high : [];
  if (parts.at(-1)?.unit !== null) return [];
  const type = row.words.get(last.word)?.type;
  if (type?.kind !== "quantity") return [];
  return UNITS.filter((unit) => type.dimension === "any" || unit.dimension === type.dimension).map(
    (unit) => ({
      label: unit.unit,
      kind: CompletionItemKind.Unit,
      detail: unit.doc,
    }),
  );
}

function valueItems(snapshot: Snapshot, lineIndex: number, item: ItemRow, line: ReadLine): CompletionItem[] {
  const last = lastValues(snapshot, lineIndex, line).get(item.word);
  const first =
    last === undefined
      ? []
      : [{ label: last, kind: CompletionItemKind.Value, detail: "as last on this rig" }];
  if (item.type.kind !== "name") return first;
  const names = namesOf(snapshot, lineIndex, item.type.of, line);
  return [...first, ...names.filter((name) => name.label !== last)];
}
