/** Every check that says it can be mended offers a mend in the editor, on the wrong line of its page or another; no other does. */
import { describe, expect, test } from "vitest";
import { CATALOG } from "../../server/checks/catalog.ts";
import { readPageExample } from "../checks/page-example.ts";
import { openService, URI } from "./open-service.ts";

/** Where the page shows a line whose mend only its captain knows, one that has a plain mend. */
const MENDABLE: Readonly<Record<string, string>> = {
  syntax: 'trip 2031-06-21 "Bright Penny"\n0514 drift\n',
  "unknown-zone": 'boat "Bright Penny"\n  zone America/Detroid\n',
};

const rows = CATALOG.map((row) => [row.slug, row] as const);

describe.each(rows)("%s", (slug, { isFixable, severities, isOffByDefault }) => {
  const chosen = isOffByDefault === true ? new Map([[slug, severities[0]]]) : new Map();
  const service = openService(MENDABLE[slug] ?? readPageExample(slug, "Wrong"), {
    book: "",
    severities: chosen,
    today: () => "2031-11-25",
  });
  const found = service.diagnostics(URI).filter(({ code }) => code === slug);
  const mends = found.flatMap(({ range }) =>
    service
      .codeActions(URI, range, ["quickfix"])
      .filter(({ diagnostics = [] }) => diagnostics.some(({ code }) => code === slug)),
  );

  test(isFixable ? "offers a mend that changes something" : "promises no mend, and offers none", () => {
    expect(found).not.toEqual([]);
    expect(mends.length > 0).toBe(isFixable);
    for (const { edit } of mends) expect(Object.values(edit?.changes ?? {}).flat()).not.toEqual([]);
  });
});
