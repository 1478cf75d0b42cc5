/** Reads the value after a word, by the type its vocabulary row gives. */
import { readByHowMuch, readWay, wayOf } from "./by-how-much.ts";
import { type Cursor, unquote } from "./cursor.ts";
import type { Part, Value } from "./journal.ts";
import { looksNumeric, mendNumber, splitCompound, splitNumber } from "./number-text.ts";
import { readPositionText } from "./position-text.ts";
import { canonicalClock, isCalendarDate } from "./stamp.ts";
import { type Dimension, findUnit, type UnitRow } from "./units.ts";
import { findItem, type IndexedRow, type ItemRow, type ValueType } from "./vocabulary.ts";

/** Reads one value at the cursor; null when there is none, with the reason reported. */
export function readValue(cursor: Cursor, item: ItemRow, row: IndexedRow): Value | null {
  const { type } = item;
  switch (type.kind) {
    case "flag":
      return { kind: "flag" };
    case "quantity":
      return readQuantity(cursor, item, type.dimension, type.range, row);
    case "number":
      return readNumber(cursor, item, type.what);
    case "name":
      return readName(cursor, item);
    case "position":
      return readPosition(cursor, item);
    case "clock":
      return readClock(cursor, item, type.range);
    case "date":
      return readDate(cursor, item);
    case "point":
      return readPoint(cursor, item, row);
  }
}

function missing(cursor: Cursor, word: string, wants: ValueType): null {
  const at = cursor.at;
  cursor.report({
    code: "syntax",
    reason: "missing-value",
    word,
    wants,
    found: cursor.text(),
    span: at > 0 ? cursor.spanFrom(at - 1, at) : cursor.spanFrom(at, at + 1),
  });
  return null;
}

function readQuantity(
  cursor: Cursor,
  item: ItemRow,
  dimension: Dimension | "any",
  range: boolean,
  row: IndexedRow,
): Value | null {
  const first = cursor.at;
  const way = dimension === "length" ? readWay(cursor, row) : undefined;
  const low = readParts(cursor, item, dimension, row);
  if (low === null) return null;
  const change = dimension === "length" ? readByHowMuch(cursor, first, low, row, way) : undefined;
  if (change !== undefined) {
    const span = cursor.spanFrom(first, cursor.at);
    cursor.report({ code: "syntax", reason: "by-how-much", word: item.word, ...change, span });
    return null;
  }
  if (cursor.text().toLowerCase() !== "to" || !looksNumeric(cursor.text(1)))
    return { kind: "quantity", parts: low };
  if (!range) {
    if (!row.words.has("to")) {
      cursor.report({
        code: "syntax",
        reason: "no-range",
        word: item.word,
        span: cursor.spanFrom(cursor.at, cursor.at + 2),
      });
    }
    return { kind: "quantity", parts: low };
  }
  cursor.at++;
  const high = readParts(cursor, item, dimension, row);
  return high === null ? null : { kind: "range", low, high };
}

/** Before the first part. Lists of a line are made at their own length: kept lines are many, and growing lists have room to spare. */
const NO_PARTS: Part[] = [];

/** Reads a measure; a compound one greedily, while each part is less than one of the unit before it. */
function readParts(
  cursor: Cursor,
  item: ItemRow,
  dimension: Dimension | "any",
  row: IndexedRow,
): Part[] | null {
  if (!looksNumeric(cursor.text())) return missing(cursor, item.word, item.type);
  let parts: Part[] = NO_PARTS;
  let last: UnitRow | undefined;
  while (looksNumeric(cursor.text())) {
    const next = peekPart(cursor, row);
    if (next === undefined) {
      if (parts.length > 0) break;
      return misspelt(cursor);
    }
    if (parts.length > 0 && !isFinerPart(last, next) && !isBehindColors(item, last, next)) break;
    if (next.unit !== undefined && dimension !== "any" && next.unit.dimension !== dimension) {
      cursor.report({
        code: "unit-mismatch",
        word: item.word,
        unit: next.unit.unit,
        wants: dimension,
        span: cursor.spanFrom(cursor.at, cursor.at + next.taken),
      });
    }
    cursor.at += next.taken;
    const part = { number: next.number, unit: next.unit?.unit ?? null };
    parts = parts.length === 0 ? [part] : [...parts, part];
    last = next.unit;
    if (last === undefined) break;
  }
  return parts;
}

/** What is said in two units at once: feet and inches, pounds and ounces, hours and minutes. */
const COMPOUND: ReadonlySet<Dimension> = new Set(["length", "mass", "duration"]);

function isFinerPart(
  last: UnitRow | undefined,
  next: { number: string; unit: UnitRow | undefined },
): boolean {
  if (last === undefined || next.unit?.dimension !== last.dimension || !COMPOUND.has(last.dimension)) {
    return false;
  }
  return /^\d/u.test(next.number) && Number(next.number) * next.unit.factor < last.factor;
}

/** Behind the colors that are out comes the backing, of any length: `out 10 colors 50 ft`. */
function isBehindColors(
  item: ItemRow,
  last: UnitRow | undefined,
  next: { number: string; unit: UnitRow | undefined },
): boolean {
  const isColors = item.word === "out" && last?.unit === "colors" && next.unit?.unit !== "colors";
  return isColors && next.unit?.dimension === "length" && /^\d/u.test(next.number);
}

/** A number and the unit that follows it, without moving the cursor. */
function peekPart(
  cursor: Cursor,
  row: IndexedRow,
): { number: string; unit: UnitRow | undefined; taken: number } | undefined {
  const split = splitNumber(cursor.text());
  if (split === undefined) return undefined;
  if (split.unit !== "") {
    const unit = findUnit(split.unit);
    if (unit === undefined && takeApart(cursor)) return peekPart(cursor, row);
    if (unit === undefined) reportUnit(cursor, split.unit, cursor.at, row, split.number.length);
    return { number: split.number, unit, taken: 1 };
  }
  const following = cursor.text(1);
  const unit = cursor.isQuoted(1) ? undefined : findUnit(following);
  if (unit !== undefined) return { number: split.number, unit, taken: 2 };
  if (!isStrayUnit(cursor, following, row)) return { number: split.number, unit: undefined, taken: 1 };
  reportUnit(cursor, following, cursor.at + 1, row, 0);
  return { number: split.number, unit: undefined, taken: 2 };
}

/** Takes a measure in two units apart that was written as one word: `5lb4oz`. False when the word is none. */
export function takeApart(cursor: Cursor): boolean {
  const parts = splitCompound(cursor.text());
  if (parts !== undefined) cursor.split(parts);
  return parts !== undefined;
}

/** A bare word after a number that means nothing else there was meant as its unit. */
function isStrayUnit(cursor: Cursor, word: string, row: IndexedRow): boolean {
  if (word === "" || cursor.isQuoted(1) || cursor.isClock(1) || looksNumeric(word)) return false;
  if (wayOf(word, row) !== undefined) return false;
  return word.toLowerCase() !== "to" && findItem(row, word) === undefined && /^\p{L}{1,12}$/u.test(word);
}

function reportUnit(cursor: Cursor, word: string, index: number, row: IndexedRow, skip: number): void {
  cursor.report({
    code: "unknown-word",
    role: "unit",
    word,
    verb: row.verb,
    candidates: [],
    span: [cursor.startOf(index) + skip, cursor.endOf(index)],
  });
}

/** Reports a number that is not written as one, and steps over it. */
export function misspelt(cursor: Cursor): null {
  const text = cursor.text();
  cursor.report({
    code: "number-format",
    text,
    mend: mendNumber(text),
    span: cursor.spanFrom(cursor.at, cursor.at + 1),
  });
  cursor.at++;
  return null;
}

const PLAIN_NUMBER: Readonly<Record<string, RegExp>> = {
  count: /^\d+$/u,
  bearing: /^\d{1,3}(?:\.\d+)?$/u,
  dial: /^[+-]?\d+(?:\.\d+)?$/u,
  ratio: /^[+-]?(?:\d+(?:\.\d+)?|\.\d+)$/u,
};

function readNumber(cursor: Cursor, item: ItemRow, what: string): Value | null {
  const text = cursor.text();
  if (!looksNumeric(text)) return missing(cursor, item.word, item.type);
  const span = cursor.spanFrom(cursor.at, cursor.at + 1);
  if (PLAIN_NUMBER[what]?.test(text) !== true) {
    if (splitNumber(text) === undefined) return misspelt(cursor);
    cursor.report({ code: "syntax", reason: what === "bearing" ? "bad-bearing" : "bad-count", text, span });
    cursor.at++;
    return null;
  }
  cursor.at++;
  if (what === "bearing" && Number(text) > 360) {
    cursor.report({ code: "syntax", reason: "bad-bearing", text, span });
  }
  return { kind: "number", number: text };
}

function readName(cursor: Cursor, item: ItemRow): Value | null {
  if (cursor.done) return missing(cursor, item.word, item.type);
  const image = cursor.text();
  const quoted = cursor.isQuoted();
  if (!quoted && image.startsWith('"')) return openQuote(cursor);
  cursor.at++;
  return { kind: "name", text: quoted ? unquote(image) : image, quoted };
}

/** Reports a quote that never closes; the rest of the line belongs to it. */
export function openQuote(cursor: Cursor): null {
  cursor.report({
    code: "syntax",
    reason: "open-quote",
    span: cursor.spanFrom(cursor.at, cursor.pieces.length),
  });
  cursor.at = cursor.pieces.length;
  return null;
}

function readPosition(cursor: Cursor, item: ItemRow): Value | null {
  if (cursor.done) return missing(cursor, item.word, item.type);
  const pieces = cursor.pieces.slice(cursor.at, cursor.at + 8).map((piece) => piece.image);
  const found = readPositionText(pieces);
  if (found === undefined) {
    cursor.report({
      code: "syntax",
      reason: "bad-position",
      text: pieces.slice(0, 2).join(" "),
      span: cursor.spanFrom(cursor.at, Math.min(cursor.at + 2, cursor.pieces.length)),
    });
    return null;
  }
  cursor.at += found.taken;
  return { kind: "position", latitude: found.latitude, longitude: found.longitude };
}

function readClock(cursor: Cursor, item: ItemRow, range: boolean): Value | null {
  const from = readClockTime(cursor, item);
  if (from === null) return null;
  if (!range || cursor.text().toLowerCase() !== "to") return { kind: "clock", from, to: null };
  cursor.at++;
  const to = readClockTime(cursor, item);
  return to === null ? null : { kind: "clock", from, to };
}

function readClockTime(cursor: Cursor, item: ItemRow): string | null {
  const text = cursor.text();
  if (!cursor.isClock()) return missing(cursor, item.word, item.type);
  const clock = canonicalClock(text);
  if (clock === undefined || clock.approx || clock.offset !== null) {
    cursor.report({
      code: "syntax",
      reason: "bad-clock",
      text,
      span: cursor.spanFrom(cursor.at, cursor.at + 1),
    });
  }
  cursor.at++;
  return clock?.clock ?? null;
}

function readDate(cursor: Cursor, item: ItemRow): Value | null {
  const text = cursor.text();
  if (!isCalendarDate(text)) return missing(cursor, item.word, item.type);
  cursor.at++;
  return { kind: "date", date: text };
}

function readPoint(cursor: Cursor, item: ItemRow, row: IndexedRow): Value | null {
  const depth = readParts(cursor, item, "length", row);
  if (depth === null) return null;
  const temp = readParts(cursor, item, "temperature", row);
  return temp === null ? null : { kind: "point", depth, temp };
}
