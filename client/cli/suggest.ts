/** The word that was probably meant on the command line. */
import { distance } from "fastest-levenshtein";

/** Two letters off, as when two are swapped, or a third of a long word. */
const MOST_APART = 2;

/** The nearest of a few known words; undefined when none is near. */
export function suggest(word: string, known: Iterable<string>): string | undefined {
  let near: string | undefined;
  let best = Math.min(word.length - 1, Math.max(MOST_APART, Math.floor(word.length / 3))) + 1;
  for (const candidate of known) {
    const apart = distance(word.toLowerCase(), candidate.toLowerCase());
    if (apart >= best) continue;
    best = apart;
    near = candidate;
  }
  return near;
}

/** The same as a half-sentence behind what is wrong: `; did you mean check?`, or nothing. */
export function didYouMean(word: string, known: Iterable<string>): string {
  const near = suggest(word, known);
  return near === undefined ? "" : `; did you mean ${near}?`;
}
