/**
 * One line → its typed form. Total: never throws, and never more than one issue a line. What a line means depends
 * on its own text and on the block it is in, on nothing else.
 */
import { Cursor, unquote } from "./cursor.ts";
import type { Issue } from "./issues.ts";
import type { Item, Line, Slot, Span } from "./journal.ts";
import type { LineParts } from "./line-parts.ts";
import { readItems, tookWordOf } from "./read-items.ts";
import { openQuote } from "./read-value.ts";
import { splitLine } from "./split-line.ts";
import { type Clock, canonicalClock, isCalendarDate, misspeltStamp } from "./stamp.ts";
import { findItem, type IndexedRow, type LinePlace, type SlotRow, type Vocabulary } from "./vocabulary.ts";

/** The block that the next line would stand in. */
export type Block = "margin" | "boat" | "trip" | "note";

/** A line read, what is wrong with it, and the block that follows. */
export interface LineReading {
  readonly line: Line;
  readonly issue: Issue | null;
  readonly next: Block;
}

type End = Line["end"];

/** Longer lines are no journal lines; they are kept as they are and not read, so that time and memory stay bounded. */
export const LONGEST_LINE = 20_000;

const SPACE = 32;
const HASH = 35;
const ASCII_END = 127;

/** Reads one line, given without its line end, in the block it stands in. */
export function readLine(raw: string, end: End, block: Block, vocabulary: Vocabulary): LineReading {
  if (raw.length > LONGEST_LINE) return tooLong(raw, end, block);
  const first = raw.charCodeAt(0);
  if (first > SPACE && first < ASCII_END && first !== HASH) {
    return readWords(raw, end, splitLine(raw), "margin", vocabulary);
  }
  const content = raw.trim();
  if (content === "") return { line: { kind: "blank", raw, end }, issue: null, next: block };
  const indented = /^\s/u.test(raw);
  if (block === "note" && indented)
    return { line: { kind: "note-text", raw, end }, issue: null, next: block };
  if (content.startsWith("#")) return { line: { kind: "comment", raw, end }, issue: null, next: block };
  return readWords(raw, end, splitLine(raw), indented ? block : "margin", vocabulary);
}

function tooLong(raw: string, end: End, block: Block): LineReading {
  if (block === "note" && /^\s/u.test(raw)) {
    return { line: { kind: "note-text", raw, end }, issue: null, next: block };
  }
  const issue = {
    code: "syntax",
    reason: "too-long",
    length: raw.length,
    longest: LONGEST_LINE,
    span: [0, raw.length],
  } as const;
  return { line: { kind: "unreadable", raw, end }, issue, next: /^\s/u.test(raw) ? block : "margin" };
}

function readWords(
  raw: string,
  end: End,
  parts: LineParts,
  block: Block,
  vocabulary: Vocabulary,
): LineReading {
  const place: LinePlace = block === "note" || parts.clock !== undefined ? "margin" : block;
  const next: Block = place;
  const cursor = new Cursor(raw, parts.words);
  if (cursor.done) {
    cursor.report({ code: "syntax", reason: "nothing-happened", span: stampSpan(parts, raw) });
    return { line: { kind: "unreadable", raw, end }, issue: cursor.issue, next };
  }
  const row = vocabulary.find(place, cursor.text());
  if (row === undefined) {
    reportVerb(cursor, place, vocabulary, parts.clock !== undefined);
    return { line: { kind: "unreadable", raw, end }, issue: cursor.issue, next };
  }
  cursor.at = 1;
  const clock = readStamp(cursor, parts);
  if (place === "trip" && parts.date !== undefined) {
    cursor.report({ code: "syntax", reason: "stamp-in-property", verb: row.verb, span: spanOf(parts.date) });
  }
  const { slots, items } = readRest(cursor, row);
  const fact = {
    kind: "fact" as const,
    raw,
    end,
    date: parts.date?.image ?? null,
    clock: clock?.clock ?? null,
    offset: clock?.offset ?? null,
    approx: clock?.approx ?? false,
    verb: row.verb,
    slots,
    items,
    comment: parts.comment ?? null,
    verbStart: cursor.startOf(0),
    verbStop: cursor.endOf(0),
  };
  const line: Line = place === "margin" ? fact : { ...fact, kind: "property", block: place };
  return { line, issue: cursor.issue, next: opens(row) ?? next };
}

function opens(row: IndexedRow): Block | undefined {
  if (row.verb === "note") return "note";
  return row.place === "opener" ? (row.verb as "boat" | "trip") : undefined;
}

function readStamp(cursor: Cursor, parts: LineParts): Clock | undefined {
  if (parts.date !== undefined && !isCalendarDate(parts.date.image)) {
    cursor.report({ code: "syntax", reason: "bad-date", text: parts.date.image, span: spanOf(parts.date) });
  }
  if (parts.clock === undefined) return undefined;
  const clock = canonicalClock(parts.clock.image);
  if (clock === undefined) {
    cursor.report({
      code: "syntax",
      reason: "bad-clock",
      text: parts.clock.image,
      span: spanOf(parts.clock),
    });
  }
  return clock;
}

function stampSpan({ date, clock }: LineParts, raw: string): Span {
  const [first, last] = [date ?? clock, clock ?? date];
  if (first === undefined || last === undefined) return [0, raw.trimEnd().length];
  return [first.startOffset, spanOf(last)[1]];
}

function spanOf(token: { startOffset: number; image: string }): Span {
  return [token.startOffset, token.startOffset + token.image.length];
}

/**
 * Slots come first and take whatever stands there, so that a name may be spelled like any keyword. The missing name
 * is reported instead when the line does not read that way and a slot took an attribute's word, or when the last
 * slot took the very word that the measure behind it goes without: `set out 72 ft`.
 */
function readRest(cursor: Cursor, row: IndexedRow): { slots: Slot[]; items: Item[] } {
  const start = cursor.at;
  const before = cursor.issue;
  const slots = readSlots(cursor, row);
  if (slots.length < row.slots.length && cursor.issue === before) {
    reportMissingSlot(cursor, row, slots.length, cursor.text());
  }
  const items = readItems(cursor, row);
  if (before !== null || (cursor.issue === null && slots.length === 0)) return { slots, items };
  const swallowed = slots.findIndex((slot, index) =>
    cursor.issue === null
      ? index === slots.length - 1 && tookWordOf(items[0], slot)
      : !slot.quoted && findItem(row, slot.text) !== undefined,
  );
  if (swallowed < 0) return { slots, items };
  cursor.issue = null;
  cursor.at = start + swallowed;
  reportMissingSlot(cursor, row, swallowed, cursor.text());
  return { slots: slots.slice(0, swallowed), items: readItems(cursor, row) };
}

function readSlots(cursor: Cursor, row: IndexedRow): Slot[] {
  const slots: Slot[] = [];
  for (const slot of row.slots) readSlot(cursor, slot, slots);
  return slots.slice();
}

function readSlot(cursor: Cursor, slot: SlotRow, read: Slot[]): void {
  do {
    const text = cursor.text();
    if (cursor.done) break;
    if (!cursor.isQuoted() && text.startsWith('"')) {
      openQuote(cursor);
      break;
    }
    const quoted = cursor.isQuoted();
    const span = cursor.spanFrom(cursor.at, cursor.at + 1);
    checkSlot(cursor, slot, text, span);
    read.push({ text: quoted ? unquote(text) : text, quoted, start: span[0], stop: span[1] });
    cursor.at++;
  } while (slot.rest);
}

function checkSlot(cursor: Cursor, slot: SlotRow, text: string, span: Span): void {
  if (slot.of === "date" && !isCalendarDate(text)) {
    cursor.report({ code: "syntax", reason: "bad-date", text, span });
  }
  if (slot.of === "count" && !/^\d+$/u.test(text)) {
    cursor.report({ code: "syntax", reason: "bad-count", text, span });
  }
}

function reportMissingSlot(cursor: Cursor, row: IndexedRow, index: number, before: string): void {
  cursor.report({
    code: "syntax",
    reason: "missing-slot",
    verb: row.verb,
    label: row.slots[index]?.label ?? "name",
    before,
    span:
      before === "" ? cursor.spanFrom(0, cursor.pieces.length) : cursor.spanFrom(cursor.at, cursor.at + 1),
  });
}

function reportVerb(cursor: Cursor, place: LinePlace, vocabulary: Vocabulary, hasClock: boolean): void {
  const word = cursor.text();
  const span = cursor.spanFrom(0, 1);
  const stamp = hasClock ? undefined : misspeltStamp(word);
  if (stamp !== undefined) {
    cursor.report({ code: "syntax", reason: stamp, text: word, span });
    return;
  }
  const elsewhere = (["margin", "trip", "boat"] as const).find((p) => vocabulary.find(p, word) !== undefined);
  if (elsewhere !== undefined) {
    cursor.report({ code: "syntax", reason: "out-of-place", verb: word, belongs: elsewhere, span });
    return;
  }
  const rows = vocabulary.rows.filter(
    (row) => (place === "margin") === !["boat", "trip"].includes(row.place),
  );
  const candidates = rows.flatMap((row) => [row.verb, ...row.aliases]);
  cursor.report({ code: "unknown-word", role: "verb", word, verb: "", candidates, span });
}
