/** The formatter on any text: twice is once, a line with an issue is not touched, and no line looks at another. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { formatLine, formatText } from "../../grammar/format.ts";
import { type Parse, parse } from "../../grammar/parse.ts";
import { printText } from "../../grammar/print.ts";
import { readLine } from "../../grammar/read-line.ts";
import { VOCABULARY } from "../../grammar/vocabulary.ts";
import { meaning } from "./arbitrary-line.ts";
import { anyText } from "./arbitrary-text.ts";
import { EXAMPLES, SETTINGS, SOUND_EXAMPLES } from "./grammar-settings.ts";

function check(property: (parsed: Parse) => void): void {
  fc.assert(
    fc.property(anyText, (text) => {
      property(parse(text));
    }),
    { ...SETTINGS, numRuns: 1000 },
  );
  for (const text of EXAMPLES) property(parse(text));
}

test("formatting twice is formatting once", () => {
  check((parsed) => {
    const once = formatText(parsed);
    expect(formatText(parse(once))).toBe(once);
  });
});

test("formatting changes nothing that a line says, no block and no line end", () => {
  check((parsed) => {
    const after = parse(formatText(parsed));
    expect(after.blocks).toEqual(parsed.blocks);
    for (const [index, line] of parsed.journal.lines.entries()) {
      const issue = parsed.issues[index];
      const formatted = after.journal.lines[index];
      expect(formatted?.end).toBe(line.end);
      if (issue === null)
        expect([meaning(formatted), after.issues[index]]).toEqual([canonicalMeaning(line), null]);
      else expect([formatted, after.issues[index]]).toEqual([line, issue]);
    }
  });
});

/** Courses get their third digit; everything else is said as it was typed. */
function canonicalMeaning(line: Parameters<typeof meaning>[0]): unknown {
  const pad = (_: string, value: unknown): unknown =>
    isCourse(value) ? { ...value, value: { ...value.value, number: padded(value.value.number) } } : value;
  const said = meaning(line);
  return said === undefined ? undefined : JSON.parse(JSON.stringify(said, pad));
}

function isCourse(item: unknown): item is { word: string; value: { kind: "number"; number: string } } {
  if (typeof item !== "object" || item === null || !("word" in item) || !("value" in item)) return false;
  const { word, value } = item as { word: unknown; value: { kind?: unknown } };
  return (word === "course" || word === "to") && value.kind === "number";
}

function padded(number: string): string {
  return number.replace(/^\d+/u, (whole) => whole.padStart(3, "0"));
}

test("a line alone in its block is formatted as it is among others", () => {
  check((parsed) => {
    for (const [index, line] of parsed.journal.lines.entries()) {
      const block = parsed.blocks[index] ?? "margin";
      const alone = readLine(line.raw, line.end, block, VOCABULARY);
      const journal = { ...parsed.journal, lines: [alone.line] };
      const only: Parse = { journal, issues: [alone.issue], blocks: [block] };
      expect(formatLine(only, 0)).toBe(formatLine(parsed, index));
    }
  });
});

test("the examples are formatted already", () => {
  for (const text of SOUND_EXAMPLES) expect(formatText(parse(text))).toBe(printText(parse(text).journal));
});
