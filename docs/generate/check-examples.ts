/** What differs between the wrong and the right example on each check's page, for `deepwake check --explain`. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { CATALOG } from "../../server/checks/catalog.ts";

const PAGES = join(import.meta.dirname, "../checks");

/** By check: the lines of the wrong example that the right one doesn't have, and the other way round. */
export function checkExamples(): string {
  const examples = Object.fromEntries(CATALOG.map(({ slug }) => [slug, exampleOf(slug)]));
  return `${JSON.stringify(examples, null, 2)}\n`;
}

function exampleOf(slug: string): { wrong: string; right: string } {
  const page = readFileSync(join(PAGES, `${slug}.md`), "utf8");
  const [wrong, right] = [linesUnder(page, "Wrong"), linesUnder(page, "Right")];
  const differ = [without(wrong, right), without(right, wrong)] as const;
  const [bad, good] = differ.some((lines) => lines.length > 0) ? differ : reordered(wrong, right);
  return { wrong: bad.join("\n"), right: good.join("\n") };
}

function linesUnder(page: string, heading: string): string[] {
  const section = page.split(/^## /mu).find((part) => part.startsWith(`${heading}\n`)) ?? "";
  const [, example] = /^```deepwake\n([\s\S]*?)^```$/mu.exec(section) ?? [];
  if (example === undefined) throw new Error(`a page has no example under ${heading}`);
  return example.split("\n").filter((line) => line.trim() !== "");
}

/** A line that stands several times is left out as often as the other example has it. */
function without(lines: readonly string[], others: readonly string[]): string[] {
  const left = [...others];
  return lines.filter((line) => {
    const at = left.indexOf(line);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

/** From the first line that stands elsewhere to the last. */
function reordered(lines: readonly string[], others: readonly string[]): [string[], string[]] {
  const differs = (_: string, at: number): boolean => lines[at] !== others[at];
  const [first, last] = [lines.findIndex(differs), lines.findLastIndex(differs)];
  return [lines.slice(first, last + 1), others.slice(first, last + 1)];
}
