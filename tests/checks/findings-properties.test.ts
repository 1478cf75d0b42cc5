/** What holds of every finding, in sound and in broken files alike: its places are in its lines, its fixes mend it. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import * as fc from "fast-check";
import { expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import type { Finding, Place } from "../../server/checks/check.ts";
import { LANGUAGE_RULES } from "../../server/checks/language-rules.ts";
import { applyEdits } from "../harness/apply-edits.ts";
import { findingsIn, TRIP_URI } from "./check-findings.ts";

const season = join(import.meta.dirname, "../../examples/bright-penny");
const read = (path: string): string => readFileSync(join(season, path), "utf8");
const book = read("bright-penny.gear");
const BOOKS = { "file:///season/bright-penny.gear": book };
const lines = ["trips", "wrong"]
  .flatMap((folder) => readdirSync(join(season, folder)).map((name) => read(`${folder}/${name}`)))
  .flatMap((text) => text.split("\n"))
  .concat(book.split("\n"))
  .filter((line) => line.trim() !== "");

const find = (text: string): Finding[] => findingsIn(text, { books: BOOKS, rules: LANGUAGE_RULES });

/** A line as it stands, with letters lost, added or doubled, or without one of its words. */
const slippedLine = fc
  .tuple(
    fc.constantFrom(...lines),
    fc.nat(),
    fc.constantFrom("", "x", "7", '"', ",", " ", "\u200f", "-"),
    fc.nat(3),
  )
  .map(([line, at, text, kind]) => {
    const start = at % (line.length + 1);
    if (kind === 0) return line;
    if (kind === 1) return line.slice(0, start) + text + line.slice(start);
    if (kind === 2) return line.slice(0, start) + text + line.slice(start + 1);
    const words = line.split(" ");
    return words.filter((_, index) => index !== at % words.length).join(" ");
  });

const file = fc
  .array(slippedLine, { maxLength: 12 })
  .map((some) => `trip 2031-06-21 "Bright Penny"\n${some.join("\n")}`);

function expectInside(raws: readonly string[], { lineIndex, start, stop }: Place): void {
  expect(start).toBeGreaterThanOrEqual(0);
  expect(stop).toBeGreaterThanOrEqual(start);
  expect(stop).toBeLessThanOrEqual(raws[lineIndex]?.length ?? -1);
}

/** How often a finding stands in a list; lines below a fix may move. */
function countOf(findings: readonly Finding[], { slug, message }: Finding): number {
  return findings.filter((one) => one.slug === slug && one.message === message).length;
}

test("places lie in their lines, one fix at most is preferred, and it mends", () => {
  fc.assert(
    fc.property(file, (text) => {
      const raws = parse(text).journal.lines.map((line) => line.raw);
      const findings = find(text);
      for (const finding of findings) {
        expectInside(raws, finding);
        expect(finding.stop).toBeGreaterThan(finding.start);
        const preferred = finding.fixes.filter((fix) => fix.isPreferred);
        expect(preferred.length).toBeLessThanOrEqual(1);
        for (const { edits } of preferred) {
          if (edits.some((edit) => edit.uri !== TRIP_URI)) continue;
          for (const edit of edits) expectInside(raws, edit);
          expect(countOf(find(applyEdits(text, edits)), finding), finding.message).toBeLessThan(
            countOf(findings, finding),
          );
        }
      }
    }),
    { seed: 20310621, numRuns: 400 },
  );
});
