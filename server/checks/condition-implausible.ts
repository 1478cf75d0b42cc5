import { speciesName } from "../analysis/bites.ts";
import { findItem, hasWord, measureOf, slotName } from "../model/quantities.ts";
import { findSpecies } from "../model/species.ts";
import { CONDITION_IMPLAUSIBLE } from "./catalog/day.ts";
import type { LineRule } from "./check.ts";
import { valuePlace } from "./edits.ts";

/** Where the species stands on a line. */
const SPECIES_SLOT: Readonly<Record<string, number>> = { catch: 1, dock: 0 };

/**
 * Weight over length cubed, kg/m³: ten times Fulton's condition factor, which is 0.8 to 2 for salmon and trout (Barnham
 * and Baxter 1998, Condition factor, K, for salmonid fish). Half of what a gar has and twice what a sunfish has bound
 * it for any fish (judgement).
 */
const LEAST_KG_M3 = 1.5;
const MOST_KG_M3 = 50;

/** Flags a weight and a length of one fish that can't both be so. */
export const conditionImplausible: LineRule = ({ report }, trip, { line, lineIndex }) => {
  const { gear } = trip;
  const slot = SPECIES_SLOT[line.verb];
  if (slot === undefined || hasWord(line, "count")) return;
  const [weight, length] = [findItem(line, "weight"), findItem(line, "length")];
  const massKg = measureOf(line, "weight", "mass", gear.defaults);
  const lengthM = measureOf(line, "length", "length", gear.defaults);
  if (weight === undefined || length === undefined || massKg === undefined || lengthM === undefined) return;
  const species = findSpecies(speciesName(trip, slotName(line, slot) ?? ""));
  const isTooBig = species !== undefined && (massKg > species.maxMassKg || lengthM > species.maxLengthM);
  if (isTooBig || massKg <= 0 || lengthM <= 0) return;
  const cubeM3 = lengthM ** 3;
  const side = massKg > MOST_KG_M3 * cubeM3 ? "heavy" : massKg < LEAST_KG_M3 * cubeM3 ? "light" : undefined;
  if (side === undefined) return;
  const limitKg = (side === "heavy" ? MOST_KG_M3 : LEAST_KG_M3) * cubeM3;
  const said = (item: typeof weight): string => line.raw.slice(item.valueStart, item.stop);
  const data = { gear, weight: said(weight), length: said(length), side, limitKg, lengthM } as const;
  const [first, last] = [weight, length].sort((a, b) => a.start - b.start);
  const place = { ...valuePlace(lineIndex, weight), start: first?.start ?? 0, stop: last?.stop ?? 0 };
  report(CONDITION_IMPLAUSIBLE, place, data);
};
