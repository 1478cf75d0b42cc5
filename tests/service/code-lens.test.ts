/** What stands over each trip. */
import { expect, test } from "vitest";
import { LET_OUT_TABLE_COMMAND } from "../../server/service/code-lens.ts";
import { BOOK, MORNING, openService, URI } from "./open-service.ts";

const ALL = new Set([LET_OUT_TABLE_COMMAND]);
const RETURNED = `${MORNING}06:18 again P1\n11:30 pull all\n11:35 return\n`;
const EMPTY = 'trip 2031-06-22 "Bright Penny"\n';

/** Each lens as `line: words`. */
function drawn(text: string, commands: ReadonlySet<string> = ALL, book?: string): string[] {
  const service = openService(text, book === undefined ? {} : { book });
  return service.codeLenses(URI, commands).map((lens) => {
    expect(lens.command).toBeUndefined();
    return `${lens.range.start.line}: ${service.resolveCodeLens(lens).command?.title}`;
  });
}

// C1 fishes 6 h 16 min; P1 40 min, then 5 h 12 min: 12 h 8 min.
test("over each trip its hours, fish and rod-hours, and the table", () => {
  expect(drawn(RETURNED + EMPTY)).toEqual([
    "0: 6 h 35 min, 1 fish, 12.1 rod-hours",
    "0: Let-out table",
    "14: no fish",
    "14: Let-out table",
  ]);
});

test("of cast or jigged rods, angler-hours", () => {
  const day = `${EMPTY}05:00 set J1 anglers 3\n07:00 pull J1\n`;
  expect(drawn(day, ALL, `${BOOK}rig J1 jig\n`)[0]).toBe("0: 2 h, no fish, 6 angler-hours");
});

test("no table without rigs, nor for a client that can't show one", () => {
  expect(drawn(EMPTY, ALL, "")).toEqual(["0: no fish"]);
  expect(drawn(EMPTY, new Set())).toEqual(["0: no fish"]);
});

test("the summary calls nothing, the table its command for the trip's line", () => {
  const service = openService(EMPTY);
  const [summary, table] = service.codeLenses(URI, ALL).map(service.resolveCodeLens);
  expect(summary?.command?.command).toBe("");
  expect(table?.command).toMatchObject({ command: "deepwake.letOutTable", arguments: [URI, 0] });
});

test("a lens whose trip is gone stays without words", () => {
  const service = openService(EMPTY);
  const [lens] = service.codeLenses(URI, ALL);
  if (lens === undefined) throw new Error("no lens");
  service.update(URI, 2, `# moved\n${EMPTY}`);
  expect(service.resolveCodeLens(lens)).toEqual(lens);
});
