/** The table of checks is whole: each row has its page, whose examples say what they claim, its cases and its fix. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { CATALOG } from "../../server/checks/catalog.ts";
import type { CheckRow } from "../../server/checks/check.ts";
import { findingsIn } from "./check-findings.ts";
import { readPageExample } from "./page-example.ts";

const PAGES = join(import.meta.dirname, "../../docs/checks");
const HEADINGS = ["What it means", "Wrong", "Right", "How to fix"];

const cases = readdirSync(import.meta.dirname)
  .filter((name) => name.endsWith(".test.ts"))
  .map((name) => readFileSync(join(import.meta.dirname, name), "utf8"))
  .join("\n");

const rows = CATALOG.map((row) => [row.slug, row] as const);

const readPage = (slug: string): string => readFileSync(join(PAGES, `${slug}.md`), "utf8");

/** Slugs found in a file that stands alone. */
function slugsIn(text: string, row: CheckRow<never>): string[] {
  const around = row.isOffByDefault === true ? { books: {}, on: row.slug } : { books: {} };
  return [...new Set(findingsIn(text, around).map((finding) => finding.slug))];
}

test("slugs are unique and sorted", () => {
  const slugs = CATALOG.map((row) => row.slug);
  expect(slugs).toEqual([...new Set(slugs)].sort());
});

test("every page is about a check", () => {
  const pages = readdirSync(PAGES).filter((name) => name !== "README.md");
  expect(pages.sort()).toEqual(CATALOG.map((row) => `${row.slug}.md`));
});

describe.each(rows)("%s", (slug, row) => {
  test("says what it is in one line", () => {
    expect(slug).toMatch(/^[a-z]+(-[a-z]+)*$/u);
    expect(row.summary).toMatch(/^[A-Z].*\.$/u);
    expect(new Set(row.severities).size).toBe(row.severities.length);
  });

  test("has a page with its headings", () => {
    const page = readPage(slug);
    expect(page.split("\n")[0]).toBe(`# ${slug}`);
    expect([...page.matchAll(/^## (.+)$/gmu)].map((match) => match[1])).toEqual(HEADINGS);
  });

  test("is all that the page's wrong example gives, and its right one gives nothing", () => {
    expect(slugsIn(readPageExample(slug, "Wrong"), row)).toEqual([slug]);
    expect(slugsIn(readPageExample(slug, "Right"), row)).toEqual([]);
  });

  test("occurs in a case", () => {
    expect(cases).toMatch(new RegExp(`(?:\\^ |=== ")${slug}(?![a-z-])`, "u"));
  });
});

const fixable = CATALOG.filter((row) => row.isFixable).map((row) => row.slug);

test.each(fixable)("%s has a test of its fix", (slug) => {
  expect(cases).toMatch(new RegExp(`check\\w*Fix\\w*\\(\\s*"${slug}"`, "u"));
});
