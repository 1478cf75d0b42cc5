/** Changes of an amount where the amount itself is wanted: `move P1 +10 ft`, `move P1 20 ft deeper`. */
import type { Cursor } from "./cursor.ts";
import type { Part } from "./journal.ts";
import type { IndexedRow } from "./vocabulary.ts";

/** Lines that a rod's amounts were said before; on others a sign or such a word is no change of anything. */
const ALTERING: ReadonlySet<string> = new Set(["move", "again", "change"]);

/** What is said behind a change, and which way it goes. */
const WAYS: ReadonlyMap<string, 1 | -1> = new Map([
  ...["deeper", "more", "farther", "further", "longer", "down", "lower"].map((word) => [word, 1] as const),
  ...["shallower", "less", "fewer", "closer", "shorter", "up", "higher"].map((word) => [word, -1] as const),
]);

/** A change: how much without its sign, and whether there is more or less afterwards. */
export interface ByHowMuch {
  readonly parts: readonly Part[];
  readonly way: 1 | -1;
}

/** Takes the measure just read from the piece at `first` for a change, and steps over the word that makes it one. */
export function readByHowMuch(
  cursor: Cursor,
  first: number,
  parts: readonly Part[],
  row: IndexedRow,
): ByHowMuch | undefined {
  if (!ALTERING.has(row.verb)) return undefined;
  const sign = cursor.pieces[first]?.image[0];
  const signed = sign === "+" ? 1 : sign === "-" ? -1 : undefined;
  const said = cursor.isQuoted() ? undefined : wayOf(cursor.text(), row);
  if (said !== undefined) cursor.at++;
  const way = said ?? signed;
  if (way === undefined) return undefined;
  return { parts: parts.map(({ number, unit }) => ({ number: number.replace(/^[+-]/u, ""), unit })), way };
}

/** Which way a word behind a measure changes it; undefined for every other word. */
export function wayOf(word: string, row: IndexedRow): 1 | -1 | undefined {
  const lower = word.toLowerCase();
  return ALTERING.has(row.verb) && !row.words.has(lower) ? WAYS.get(lower) : undefined;
}
