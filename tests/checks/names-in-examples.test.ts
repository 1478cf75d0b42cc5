/** Checks and thresholds that examples name are those that there are. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { ALL_ROWS } from "../../grammar/vocabulary.ts";
import { findCheck } from "../../server/checks/catalog.ts";
import { findThreshold } from "../../server/model/thresholds.ts";

const project = join(import.meta.dirname, "../..");
const NAMED = /(?:^\s*|`)(quiet|threshold) ([a-z][a-z-]*)/gmu;

function pagesIn(folder: string): string[] {
  const path = join(project, folder);
  return readdirSync(path)
    .filter((name) => /\.(?:md|gear|trip)$/u.test(name))
    .map((name) => readFileSync(join(path, name), "utf8"));
}

/** Pages that name what there isn't, on purpose. */
const isWrongOnPurpose = (page: string): boolean => /^# unknown-(?:check|threshold)\n/u.test(page);

const texts = [
  ...ALL_ROWS.map((row) => row.example),
  ...["docs", "docs/checks", "docs/decisions", "examples"].flatMap(pagesIn),
].filter((text) => !isWrongOnPurpose(text));

const named = [...new Set(texts.flatMap((text) => [...text.matchAll(NAMED)].map((m) => `${m[1]} ${m[2]}`)))];

test("examples name checks and thresholds", () => {
  expect(named).toEqual(expect.arrayContaining(["quiet reading-stale", "threshold reading-stale"]));
});

test.each(named)("%s", (pair) => {
  const [verb, name = ""] = pair.split(" ");
  expect(verb === "quiet" ? findCheck(name) : findThreshold(name)).toBeDefined();
});
