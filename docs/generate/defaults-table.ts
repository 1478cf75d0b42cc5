/** The table of what the depth model takes where the gear book says nothing. */
import type { DefaultRow } from "../../server/physics/default-row.ts";
import { DEFAULTS } from "../../server/physics/defaults.ts";
import { table } from "./generated-parts.ts";

/** Every default with its spread and where it is from. */
export function defaultsTable(): string {
  const rows: readonly (readonly [string, DefaultRow])[] = Object.entries(DEFAULTS);
  return table(
    ["Name", "Value", "Standard deviation", "What it is", "From"],
    rows.map(([key, row]) => [`\`${key}\``, value(row), spread(row), row.says, row.origin]),
  );
}

function value(row: DefaultRow): string {
  return `${Number(row.value.toPrecision(5))} ${row.unit}`.trim();
}

function spread({ sd, spread: kind, unit }: DefaultRow): string {
  if (sd === 0) return "";
  const number = Number(sd.toPrecision(3));
  return kind === "absolute" ? `${number} ${unit}`.trim() : `${number} ${kind}`;
}
