/** The outline: trips with their events, boats with their gear. */

import { expect, test } from "vitest";
import type { DocumentSymbol } from "vscode-languageserver-types";
import { dedent } from "../harness/markers.ts";
import { openService, URI } from "./open-service.ts";

/** The outline as text: a line a symbol, indented as nested, with its detail and the lines it spans. */
function drawSymbols(symbols: readonly DocumentSymbol[], indent = ""): string[] {
  return symbols.flatMap(({ name, detail, range, children = [] }) => [
    `${indent}${name}${detail === "" ? "" : ` (${detail})`} ${range.start.line}-${range.end.line}`,
    ...drawSymbols(children, `${indent}  `),
  ]);
}

function checkSymbols(text: string, wanted: string): void {
  const drawn = drawSymbols(openService(dedent(text)).documentSymbols(URI));
  expect(drawn.join("\n")).toBe(dedent(wanted));
}

test("events stand under their trip, properties and notes within it", () => {
  checkSymbols(
    `
    # remarks
    trip 2031-06-21 "Bright Penny" charter
      anglers 4

    05:14 set C1 out 90 ft
    ~07:15 strike PB
    note
      05:18 set P1

    trip 2031-06-22 "Bright Penny"
    05:00 depart
    what is this
    `,
    `
    2031-06-21 Bright Penny 1-7
      set C1 (05:14) 4-4
      strike PB (07:15) 5-5
      note 6-6
    2031-06-22 Bright Penny 9-11
      depart (05:00) 10-10
    `,
  );
});

test("gear stands under its boat, dated lines with their date", () => {
  checkSymbols(
    `
    lure loose-spoon spoon
    boat "Bright Penny"
      water fresh
    rig C1 downrigger
    2031-08-09 rig C1 downrigger
    `,
    `
    lure loose-spoon 0-0
    boat Bright Penny 1-4
      rig C1 3-3
      rig C1 (2031-08-09) 4-4
    `,
  );
});

test("a trip that isn't named yet has a name all the same", () => {
  checkSymbols("trip", "trip 0-0");
  checkSymbols('trip "" ""', "trip 0-0");
});
