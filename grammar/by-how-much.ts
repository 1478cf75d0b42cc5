/** Changes of an amount where the amount itself is wanted: `move P1 +10 ft`, `20 ft deeper`, `up 20 ft`. */
import type { Cursor } from "./cursor.ts";
import type { Part } from "./journal.ts";
import { looksNumeric } from "./number-text.ts";
import type { IndexedRow } from "./vocabulary.ts";

/** Lines that a rod's amounts were said before; on others a sign or such a word is no change of anything. */
const ALTERING: ReadonlySet<string> = new Set(["move", "again", "change"]);

/** What is said behind a change or before it, and which way it goes. */
const WAYS: ReadonlyMap<string, 1 | -1> = new Map([
  ...["deeper", "more", "farther", "further", "longer", "down", "lower"].map((word) => [word, 1] as const),
  ...["shallower", "less", "fewer", "closer", "shorter", "up", "higher"].map((word) => [word, -1] as const),
]);

/** A change: how much without its sign, and whether there is more or less afterwards. */
export interface ByHowMuch {
  readonly parts: readonly Part[];
  readonly way: 1 | -1;
}

/**
 * Steps over a word that makes a change of the measure behind it, as in `up 20 ft` and `up by 20 ft`. Undefined, and
 * nothing stepped over, where no number follows.
 */
export function readWay(cursor: Cursor, row: IndexedRow): 1 | -1 | undefined {
  const way = cursor.isQuoted() ? undefined : wayOf(cursor.text(), row);
  if (way === undefined) return undefined;
  const words = cursor.text(1).toLowerCase() === "by" ? 2 : 1;
  if (!looksNumeric(cursor.text(words))) return undefined;
  cursor.at += words;
  return way;
}

/**
 * Takes the measure just read from the piece at `first` for a change, and steps over a word behind it that makes it
 * one. `way` is what a word before the measure said.
 */
export function readByHowMuch(
  cursor: Cursor,
  first: number,
  parts: readonly Part[],
  row: IndexedRow,
  way: 1 | -1 | undefined,
): ByHowMuch | undefined {
  if (!ALTERING.has(row.verb)) return undefined;
  const sign = cursor.pieces[first]?.image[0];
  const signed = sign === "+" ? 1 : sign === "-" ? -1 : undefined;
  const behind = cursor.isQuoted() || way !== undefined ? undefined : wayOf(cursor.text(), row);
  if (behind !== undefined) cursor.at++;
  const said = way ?? behind ?? signed;
  if (said === undefined) return undefined;
  return {
    parts: parts.map(({ number, unit }) => ({ number: number.replace(/^[+-]/u, ""), unit })),
    way: said,
  };
}

/** Which way a word beside a measure changes it; undefined for every other word. */
export function wayOf(word: string, row: IndexedRow): 1 | -1 | undefined {
  const lower = word.toLowerCase();
  return ALTERING.has(row.verb) && !row.words.has(lower) ? WAYS.get(lower) : undefined;
}
