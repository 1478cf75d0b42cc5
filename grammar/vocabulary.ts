/**
 * The one table of words: every kind of line, its slots, its attributes, with a plain-language line each.
 * The reader, completion, highlighting and docs/language.md are all driven by it.
 */
import { findUnit } from "./units.ts";
import { EVENT_ROWS } from "./vocabulary/events.ts";
import { GEAR_ROWS } from "./vocabulary/gear.ts";
import type { ItemRow, Place, VerbRow } from "./vocabulary/rows.ts";
import { TRIP_ROWS } from "./vocabulary/trip.ts";

export type { ItemRow, NameKind, Place, SlotRow, ValueType, VerbRow } from "./vocabulary/rows.ts";

/** A row with its words looked up by spelling. */
export interface IndexedRow extends VerbRow {
  readonly words: ReadonlyMap<string, ItemRow>;
  readonly bareItems: readonly ItemRow[];
}

/** Where a line stands: at the margin (or with a clock), or as a property under an opener. */
export type LinePlace = "margin" | "boat" | "trip";

/** A complete vocabulary; `VOCABULARY` is the language's own. */
export interface Vocabulary {
  readonly rows: readonly IndexedRow[];
  /** Finds a row by a verb as typed, in any case. */
  find(place: LinePlace, verb: string): IndexedRow | undefined;
}

const PLACES: Readonly<Record<Place, LinePlace>> = {
  opener: "margin",
  gear: "margin",
  event: "margin",
  boat: "boat",
  trip: "trip",
};

/**
 * Builds a vocabulary from rows and checks the rules that let it grow without changing an old line:
 * no word means two things in one row, and no attribute is spelled like a unit.
 * Throws an Error that names the offending word.
 */
export function defineVocabulary(rows: readonly VerbRow[]): Vocabulary {
  const indexed = rows.map(indexRow);
  const places: Record<LinePlace, Map<string, IndexedRow>> = {
    margin: new Map(),
    boat: new Map(),
    trip: new Map(),
  };
  for (const row of indexed) {
    for (const spelling of [row.verb, ...row.aliases]) {
      const place = places[PLACES[row.place]];
      checkSpelling(spelling);
      if (place.has(spelling)) throw new Error(`two rows are called "${spelling}"`);
      place.set(spelling, row);
    }
  }
  return {
    rows: indexed,
    find: (place, verb) => places[place].get(verb) ?? places[place].get(verb.toLowerCase()),
  };
}

/** Words are compared in lowercase and must never look like a number, a stamp, a text or a comment. */
function checkSpelling(word: string): void {
  if (!/^\p{L}[\p{L}\p{N}-]*$/u.test(word) || word !== word.toLowerCase()) {
    throw new Error(`"${word}" can't be a word of the language`);
  }
}

function indexRow(row: VerbRow): IndexedRow {
  const words = new Map<string, ItemRow>();
  for (const item of row.items) {
    for (const spelling of [item.word, ...item.aliases]) {
      checkSpelling(spelling);
      if (words.has(spelling)) throw new Error(`"${spelling}" means two things in ${row.verb}`);
      if (findUnit(spelling)) throw new Error(`"${spelling}" in ${row.verb} is spelled like a unit`);
      words.set(spelling, item);
    }
  }
  if (words.has("to") && row.items.some((i) => "range" in i.type && i.type.range)) {
    throw new Error(`${row.verb} has ranges and a word "to"`);
  }
  return { ...row, words, bareItems: row.items.filter((i) => i.bare) };
}

/** Looks an attribute or flag up as typed, in any case. */
export function findItem(row: IndexedRow, word: string): ItemRow | undefined {
  return row.words.get(word) ?? row.words.get(word.toLowerCase());
}

/** Every row of the language, in the order of its documentation. */
export const ALL_ROWS: readonly VerbRow[] = [...GEAR_ROWS, ...TRIP_ROWS, ...EVENT_ROWS];

/** The language's own vocabulary. */
export const VOCABULARY: Vocabulary = defineVocabulary(ALL_ROWS);
