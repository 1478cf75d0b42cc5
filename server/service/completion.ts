/** Completion: what may stand at the cursor, from the vocabulary and the books, the last value on that rig first. */
import { type CompletionItem, CompletionItemKind, type Position } from "vscode-languageserver-types";
import { isRead } from "../../grammar/is-read.ts";
import { type Block, readLine } from "../../grammar/read-line.ts";
import { type LinePlace, VOCABULARY } from "../../grammar/vocabulary.ts";
import { ownerOf } from "../checks/owners.ts";
import { itemOffers, unitOffers, valueOffers } from "./item-completion.ts";
import { namesOf } from "./name-completion.ts";
import { nextTimes } from "./next-times.ts";
import { itemsAt, type Offer } from "./offers.ts";
import { openSlot, openWord } from "./open-word.ts";
import type { Snapshot } from "./snapshot.ts";
import { type TypedWord, typedWord, unitOf } from "./typed-word.ts";
import type { Typing } from "./typing.ts";

/**
 * What may follow at a position, best first; nothing in comments and in the text of notes. `nowMs` is the clock, UTC
 * ms, for the time of a new line; without it times follow from the lines above alone.
 */
export function completion(
  snapshot: Snapshot,
  { line: lineIndex, character }: Position,
  nowMs?: number,
): CompletionItem[] {
  const line = snapshot.parse.journal.lines[lineIndex];
  const block = snapshot.parse.blocks[lineIndex] ?? "margin";
  if (line === undefined || line.kind === "note-text") return [];
  if (block === "note" && /^\s/u.test(line.raw)) return [];
  const typed = typedWord(line.raw, character);
  if (typed === undefined) return [];
  const unit = unitOf(typed);
  const units = unit === undefined ? [] : offersAt(snapshot, lineIndex, block, unit, unitOffers);
  const place = { uri: snapshot.uri, line: lineIndex };
  if (unit !== undefined && units.length > 0) return itemsAt(units, place, unit);
  const times = timeOffers(snapshot, lineIndex, block, typed, nowMs);
  return itemsAt([...times, ...offersAt(snapshot, lineIndex, block, typed, wordOffers)], place, typed);
}

function offersAt(
  snapshot: Snapshot,
  lineIndex: number,
  block: Block,
  { before, word }: TypedWord,
  ask: (typing: Typing) => Offer[],
): Offer[] {
  const { line, issue } = readLine(before, "", block, VOCABULARY);
  if (!isRead(line)) return isStamp(before, word) ? verbOffers(snapshot, lineIndex, before, block) : [];
  const row = VOCABULARY.find(line.kind === "property" ? line.block : "margin", line.verb);
  if (row === undefined) return [];
  return ask({
    snapshot,
    lineIndex,
    line,
    row,
    issue,
    after: wordsAfter(snapshot, lineIndex, before.length),
  });
}

/** Attributes that stand behind the cursor already. */
function wordsAfter(snapshot: Snapshot, lineIndex: number, from: number): readonly string[] {
  const line = snapshot.parse.journal.lines[lineIndex];
  if (line === undefined || !isRead(line)) return [];
  return line.items.flatMap(({ start, word }) => (start > from && word !== "" ? [word] : []));
}

/** Times that a line of a trip may start with, at its start; those that what is typed can still become. */
function timeOffers(
  snapshot: Snapshot,
  lineIndex: number,
  block: Block,
  { before, word }: TypedWord,
  nowMs: number | undefined,
): Offer[] {
  // What is typed behind the start, as nearly everything is, is not worth looking at the trip for.
  if (before.trim() !== "" || placeOf(before, block) !== "margin") return [];
  const owner = ownerOf(snapshot.analysis, lineIndex);
  if (owner?.trip === undefined || owner.openerIndex === lineIndex) return [];
  return nextTimes(owner.trip.trip, lineIndex, nowMs).filter(({ label }) => label.startsWith(word));
}

/** Only a date and a clock stand before the word, and the word is none of the two. */
function isStamp(before: string, word: string): boolean {
  return /^\s*(?:~?\d[\d:Z+-]*\s+)*$/u.test(before) && !/^[~\d]/u.test(word);
}

function wordOffers(typing: Typing): Offer[] {
  const { snapshot, lineIndex, line, row } = typing;
  const missing = openSlot(line, row);
  if (missing !== undefined) return namesOf(snapshot, lineIndex, missing.of, line, row.verb);
  const open = openWord(line, row);
  if (open === "range") return [];
  if (open !== undefined) return valueOffers(snapshot, lineIndex, open, line);
  return [...unitOffers(typing), ...itemOffers(typing)];
}

function placeOf(before: string, block: Block): LinePlace {
  const hasClock = /\d:\d\d/u.test(before);
  return /^\s/u.test(before) && !hasClock && block !== "note" ? block : "margin";
}

/** Lines that may start here: in a trip its events first, in a book the gear, in an empty file what opens one. */
function verbOffers(snapshot: Snapshot, lineIndex: number, before: string, block: Block): Offer[] {
  const place = placeOf(before, block);
  const rows = VOCABULARY.rows.filter((row) => VOCABULARY.find(place, row.verb) === row);
  const order = before.includes(":") ? ["event"] : verbOrder(snapshot, lineIndex);
  const wanted =
    place === "margin" ? order.flatMap((kind) => rows.filter((row) => row.place === kind)) : rows;
  return wanted.map((row) => ({
    label: row.verb,
    kind: CompletionItemKind.Keyword,
    detail: row.doc,
    about: { of: "verb", place, verb: row.verb },
  }));
}

function verbOrder(snapshot: Snapshot, lineIndex: number): readonly string[] {
  const owner = ownerOf(snapshot.analysis, lineIndex - 1);
  if (owner === undefined) return ["opener", "gear"];
  return owner.trip === undefined ? ["gear", "opener"] : ["event", "opener", "gear"];
}
