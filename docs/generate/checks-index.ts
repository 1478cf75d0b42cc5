/** The index of the checks' pages, from the one table of checks. */
import { CATALOG } from "../../server/checks/catalog.ts";
import type { CheckRow } from "../../server/checks/check.ts";
import { table } from "./generated-parts.ts";

/** A table of every check: its page, how grave it is, what it says, when it keeps quiet, whether it offers a fix. */
export function checksIndex(): string {
  return table(
    ["Check", "Severity", "Says that", "Keeps quiet when", "Fix"],
    CATALOG.map((row) => [
      `[${row.slug}](${row.slug}.md)`,
      severityWords(row),
      row.summary,
      row.quietWhen,
      row.isFixable ? "yes" : "",
    ]),
  );
}

function severityWords({ severities, isOffByDefault }: CheckRow<never>): string {
  const words = severities.join(" or ");
  return isOffByDefault === true ? `${words}, off by default` : words;
}
