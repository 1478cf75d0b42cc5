/** What was meant by a fish's weight or length that is beyond belief: another unit, or a point that is missing. */
import { findUnit } from "../../grammar/units.ts";
import { type PlainMeasure, siOf, withPoint } from "./numbers.ts";

/** Units that are typed for one another, with the biggest number anyone writes in them. */
const MISTAKEN: Readonly<Record<string, readonly { unit: string; most: number }[]>> = {
  lb: [{ unit: "oz", most: 32 }],
  kg: [
    { unit: "lb", most: 60 },
    { unit: "g", most: 20_000 },
    { unit: "oz", most: 32 },
  ],
  g: [],
  oz: [],
  in: [
    { unit: "cm", most: 150 },
    { unit: "mm", most: 1500 },
  ],
  ft: [
    { unit: "in", most: 60 },
    { unit: "cm", most: 150 },
  ],
  m: [
    { unit: "cm", most: 150 },
    { unit: "mm", most: 1500 },
  ],
  cm: [{ unit: "mm", most: 1500 }],
};

/** A fish smaller than this share of the biggest is no likelier than what was typed (judgement). */
const LEAST_SHARE = 0.02;

/** The likeliest measure meant; undefined where nothing simple explains the number. */
export function meantFishMeasure(typed: PlainMeasure, mostSi: number): PlainMeasure | undefined {
  const isBelieved = (measure: PlainMeasure): boolean =>
    siOf(measure) <= mostSi && siOf(measure) >= LEAST_SHARE * mostSi;
  const units = MISTAKEN[findUnit(typed.unit)?.unit ?? ""] ?? [];
  const swapped = units
    .filter(({ most }) => Number(typed.number) <= most)
    .map(({ unit }) => ({ number: typed.number, unit }))
    .find(isBelieved);
  const pointed = withPoint(typed);
  return swapped ?? (pointed !== undefined && isBelieved(pointed) ? pointed : undefined);
}
