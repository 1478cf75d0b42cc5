/** Whatever a file holds, it is read, and printing it gives back the very text. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { isRead } from "../../grammar/is-read.ts";
import type { Issue } from "../../grammar/issues.ts";
import { journalSchema, type Line } from "../../grammar/journal.ts";
import { type Parse, parse } from "../../grammar/parse.ts";
import { printText } from "../../grammar/print.ts";
import { LINE_LEXER } from "../../grammar/tokens.ts";
import { ALL_ROWS } from "../../grammar/vocabulary.ts";
import { anyText, applyEdit, edit } from "./arbitrary-text.ts";
import { EXAMPLES, SETTINGS } from "./grammar-settings.ts";

function check(property: (text: string, parsed: Parse) => void): void {
  fc.assert(
    fc.property(anyText, (text) => {
      property(text, parse(text));
    }),
    { ...SETTINGS, numRuns: 1000 },
  );
  for (const text of EXAMPLES) property(text, parse(text));
}

test("printing gives back the very text", () => {
  check((text, { journal }) => expect(printText(journal)).toBe(text));
});

test("each line has at most one issue and stands in one block", () => {
  check((_, { journal, issues, blocks }) => {
    expect([issues.length, blocks.length]).toEqual([journal.lines.length, journal.lines.length]);
  });
});

test("a line that was read wrong or not at all has an issue, any other kind of line has none", () => {
  check((_, { journal, issues }) => {
    for (const [index, line] of journal.lines.entries()) {
      const isUnread = isRead(line) && line.items.some((item) => item.value.kind === "unread");
      if (line.kind === "unreadable" || isUnread) expect(issues[index]).not.toBeNull();
      else if (!isRead(line)) expect(issues[index]).toBeNull();
    }
  });
});

test("spans are whole numbers, in order, and inside of their line", () => {
  check((_, { journal, issues }) => {
    for (const [index, line] of journal.lines.entries()) {
      for (const run of spansOf(line, issues[index] ?? null)) {
        expect(run.every(Number.isInteger)).toBe(true);
        expect([...run].sort((a, b) => a - b)).toEqual(run);
      }
    }
  });
});

/** Runs of offsets that have to rise, from the line's start to its end. */
function spansOf(line: Line, issue: Issue | null): number[][] {
  const runs: number[][] = [];
  if (issue !== null) {
    expect(issue.span[1]).toBeGreaterThan(issue.span[0]);
    runs.push([0, ...issue.span, line.raw.length]);
  }
  if (!isRead(line)) return runs;
  const slots = line.slots.flatMap((slot) => [slot.start, slot.stop]);
  const items = line.items.flatMap((item) => [item.start, item.valueStart, item.stop]);
  return [...runs, [0, line.verbStart, line.verbStop, ...slots, ...items, line.raw.length]];
}

test("the typed form satisfies its schema, nothing missing and nothing more", () => {
  check((_, { journal }) => expect(journalSchema.parse(journal)).toEqual(journal));
});

test("the kind of line end changes no issue", () => {
  check((text) => {
    const lines = text.split(/\r\n|\r|\n/u);
    const [first, ...others] = ["\n", "\r\n", "\r"].map((end) => parse(lines.join(end)).issues);
    for (const other of others) expect(other).toEqual(first);
  });
});

test("forty thousand mutated lines are lexed, and nothing falls between the tokens but blanks and commas", () => {
  const lines = [...EXAMPLES.flatMap((text) => text.split("\n")), ...ALL_ROWS.map((row) => row.example)];
  const mutated = fc
    .tuple(fc.constantFrom(...lines), edit, edit)
    .map(([line, ...edits]) => edits.reduce(applyEdit, line).replaceAll(/[\r\n]/gu, ""));
  for (const line of fc.sample(mutated, { ...SETTINGS, numRuns: 40_000 })) {
    const { tokens, errors } = LINE_LEXER.tokenize(line);
    let rest = "";
    let at = 0;
    for (const token of tokens) {
      rest += line.slice(at, token.startOffset);
      at = token.startOffset + token.image.length;
    }
    rest += line.slice(at);
    if (errors.length > 0 || /[^\s,]/u.test(rest))
      throw new Error(`not lexed whole: ${JSON.stringify(line)}`);
  }
});
