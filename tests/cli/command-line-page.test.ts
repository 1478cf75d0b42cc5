/** What docs/command-line.md shows of the example boat is what the program says of it. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { deepwake } from "./fake-world.ts";

const ROOT = join(import.meta.dirname, "../..");
const EXAMPLE = join(ROOT, "examples/bright-penny");
const page = readFileSync(join(ROOT, "docs/command-line.md"), "utf8");
const files = Object.fromEntries(
  ["bright-penny.gear", "trips/2031-06-21.trip"].map((name) => [
    name,
    readFileSync(join(EXAMPLE, name), "utf8"),
  ]),
);
/** The rows of a table of figures that stands on the page. */
const rows = (pattern: RegExp): string[] => (page.match(pattern) ?? []).map((row) => row.trim());
/** As printed, whatever the widths of the columns. */
const cells = (row: string): string => row.trim().replaceAll(/ {2,}/gu, " | ");

test("rows of depth", async () => {
  const { out } = await deepwake("depth trips/2031-06-21.trip", { files });
  const shown = rows(/^ +\d+ {2}\d\d:\d\d .*$/gmu);
  expect(shown.length).toBeGreaterThan(2);
  expect(out.split("\n").map(cells)).toEqual(expect.arrayContaining(shown.map(cells)));
});

test("rows of letout", async () => {
  const [command = ""] = page.match(/(?<=^deepwake )letout .*--date .*$/mu) ?? [];
  const { out } = await deepwake(command, { files });
  const shown = rows(/^ *\d+ ft {2,}.*$/gmu);
  expect(shown.length).toBeGreaterThan(2);
  expect(out.split("\n").map(cells)).toEqual(expect.arrayContaining(shown.map(cells)));
});

const asked = page.match(/(?<=^deepwake )(?:depth --rig|letout) [^>\n]*/gmu) ?? [];
test.each(asked.filter((line) => !line.includes("--book")))("%s", async (command) => {
  expect(await deepwake(command.trim(), { files })).toMatchObject({ code: 0, err: "" });
});
