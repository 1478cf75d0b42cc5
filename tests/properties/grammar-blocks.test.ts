/** A line put into a block changes no other line of it, nor of any other block. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { canonicalLine } from "../../grammar/print.ts";
import type { Block } from "../../grammar/read-line.ts";
import { VOCABULARY } from "../../grammar/vocabulary.ts";
import { anyEvent, anyLine, lineOf } from "./arbitrary-line.ts";
import { mutatedExample } from "./arbitrary-text.ts";
import { EXAMPLES, SETTINGS } from "./grammar-settings.ts";

/** A file of many blocks: an example, whole or mutated, or lines of every kind. */
const anyFile = fc
  .oneof(
    fc.constantFrom(...EXAMPLES),
    mutatedExample,
    fc
      .array(
        fc.oneof(
          anyLine.map(({ line }) => canonicalLine(line)),
          fc.constantFrom(
            "trip 2031-06-21 B",
            "boat B",
            "note",
            "  06:00 note",
            "",
            "# c",
            "  text",
            "pul P1",
          ),
        ),
        { maxLength: 15 },
      )
      .map((lines) => lines.join("\n")),
  )
  .map((text) => text.replace(/^\ufeff+/u, "").replaceAll(/\r\n?/gu, "\n"));

const somePlaces = fc.array(fc.nat(1000), { minLength: 3, maxLength: 3 });
const property = (place: string) =>
  fc
    .constantFrom(...VOCABULARY.rows.filter((row) => row.place === place))
    .chain(lineOf)
    .map(({ line }) => canonicalLine(line));
const wrongWords = fc.constantFrom("pul P1", "anglrs 3", 'mate "open', "72 ft");
const noteText = fc.oneof(
  fc.string({ minLength: 1 }).map((text) => text.replaceAll(/[\r\n]/gu, "")),
  fc.constantFrom("06:00 drift", "# c", "trip 2031-06-21 B"),
);

/** Puts a line before a few of the lines that stand in that block, one at a time. */
function checkInsertions(file: string, put: string, places: readonly number[], block?: Block): void {
  const before = parse(file);
  const lines = file.split("\n");
  const all = [...before.blocks.keys()].filter(
    (index) => (block ?? before.blocks[index]) === before.blocks[index],
  );
  for (const place of all.length === 0 ? [] : places) {
    const index = all[place % all.length] ?? 0;
    const after = parse([...lines.slice(0, index), put, ...lines.slice(index)].join("\n"));
    const others = { ...after.journal, lines: after.journal.lines.toSpliced(index, 1) };
    expect([others, after.issues.toSpliced(index, 1)]).toEqual([before.journal, before.issues]);
    inserted++;
  }
}

let inserted = 0;
const check = (put: fc.Arbitrary<string>, block?: Block): void => {
  inserted = 0;
  fc.assert(
    fc.property(anyFile, put, somePlaces, (file, text, places) => {
      checkInsertions(file, text, places, block);
    }),
    SETTINGS,
  );
  expect(inserted).toBeGreaterThan(100);
};

test.each(["boat", "trip"] as const)("a property, or a wrong one, in a %s block", (place) => {
  check(
    fc.oneof(
      property(place),
      wrongWords.map((text) => `  ${text}`),
    ),
    place,
  );
});

test("any indented line in a note", () => {
  check(
    noteText.map((text) => `  ${text}`),
    "note",
  );
});

test("an event, or a wrong one, among events", () => {
  check(
    fc.oneof(
      anyEvent.map(({ line }) => canonicalLine(line)),
      wrongWords,
    ),
    "margin",
  );
});

test("a blank line or a comment anywhere", () => {
  check(fc.constantFrom("", "# c"));
});
