/** The nearest known words to one that isn't. */
import { lettersApart } from "./letters-apart.ts";

/** Longer words are nobody's slip, and comparing them takes long. */
const LONGEST_WORD = 40;
/** More candidates than this are not compared, so that the work stays in proportion to the text. */
const MOST_CANDIDATES = 1000;
const MOST_SUGGESTIONS = 3;

/**
 * Up to three candidates that differ in a third of the word's letters at most, all equally near, in the order given.
 * Two swapped letters are one difference, and case is none. Empty when none is near.
 */
export function nearest(word: string, candidates: Iterable<string>): string[] {
  if (word.length > LONGEST_WORD) return [];
  const typed = word.toLowerCase();
  let best = Math.max(1, Math.floor(typed.length / 3));
  let found: string[] = [];
  let compared = 0;
  for (const candidate of candidates) {
    if (++compared > MOST_CANDIDATES) break;
    if (candidate === word || Math.abs(candidate.length - typed.length) > best) continue;
    const apart = lettersApart(typed, candidate.toLowerCase());
    if (apart > best || apart >= Math.max(typed.length, candidate.length)) continue;
    if (apart < best) found = [];
    best = apart;
    if (found.length < MOST_SUGGESTIONS && !found.includes(candidate)) found.push(candidate);
  }
  return found;
}
