import { distance } from "fastest-levenshtein";

/**
 * How many slips make one word of another: a letter too many, missing or wrong, or two neighbors swapped. Swaps are
 * seen where they stand as far from the words' starts. Give both words in one case.
 */
export function lettersApart(typed: string, meant: string): number {
  const plain = distance(typed, meant);
  if (plain < 2) return plain;
  const letters = [...typed];
  const others = [...meant];
  let swaps = 0;
  for (let at = 0; at + 1 < letters.length; at++) {
    const [first = "", second = ""] = [letters[at], letters[at + 1]];
    if (first === second || first !== others[at + 1] || second !== others[at]) continue;
    letters[at] = second;
    letters[++at] = first;
    swaps++;
  }
  return swaps === 0 ? plain : Math.min(plain, swaps + distance(letters.join(""), meant));
}
