/** The tables of docs/settings.md: thresholds of the checks, and what the depth model assumes. */
import { THRESHOLDS } from "../../server/model/thresholds.ts";
import type { DefaultRow } from "../../server/physics/default-row.ts";
import { DEFAULTS } from "../../server/physics/defaults.ts";
import { ALL_HINTS, HINT_KINDS } from "../../server/service/hint-kinds.ts";
import { table } from "./generated-parts.ts";

/** Every threshold, as a `threshold` line writes it. */
export function thresholdTable(): string {
  return table(
    ["Threshold", "Default", "What it is", "From"],
    Object.values(THRESHOLDS).map((row) => [`\`${row.name}\``, row.written, row.doc, row.origin]),
  );
}

/** Every setting of the editor; those that come from tables as they are there. */
export function settingsTable(): string {
  const hints = HINT_KINDS.map(({ name, doc }) => [
    `\`deepwake.hints.${name}\``,
    ALL_HINTS[name] ? "on" : "off",
    doc,
  ]);
  return table(
    ["Setting", "Default", "What it does"],
    [
      ...hints,
      [
        "`deepwake.checks`",
        "nothing set",
        'The severity of single checks: `{ "reading-stale": "off", "unknown-lure": "warning" }`.',
      ],
      [
        "`deepwake.check.wholeWorkspace`",
        "on",
        "Checks every journal and gear book of the workspace in the background; errors and warnings of files that aren't open are listed too.",
      ],
      [
        "`deepwake.thresholds.NAME`",
        "as in the table above",
        'Every threshold by its name, for all boats whose book does not state it: `"45 min"`; a bare number where it has no unit.',
      ],
      ["`deepwake.trace.server`", "off", "Writes the talk between editor and server to the output panel."],
    ],
  );
}

/** Every value the depth model takes when the book says nothing. */
export function defaultTable(): string {
  const rows: [string, DefaultRow][] = Object.entries(DEFAULTS);
  return table(
    ["Value", "Default", "Spread (one standard deviation)", "What it is", "From"],
    rows.map(([key, row]) => [
      `\`${key}\``,
      `${rounded(row.value)} ${row.unit}`.trim(),
      spreadWords(row),
      row.says,
      row.origin,
    ]),
  );
}

function spreadWords({ sd, spread, unit }: DefaultRow): string {
  if (sd === 0) return "";
  if (spread === "relative") return `${rounded(sd * 100)} %`;
  return spread === "absolute" ? `${rounded(sd)} ${unit}`.trim() : `a factor of ${rounded(Math.exp(sd))}`;
}

function rounded(value: number): string {
  return String(Number(value.toPrecision(4)));
}
