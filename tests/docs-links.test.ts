/** Links between pages: every relative one leads to a file, and to a heading of it where it names one. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { expect, test } from "vitest";

const ROOT = join(import.meta.dirname, "..");

const PAGES = [
  ...["README.md", "DEVELOPERS.md", "CHANGELOG.md"],
  ...["docs", "tests", "examples"].flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".md") && !/node_modules|[\\/]\./u.test(name))
      .map((name) => join(folder, name)),
  ),
];

/** A page's text without its examples of code. */
const proseOf = (path: string): string =>
  readFileSync(path, "utf8")
    .replaceAll(/^```[\s\S]*?^```$/gmu, "")
    .replaceAll(/`[^`\n]*`/gu, "code");

/** The names that headings can be linked by. */
function anchorsOf(path: string): Set<string> {
  const headings = readFileSync(path, "utf8").matchAll(/^#+ (.+)$/gmu);
  const names = [...headings].map(([, title = ""]) =>
    title
      .toLowerCase()
      .replaceAll(/[^\p{L}\p{N} _-]/gu, "")
      .replaceAll(" ", "-"),
  );
  return new Set(names);
}

/** Links of a page that lead nowhere. */
function deadLinks(page: string, prose = proseOf(join(ROOT, page))): string[] {
  const targets = [...prose.matchAll(/\]\(([^)\s]+)\)/gu)].map(([, target = ""]) => target);
  return targets.filter((target) => !/^[a-z]+:/u.test(target) && !leadsSomewhere(page, target));
}

function leadsSomewhere(page: string, target: string): boolean {
  const [path = "", anchor] = target.split("#");
  const file = path === "" ? join(ROOT, page) : join(ROOT, dirname(page), path);
  if (relative(ROOT, file).startsWith("..") || !existsSync(file)) return false;
  return anchor === undefined || anchorsOf(file).has(anchor);
}

test.each(PAGES)("%s", (page) => {
  expect(deadLinks(page)).toEqual([]);
});

test("a link can be dead", () => {
  const prose = "[one](docs/no-such.md) [two](#no-such-heading) [three](../outside.md) [four](#cautions)";
  expect(deadLinks("README.md", prose)).toEqual(["docs/no-such.md", "#no-such-heading", "../outside.md"]);
});
