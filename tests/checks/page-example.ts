/** The examples on the checks' pages. */
import { readFileSync } from "node:fs";
import { join } from "node:path";

const PAGES = join(import.meta.dirname, "../../docs/checks");

/** The example under a heading of a check's page. Throws when there isn't exactly one. */
export function readPageExample(slug: string, heading: string): string {
  const section =
    readFileSync(join(PAGES, `${slug}.md`), "utf8")
      .split(/^## /mu)
      .find((part) => part.startsWith(`${heading}\n`)) ?? "";
  const [example, second] = [...section.matchAll(/^```deepwake\n([\s\S]*?)^```$/gmu)];
  if (example?.[1] === undefined || second !== undefined) throw new Error(`one example under ${heading}`);
  return example[1].replaceAll(/\{U\+([0-9A-F]{4})\}/gu, (_, hex: string) =>
    String.fromCharCode(Number.parseInt(hex, 16)),
  );
}
