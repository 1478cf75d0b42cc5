/** Adding a word to the language turns errors into meaning and changes no line that was right. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Parse, parse } from "../../grammar/parse.ts";
import { canonicalLine } from "../../grammar/print.ts";
import { findUnit } from "../../grammar/units.ts";
import {
  clock,
  flag,
  line,
  measure,
  name,
  number,
  position,
  slot,
  span,
} from "../../grammar/vocabulary/rows.ts";
import {
  ALL_ROWS,
  defineVocabulary,
  type ItemRow,
  type VerbRow,
  type Vocabulary,
} from "../../grammar/vocabulary.ts";
import { anyLine } from "./arbitrary-line.ts";
import { anyText } from "./arbitrary-text.ts";
import { EXAMPLES, SETTINGS } from "./grammar-settings.ts";

/** Words that stand on lines already: names first of all, for they may be spelled like any word. */
function wordsOf(text: string): string[] {
  const words = text.toLowerCase().match(/(?<!\S)\p{L}[\p{L}\p{N}-]*(?!\S)/gu) ?? [];
  return [...new Set(words)].filter((word) => findUnit(word) === undefined);
}

const grown = (word: string): ItemRow[] => [
  flag(word, "New."),
  flag(word, "New.", { group: "kind" }),
  measure(word, "length", "New."),
  span(word, "temperature", "New.", { many: true }),
  number(word, "count", "New."),
  name(word, "text", "New."),
  position(word, "New."),
  clock(word, "New.", { range: true }),
];

/** The vocabulary with that word as an attribute or flag of every row that can have it. */
function withItem(word: string, kind: number): Vocabulary {
  const items = grown(word);
  const item = items[kind % items.length];
  if (item === undefined) throw new Error("no item");
  return defineVocabulary(
    ALL_ROWS.map((row) => (isAllowed(row, item) ? { ...row, items: [item, ...row.items] } : row)),
  );
}

/** `defineVocabulary` would refuse a word twice, and `to` beside a range. */
function isAllowed(row: VerbRow, item: ItemRow): boolean {
  const items = [item, ...row.items];
  const words = items.flatMap((of) => [of.word, ...of.aliases]);
  const hasRange = items.some((of) => "range" in of.type && of.type.range);
  return new Set(words).size === words.length && !(hasRange && words.includes("to"));
}

/** The vocabulary with that word as a verb, at each place where there is none. */
function withVerb(word: string): Vocabulary {
  const extra = (["event", "boat", "trip"] as const)
    .filter(
      (place) => !ALL_ROWS.some((row) => samePlace(row, place) && [row.verb, ...row.aliases].includes(word)),
    )
    .map((place) =>
      line(place, word, [slot("new", "text")], grown("newer").slice(0, 1), "New.", `${word} x`),
    );
  return defineVocabulary([...extra, ...ALL_ROWS]);
}

function samePlace({ place }: VerbRow, other: "event" | "boat" | "trip"): boolean {
  return place === other || (other === "event" && place !== "boat" && place !== "trip");
}

/** Every line without an issue is the same in both; returns how many there are. */
function expectUnchanged(before: Parse, after: Parse): number {
  let right = 0;
  for (const [index, issue] of before.issues.entries()) {
    if (issue !== null) continue;
    right++;
    expect([after.journal.lines[index], after.issues[index]]).toEqual([before.journal.lines[index], null]);
  }
  return right;
}

const somewhere = fc.tuple(fc.nat(10_000), fc.nat(100));

test("in the examples", () => {
  fc.assert(
    fc.property(fc.constantFrom(...EXAMPLES), somewhere, (text, [pick, kind]) => {
      const words = wordsOf(text);
      const word = words[pick % words.length] ?? "new";
      const before = parse(text);
      expect(expectUnchanged(before, parse(text, withItem(word, kind)))).toBeGreaterThan(10);
      expectUnchanged(before, parse(text, withVerb(word)));
    }),
    SETTINGS,
  );
});

test("on any line, whatever names are on it", () => {
  fc.assert(
    fc.property(anyLine, somewhere, ({ row, line: made }, [pick, kind]) => {
      const opener = row.place === "boat" || row.place === "trip" ? `${row.place} 2031-06-21 B\n` : "";
      const text = opener.replace("boat 2031-06-21", "boat") + canonicalLine(made);
      const words = wordsOf(text);
      const word = words[pick % words.length] ?? "new";
      const before = parse(text);
      expect(before.issues.at(-1)).toBeNull();
      expectUnchanged(before, parse(text, withItem(word, kind)));
      expectUnchanged(before, parse(text, withVerb(word)));
    }),
    { ...SETTINGS, numRuns: 600 },
  );
});

test("in any text", () => {
  fc.assert(
    fc.property(anyText, somewhere, (text, [pick, kind]) => {
      const words = wordsOf(text);
      const word = words[pick % words.length] ?? "new";
      const before = parse(text);
      expectUnchanged(before, parse(text, withItem(word, kind)));
      expectUnchanged(before, parse(text, withVerb(word)));
    }),
    { ...SETTINGS, numRuns: 600 },
  );
});
