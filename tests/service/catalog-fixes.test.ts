/** Every check that says it can be mended offers a mend in the editor, on the wrong line of its page or another; no other does. */
import { describe, expect, test } from "vitest";
import { CATALOG } from "../../server/checks/catalog.ts";
import { readPageExample } from "../checks/page-example.ts";
import { openService, URI } from "./open-service.ts";

/** Where the page shows a line whose mend only its captain knows, one that has a plain mend. */
const MENDABLE: Readonly<Record<string, string>> = {
  syntax: 'trip 2031-06-21 "Bright Penny"\n0514 drift\n',
  "depth-disagrees": `boat "Bright Penny"
  units ft mph F lb in
  zone America/Detroit
cable lead-27 leadcore diameter 0.85 mm
lure glow-spoon spoon 4 in
rig PB leadcore port cable lead-27 leader 30 ft probe 0 ft
2031-05-01 calibrate PB drag 1.2 drag-error 0.06 counter-scale 1 counter-scale-error 0.01 counter-offset 0 ft counter-offset-error 1 ft
trip 2031-06-21 "Bright Penny"
05:00 set PB out 300 ft lure glow-spoon
05:10 probe PB depth 29 ft speed 2.2 mph
05:20 touch PB out 240 ft bottom 32 ft
05:30 move PB out 240 ft
05:40 probe PB depth 24 ft speed 2.2 mph
`,
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
