import { describe, expect, test } from "vitest";
import { isRead } from "../../grammar/is-read.ts";
import { findUnit, fromSi, toSi, UNITS } from "../../grammar/units.ts";
import { flag, line, measure, slot, span } from "../../grammar/vocabulary/rows.ts";
import { ALL_ROWS, defineVocabulary, findItem, type VerbRow, VOCABULARY } from "../../grammar/vocabulary.ts";
import { checkCanonical, parseClean } from "./check-grammar.ts";

/** A row's example as a text: properties stand under an opener. */
function exampleText(row: VerbRow): string {
  if (row.place === "boat") return `boat Skiff\n  ${row.example}`;
  if (row.place === "trip") return `trip 2031-06-21 Skiff\n  ${row.example}`;
  return row.example;
}

describe("every row's example", () => {
  test.each(ALL_ROWS.map((row) => [exampleText(row), row] as const))("%s", (text, row) => {
    checkCanonical(text);
    const read = parseClean(text).journal.lines.at(-1);
    expect(read !== undefined && isRead(read) && read.verb).toBe(row.verb);
  });
});

describe("every row", () => {
  test.each(ALL_ROWS.map((row) => [`${row.place} ${row.verb}`, row] as const))("%s", (_, row) => {
    const docs = [row.doc, ...row.items.map((item) => item.doc)];
    for (const doc of docs) expect(doc).toMatch(/^\S.*\.$/u);
    for (const word of row.needs) expect(row.items.map((item) => item.word)).toContain(word);
    const rest = row.slots.findIndex((s) => s.rest);
    if (rest >= 0) expect([rest, row.items.length]).toEqual([row.slots.length - 1, 0]);
    const indexed = VOCABULARY.rows.find((r) => r.verb === row.verb && r.place === row.place);
    const mistaken = row.items.flatMap((item) => item.not);
    expect(mistaken).toEqual([...new Set(mistaken)]);
    expect(mistaken.filter((word) => indexed?.words.has(word))).toEqual([]);
    for (const item of row.items) {
      for (const word of [item.word, ...item.aliases]) {
        expect(indexed && findItem(indexed, word.toUpperCase())).toBe(item);
      }
    }
  });
});

const row = (items: VerbRow["items"], verb = "trial"): VerbRow =>
  line("event", verb, [slot("rig", "rig")], items, "A trial.", `${verb} P1`);

describe("a vocabulary is refused when", () => {
  test.each<[string, VerbRow[]]>([
    ["a word means two things", [row([flag("sure", "."), flag("sure", ".")])]],
    ["an alias is a word already", [row([flag("sure", "."), flag("yes", ".", { aliases: "sure" })])]],
    ["an attribute is spelled like a unit", [row([flag("in", ".")])]],
    ["an alias is spelled like a unit", [row([flag("inside", ".", { aliases: "feet" })])]],
    ["ranges meet a word to", [row([span("marks", "length", "."), measure("to", "length", ".")])]],
    ["two rows have one verb", [row([]), row([])]],
    ["a word starts like a number", [row([flag("2nd", ".")])]],
    ["a word has a capital", [row([flag("Sure", ".")])]],
    ["a verb has a comma", [row([], "try,")]],
  ])("%s", (_, rows) => {
    expect(() => defineVocabulary(rows)).toThrow();
  });

  test("but not without any of that", () => {
    expect(defineVocabulary([row([flag("sure", "."), span("marks", "length", ".")])]).rows).toHaveLength(1);
  });
});

describe("every unit", () => {
  test.each(UNITS.map((unit) => [unit.unit, unit] as const))("%s", (_, unit) => {
    for (const spelling of [unit.unit, ...unit.aliases]) {
      for (const typed of [spelling, spelling.toLowerCase(), spelling.toUpperCase()]) {
        expect(findUnit(typed)).toBe(unit);
      }
    }
    for (const value of [-40, 0, 1, 212]) expect(fromSi(toSi(value, unit), unit)).toBeCloseTo(value, 9);
  });

  test.each([
    [32, "F", 0],
    [212, "F", 100],
    [-40, "F", -40],
    [1, "fathoms", 1.8288],
    [1, "colors", 9.144],
    [1, "kn", 0.514444],
    [17.5, "lb", 7.937866],
    [165, "cm2", 0.0165],
    [1, "days", 86400],
  ])("%d %s is %d in SI", (value, spelling, si) => {
    const unit = findUnit(spelling);
    if (unit === undefined) throw new Error(`no unit ${spelling}`);
    expect(toSi(value, unit)).toBeCloseTo(si, 6);
  });

  test("nothing else is one", () => {
    for (const word of ["", "parsec", "f t", "constructor", "__proto__"])
      expect(findUnit(word)).toBeUndefined();
  });
});
