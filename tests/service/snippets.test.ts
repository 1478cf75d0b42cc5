/** Each snippet, taken with what it proposes, is text that reads without an issue, and that the formatter leaves alone. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { formatText } from "../../grammar/format.ts";
import { parse } from "../../grammar/parse.ts";

const ROOT = join(import.meta.dirname, "../..");
const { contributes } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));

const snippets = contributes.snippets.flatMap(({ path }: { path: string }) =>
  Object.entries(JSON.parse(readFileSync(join(ROOT, path), "utf8"))),
) as [name: string, snippet: { body: string | string[]; prefix: string; description: string }][];

const CLOCK: Readonly<Record<string, string>> = {
  CURRENT_YEAR: "2031",
  CURRENT_MONTH: "06",
  CURRENT_DATE: "21",
  CURRENT_HOUR: "05",
  CURRENT_MINUTE: "14",
};

/** Every text a snippet can come to: its proposals, and in turn each of its choices. */
function textsOf(body: string | readonly string[]): string[] {
  const lines = typeof body === "string" ? body : body.join("\n");
  const most = Math.max(
    1,
    ...[...lines.matchAll(/\|([^}]*)\|\}/gu)].map(([, list = ""]) => list.split(",").length),
  );
  return Array.from({ length: most }, (_, turn) =>
    lines
      .replaceAll(/\$\{\d+\|([^}]*)\|\}/gu, (_all, list: string) => {
        const choices = list.split(",");
        return choices[turn % choices.length] ?? "";
      })
      .replaceAll(/\$\{\d+:([^}]*)\}/gu, "$1")
      .replaceAll(/\$(CURRENT_[A-Z]+)/gu, (_all, name: string) => CLOCK[name] ?? "?")
      .replaceAll("$0", ""),
  );
}

test.each(snippets)("%s", (name, { body, prefix, description }) => {
  expect(prefix).toMatch(/^[a-z]+$/u);
  expect(description).toMatch(/^[A-Z].*\.$/u);
  for (const text of textsOf(body)) {
    expect(text).not.toMatch(/[$?{}]/u);
    // The time alone is only the start of a line.
    const whole = name === "The time now" ? `${text}drift` : text;
    const parsed = parse(whole);
    expect(parsed.issues.filter((issue) => issue !== null)).toEqual([]);
    expect(formatText(parsed)).toBe(whole);
  }
});

test("a trip, a set line, a catch, a reading and a gear book are among them", () => {
  const all = snippets.map(([, { body }]) => textsOf(body)[0] ?? "").join("\n");
  for (const start of ["trip 2031-06-21", "05:14 set", "05:14 catch", "05:14 probe", "boat "])
    expect(all).toContain(start);
});
