/** Reading again after an edit: what the edit leaves alone keeps its very values. */
import { expect, test } from "vitest";
import { parse, reparse } from "../../grammar/parse.ts";

const DAY = "trip 2031-06-21 S\n  mate A\n\n05:14 set C1 out 90 ft\n05:58 strike C1\nnote\n  text\n";

test.each([
  ["an edited line", DAY.replace("90", "95"), [0, 1, 2, 4, 5, 6, 7]],
  ["a line put in", DAY.replace("05:58", "05:20 drift\n05:58"), [0, 1, 2, 3, 4, 5, 6, 7]],
  ["a line taken out", DAY.replace("05:58 strike C1\n", ""), [0, 1, 2, 3, 5, 6, 7]],
  ["text at the end", `${DAY}drift`, [0, 1, 2, 3, 4, 5, 6]],
  ["a byte order mark", `\ufeff${DAY}`, [0, 1, 2, 3, 4, 5, 6, 7]],
  ["the same text", DAY, [0, 1, 2, 3, 4, 5, 6, 7]],
  ["an opener gone: its properties are read anew", DAY.replace("trip", "tripp"), [4, 5, 6, 7]],
  ["a note gone: its text is read anew", DAY.replace("note", "drift"), [0, 1, 2, 3]],
])("%s", (_, text, kept) => {
  const before = parse(DAY);
  const after = reparse(before, text);
  expect(after).toEqual(parse(text));
  for (const index of kept) expect(after.journal.lines).toContain(before.journal.lines[index]);
});

test("a decade in one file", () => {
  const text = "\n".repeat(300_000);
  expect(reparse(parse(text), `drift\n${text}`).journal.lines).toHaveLength(300_002);
});
