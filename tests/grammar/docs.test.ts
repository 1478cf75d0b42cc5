/** The pages about the language: generated parts are up to date, and every example is read as the page says. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import * as z from "zod";
import { DOCUMENTS } from "../../docs/generate/documents.ts";
import { fillParts, table } from "../../docs/generate/generated-parts.ts";
import { formatText } from "../../grammar/format.ts";
import { parse } from "../../grammar/parse.ts";
import { ALL_ROWS } from "../../grammar/vocabulary.ts";
import { EXAMPLES } from "../properties/grammar-settings.ts";
import { describeIssues } from "./describe-issue.ts";

const project = join(import.meta.dirname, "../..");
const read = (path: string): string => readFileSync(join(project, path), "utf8");

describe("generated documents are up to date, else run `npm run docs`", () => {
  test.each(DOCUMENTS.map((document) => [document.path, document] as const))("%s", (path, { render }) => {
    const current = existsSync(join(project, path)) ? read(path) : "";
    if (render(current) !== current) throw new Error(`${path} is stale: run \`npm run docs\``);
  });
});

/** The fences of a page in one language, with the line each starts at. */
function fences(path: string, language: string): [where: string, text: string][] {
  const page = read(path);
  return [...page.matchAll(/^( *)```(\S*)\n([\s\S]*?)\n\1```$/gmu)].flatMap((match) => {
    const [, indent = "", name, body = ""] = match;
    if (name !== language) return [];
    const line = page.slice(0, match.index).split("\n").length;
    return [[`${path}:${line}`, body.replaceAll(new RegExp(`^${indent}`, "gmu"), "")]];
  });
}

const PAGES = [
  "README.md",
  "docs/language.md",
  "docs/format.md",
  "docs/settings.md",
  "docs/decisions/0001-language.md",
];
const right = PAGES.flatMap((path) => fences(path, "deepwake"));
const wrong = PAGES.flatMap((path) => fences(path, "deepwake-wrong"));

test("the pages have examples, a right one for every kind of line and wrong ones", () => {
  expect(right.length).toBeGreaterThan(ALL_ROWS.length);
  expect(wrong.length).toBeGreaterThanOrEqual(8);
});

test.each(right)("the example at %s is read and is canonical", (_, text) => {
  const parsed = parse(text);
  expect(describeIssues(parsed)).toEqual([]);
  expect(formatText(parsed)).toBe(text);
});

test.each(wrong)("every line of the wrong example at %s has an issue", (_, text) => {
  const { journal, issues } = parse(text);
  for (const [index, line] of journal.lines.entries()) {
    if (line.kind !== "blank" && line.kind !== "comment") expect(issues[index], line.raw).not.toBeNull();
  }
});

describe("the typed form's page", () => {
  const [text] = fences("docs/format.md", "");
  const [json] = fences("docs/format.md", "json");

  test("shows what its example is read as", () => {
    if (text === undefined || json === undefined) throw new Error("the example was not found");
    expect(JSON.parse(json[1])).toEqual(parse(`${text[1]}\n`).journal);
  });

  test("has a schema that takes every example, and nothing else", () => {
    const schema = z.fromJSONSchema(JSON.parse(read("docs/schemas/journal.schema.json")));
    for (const example of EXAMPLES) {
      const { journal } = parse(example);
      expect(schema.safeParse(journal).success).toBe(true);
      expect(schema.safeParse({ ...journal, format: "deepwake/0" }).success).toBe(false);
      expect(schema.safeParse({ ...journal, lines: [{ kind: "blank", raw: "" }] }).success).toBe(false);
    }
  });
});

describe("parts of a page", () => {
  const parts = { one: () => "1\n" };
  const full = "a\n<!-- generated: one -->\n\n1\n\n<!-- end of one -->\nb";

  test("are filled, again and again", () => {
    expect(fillParts("a\n<!-- generated: one -->\nold\n<!-- end of one -->\nb", parts)).toBe(full);
    expect(fillParts(full, parts)).toBe(full);
  });

  test.each([
    ["is missing", "a"],
    ["is unknown", `${full}\n<!-- generated: two -->\n<!-- end of two -->`],
    ["does not end", `${full}\n<!-- generated: one -->`],
    ["is there twice", `${full}\n${full}`],
  ])("throw when one %s", (_, text) => {
    expect(() => fillParts(text, parts)).toThrow();
  });

  test("have tables whose cells may hold bars", () => {
    expect(table(["a", "b"], [["1|2", "3"]])).toBe("| a | b |\n|---|---|\n| 1\\|2 | 3 |");
  });
});
