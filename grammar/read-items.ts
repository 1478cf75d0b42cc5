/** Reads the attributes and flags of a line, in any order, driven by its vocabulary row. */
import { readWay } from "./by-how-much.ts";
import { type Cursor, unquote } from "./cursor.ts";
import type { Item, Value } from "./journal.ts";
import { looksNumeric, splitNumber } from "./number-text.ts";
import { misspelt, openQuote, readValue, takeApart } from "./read-value.ts";
import { findUnit } from "./units.ts";
import { findItem, type IndexedRow, type ItemRow } from "./vocabulary.ts";

/** Reads every item from the cursor to the end of the line. */
export function readItems(cursor: Cursor, row: IndexedRow): Item[] {
  const items: Item[] = [];
  while (!cursor.done) {
    const before = cursor.at;
    const item = readItem(cursor, row);
    if (item === null) {
      cursor.at = Math.max(cursor.at, before + 1);
      skipToKnownWord(cursor, row);
      items.push(unread(cursor, before));
    } else {
      reportClash(cursor, row, items, item);
      reportTakenWord(cursor, row, items.at(-1), item);
      items.push(item);
    }
  }
  if (row.needs.length > 0) reportMissingItem(cursor, row, items);
  return items.slice();
}

function readItem(cursor: Cursor, row: IndexedRow): Item | null {
  if (cursor.isQuoted()) return readBareText(cursor, row);
  const word = cursor.text();
  const known = findItem(row, word);
  if (known === undefined) return readBare(cursor, row, word);
  const first = cursor.at;
  cursor.at++;
  const value = readValue(cursor, known, row);
  return value === null ? null : itemOf(cursor, known, false, value, first, first + 1);
}

function itemOf(
  cursor: Cursor,
  row: ItemRow,
  bare: boolean,
  value: Value,
  first: number,
  firstValue: number,
): Item {
  const stop = cursor.endOf(cursor.at - 1);
  const valueStart = Math.min(cursor.startOf(firstValue), stop);
  return { word: row.word, bare, value, start: cursor.startOf(first), valueStart, stop };
}

function readBareText(cursor: Cursor, row: IndexedRow): Item | null {
  const texts = row.bareItems.filter((item) => item.type.kind === "name");
  const [target] = texts;
  if (target === undefined) return stray(cursor, row);
  const first = cursor.at;
  const text = unquote(cursor.text());
  cursor.at++;
  return itemOf(cursor, target, true, { kind: "name", text, quoted: true }, first, first);
}

/** A measure without its word is read by its dimension; a clock time where the row has one. */
function readBare(cursor: Cursor, row: IndexedRow, word: string): Item | null {
  if (word.startsWith('"')) return openQuote(cursor);
  const first = cursor.at;
  const target = cursor.isClock()
    ? clockItem(row)
    : looksNumeric(word)
      ? measureItem(cursor, row)
      : changedItem(cursor, row);
  if (target === undefined) return cursor.issue === null ? unknown(cursor, row, word) : null;
  const value = readValue(cursor, target, row);
  return value === null ? null : itemOf(cursor, target, true, value, first, first);
}

function clockItem(row: IndexedRow): ItemRow | undefined {
  return row.bareItems.find((item) => item.type.kind === "clock");
}

/** `up 20 ft`: the amount that the measure behind the word would be of. */
function changedItem(cursor: Cursor, row: IndexedRow): ItemRow | undefined {
  const first = cursor.at;
  const target = readWay(cursor, row) === undefined ? undefined : measureItem(cursor, row);
  cursor.at = first;
  return target?.type.kind === "quantity" && target.type.dimension === "length" ? target : undefined;
}

function measureItem(cursor: Cursor, row: IndexedRow): ItemRow | undefined {
  const candidates = row.bareItems.filter((item) => ["quantity", "number", "point"].includes(item.type.kind));
  if (candidates.length === 0) return undefined;
  const [only] = candidates;
  if (candidates.length === 1) return only;
  const split = splitNumber(cursor.text());
  if (split === undefined) {
    misspelt(cursor);
    return undefined;
  }
  if (split.unit !== "" && findUnit(split.unit) === undefined && takeApart(cursor))
    return measureItem(cursor, row);
  const count = candidates.find((item) => item.type.kind === "number");
  const unit = findUnit(split.unit !== "" || cursor.isQuoted(1) ? split.unit : cursor.text(1));
  const plain = count ?? candidates.find((item) => item.plain);
  if (unit === undefined && plain !== undefined) return plain;
  if (unit === undefined) {
    cursor.report({
      code: "syntax",
      reason: "which-measure",
      number: split.number,
      words: candidates.map((item) => item.word),
      span: cursor.spanFrom(cursor.at, cursor.at + 1),
    });
    return undefined;
  }
  return candidates.find((item) => item.type.kind === "quantity" && item.type.dimension === unit.dimension);
}

function unknown(cursor: Cursor, row: IndexedRow, word: string): null {
  if (looksNumeric(word)) return splitNumber(word) === undefined ? misspelt(cursor) : stray(cursor, row);
  cursor.report({
    code: "unknown-word",
    role: "item",
    word,
    verb: row.verb,
    candidates: [...row.words.keys()],
    span: cursor.spanFrom(cursor.at, cursor.at + 1),
  });
  return null;
}

function stray(cursor: Cursor, row: IndexedRow): null {
  cursor.report({
    code: "syntax",
    reason: "stray-text",
    text: cursor.text(),
    verb: row.verb,
    span: cursor.spanFrom(cursor.at, cursor.at + 1),
  });
  return null;
}

function skipToKnownWord(cursor: Cursor, row: IndexedRow): void {
  while (!cursor.done && findItem(row, cursor.text()) === undefined) cursor.at++;
}

function unread(cursor: Cursor, first: number): Item {
  const [start, stop] = cursor.spanFrom(first, cursor.at);
  const text = cursor.raw.slice(start, stop);
  return { word: "", bare: true, value: { kind: "unread", text }, start, valueStart: start, stop };
}

function reportClash(cursor: Cursor, row: IndexedRow, before: readonly Item[], item: Item): void {
  if (before.length === 0 || cursor.issue !== null) return;
  const { many, group } = row.words.get(item.word) ?? {};
  for (const other of before) {
    if (other.word === item.word && many === false) {
      cursor.report({ code: "syntax", reason: "repeated", word: item.word, span: [item.start, item.stop] });
    } else if (
      group !== undefined &&
      other.word !== item.word &&
      row.words.get(other.word)?.group === group
    ) {
      cursor.report({
        code: "syntax",
        reason: "exclusive",
        word: item.word,
        other: other.word,
        span: [item.start, item.stop],
      });
    }
  }
}

/**
 * True when a name took the very word that the item after it goes without. Only the word itself counts, not its
 * aliases and not other attributes, so that a new word in the vocabulary never turns an old name into a mistake.
 */
export function tookWordOf(item: Item | undefined, name: { text: string; quoted: boolean }): boolean {
  return item?.bare === true && !name.quoted && name.text.toLowerCase() === item.word;
}

/** `lure out 72 ft` lacks the lure's name. */
function reportTakenWord(cursor: Cursor, row: IndexedRow, before: Item | undefined, item: Item): void {
  if (before?.value.kind !== "name" || !tookWordOf(item, before.value)) return;
  const wants = row.words.get(before.word)?.type ?? { kind: "flag" };
  const { word, start, valueStart } = before;
  const found = before.value.text;
  const stop = start + cursor.raw.slice(start, valueStart).trimEnd().length;
  cursor.report({ code: "syntax", reason: "missing-value", word, wants, found, span: [start, stop] });
}

function reportMissingItem(cursor: Cursor, row: IndexedRow, items: readonly Item[]): void {
  if (cursor.issue !== null || items.some((item) => row.needs.includes(item.word))) return;
  cursor.report({
    code: "syntax",
    reason: "missing-item",
    verb: row.verb,
    needs: row.needs,
    example: row.example,
    span: cursor.spanFrom(0, cursor.pieces.length),
  });
}
