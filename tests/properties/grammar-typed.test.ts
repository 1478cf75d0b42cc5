/** Typed → text → typed: a canonical line says what it was printed from, in whatever order its words are. */
import fc from "fast-check";
import { expect, test } from "vitest";
import type { Item } from "../../grammar/journal.ts";
import { type Parse, parse } from "../../grammar/parse.ts";
import { canonicalLine } from "../../grammar/print.ts";
import { anyLine, type Made, meaning } from "./arbitrary-line.ts";
import { SETTINGS } from "./grammar-settings.ts";

const OPENERS = { boat: "boat B\n", trip: "trip 2031-06-21 B\n", opener: "", gear: "", event: "" };

/** The line in its block, read; it is the last one. */
function readBack({ row, line }: Made): { parsed: Parse; text: string } {
  const text = OPENERS[row.place] + canonicalLine(line);
  const parsed = parse(text);
  const issue = parsed.issues.at(-1);
  if (issue !== null) throw new Error(`${JSON.stringify(issue)} in ${JSON.stringify(text)}`);
  return { parsed, text };
}

test("a line that was printed says the same", () => {
  fc.assert(
    fc.property(anyLine, (made) => {
      expect(meaning(readBack(made).parsed.journal.lines.at(-1))).toEqual(meaning(made.line));
    }),
    { ...SETTINGS, numRuns: 1000 },
  );
});

test("a line that was printed is canonical", () => {
  fc.assert(
    fc.property(anyLine, (made) => {
      const { parsed, text } = readBack(made);
      const line = parsed.journal.lines.at(-1);
      if (line === undefined) throw new Error("no line");
      expect(OPENERS[made.row.place] + canonicalLine(line)).toBe(text);
    }),
    SETTINGS,
  );
});

test("the order of a line's items is free", () => {
  const withOrder = anyLine.chain((made) =>
    fc.tuple(fc.constant(made), fc.shuffledSubarray(made.line.items, { minLength: made.line.items.length })),
  );
  fc.assert(
    fc.property(withOrder, ([made, items]) => {
      const read = readBack({ row: made.row, line: { ...made.line, items } }).parsed.journal.lines.at(-1);
      expect(read?.kind === "fact" || read?.kind === "property" ? values(read.items) : null).toEqual(
        values(made.line.items),
      );
    }),
    { ...SETTINGS, numRuns: 1000 },
  );
});

function values(items: readonly Item[]): string[] {
  return items.map(({ word, value }) => JSON.stringify([word, value])).sort();
}
