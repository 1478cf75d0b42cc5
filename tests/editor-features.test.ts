/** The table of editor features: every cell names a test that is there and runs, or says why there can be none. */
import { readFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { expect, test } from "vitest";

const PAGE = join(import.meta.dirname, "..", "docs", "editor-features.md");
const SUITE = join(import.meta.dirname, "editor", "suite");
/** The module that lists the tests of each editor, by the column. */
const ENTRIES = { Desktop: "index.ts", Browser: "index-web.ts" } as const;

const [header = [], , ...rows] = readFileSync(PAGE, "utf8")
  .split("\n")
  .filter((line) => line.startsWith("|"))
  .map((line) =>
    line
      .split("|")
      .slice(1, -1)
      .map((cell) => cell.trim()),
  );

const linksIn = (cell: string): string[] =>
  [...cell.matchAll(/\]\(([^)]+)\)/gu)].map(([, target = ""]) => join(dirname(PAGE), target));

/** Every file of the suite that a module reads, itself too. */
function readBy(module: string): Set<string> {
  const read = new Set([module]);
  for (const file of read)
    for (const [, name = ""] of readFileSync(join(SUITE, file), "utf8").matchAll(/from "\.\/([\w-]+\.ts)"/gu))
      read.add(name);
  return read;
}

test("the table has a column for each editor, and rows", () => {
  expect(header).toEqual(["Feature", "Desktop", "Browser", "Any client"]);
  expect(rows.length).toBeGreaterThan(20);
});

test.each(rows)("%s: every cell names its test", (_, ...cells) => {
  expect(cells).toHaveLength(3);
  for (const cell of cells) if (linksIn(cell).length === 0) expect(cell).toMatch(/^not applicable: \w+/u);
});

test.each(["Desktop", "Browser"] as const)("the tests in the column %s run there", (column) => {
  const run = readBy(ENTRIES[column]);
  const linked = rows.flatMap((row) => linksIn(row[header.indexOf(column)] ?? ""));
  const inEditor = linked.filter((file) => dirname(file) === SUITE).map((file) => basename(file));
  expect(inEditor.length).toBeGreaterThan(15);
  expect(inEditor.filter((file) => !run.has(file))).toEqual([]);
});
