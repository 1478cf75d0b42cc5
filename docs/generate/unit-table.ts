/** The table of units, with their exact factors. */
import { SI_UNIT, UNITS, type UnitRow } from "../../grammar/units.ts";
import { table } from "./generated-parts.ts";

/** Every unit: how it is written, how else it is read, and what it is. */
export function unitTable(): string {
  return table(
    ["Unit", "Measures", "Also read", "One is"],
    UNITS.map((unit) => [`\`${unit.unit}\``, measures(unit), aliases(unit), worth(unit)]),
  );
}

function measures({ dimension, doc }: UnitRow): string {
  return `${dimension.replace("linear-density", "weight per length")}: ${doc}`;
}

function aliases(unit: UnitRow): string {
  return unit.aliases.map((alias) => `\`${alias}\``).join(" ");
}

function worth({ dimension, factor, shift }: UnitRow): string {
  const si = SI_UNIT[dimension];
  if (shift !== 0) return "(degrees − 32) × 5/9 °C";
  return `${Number(factor.toPrecision(10))} ${si}`;
}
