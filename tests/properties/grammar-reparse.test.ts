/** Reading again after edits equals reading anew, and what an edit leaves alone is kept, the very objects. */
import fc from "fast-check";
import { expect, test } from "vitest";
import type { Line } from "../../grammar/journal.ts";
import { type Parse, parse, reparse } from "../../grammar/parse.ts";
import { anyText, applyEdit, edit } from "./arbitrary-text.ts";
import { EXAMPLES, SETTINGS } from "./grammar-settings.ts";

const start = fc.oneof(anyText, fc.constantFrom(...EXAMPLES));

test("after any edits, as if read anew; and the lines around an edit are shared", () => {
  let shared = 0;
  fc.assert(
    fc.property(start, fc.array(edit, { minLength: 1, maxLength: 4 }), (text, edits) => {
      let before = parse(text);
      let now = text;
      for (const change of edits) {
        now = applyEdit(now, change);
        const after = reparse(before, now);
        expect(after).toEqual(parse(now));
        shared += countShared(before, after);
        before = after;
      }
    }),
    SETTINGS,
  );
  expect(shared).toBeGreaterThan(1000);
});

test("between any two texts", () => {
  fc.assert(
    fc.property(anyText, anyText, (one, other) => {
      expect(reparse(parse(one), other)).toEqual(parse(other));
    }),
    SETTINGS,
  );
});

/** Counts the lines that both ends have in common, and fails when one of them was read again in the same block. */
function countShared(before: Parse, after: Parse): number {
  const [old, now] = [before.journal.lines, after.journal.lines];
  const most = Math.min(old.length, now.length);
  let head = 0;
  while (head < most && isSame(old[head], now[head])) {
    expect(now[head]).toBe(old[head]);
    head++;
  }
  let tail = 0;
  while (tail < most - head && isSame(old.at(-1 - tail), now.at(-1 - tail))) {
    tail++;
    if (before.blocks.at(-tail) === after.blocks.at(-tail)) expect(now.at(-tail)).toBe(old.at(-tail));
  }
  return head + tail;
}

function isSame(a: Line | undefined, b: Line | undefined): boolean {
  return a !== undefined && b !== undefined && a.raw === b.raw && a.end === b.end;
}
