/** Lengths of leadcore without a unit: counted in colors by everybody, and feet by the book's units. Never guessed. */
import type { Part, ReadLine } from "../../grammar/journal.ts";
import type { Gear } from "./gear-types.ts";
import { matchMaybe } from "./match-name.ts";
import { findItem, hasWord, slotName } from "./quantities.ts";

/** Nobody lets out that few feet of leadcore, and nobody has more colors (judgement). */
const MOST_COLORS = 20;

/** True for `set PB out 5` on a leadcore rig, and for `holds 10` on its line in the book. */
export function isColorsOrFeet(line: ReadLine, word: string, gear: Gear | undefined): boolean {
  if (word !== "out" && word !== "holds") return false;
  const value = findItem(line, word)?.value;
  return value?.kind === "quantity" && isFew(value.parts) && isLeadcore(line, gear);
}

function isFew(parts: readonly Part[]): boolean {
  const [only] = parts;
  return only !== undefined && parts.length === 1 && only.unit === null && isCount(Number(only.number));
}

const isCount = (number: number): boolean => number > 0 && number <= MOST_COLORS;

function isLeadcore(line: ReadLine, gear: Gear | undefined): boolean {
  if (line.verb === "rig") return hasWord(line, "leadcore");
  const rig = gear === undefined ? undefined : matchMaybe(gear.rigs, slotName(line));
  return rig !== undefined && gear?.rigs.get(rig)?.kind === "leadcore";
}
