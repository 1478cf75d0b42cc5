/** After any edits every answer is what it would be for the text opened anew: what is kept from before never shows. */
import fc from "fast-check";
import { expect, test } from "vitest";
import type { LanguageService } from "../../server/service/language-service.ts";
import { EVERYTHING, openService, URI } from "../service/open-service.ts";
import { EXAMPLES, SOUND_EXAMPLES } from "./grammar-settings.ts";

const BOOK = SOUND_EXAMPLES.find((text) => text.startsWith("boat") || text.includes("\nboat ")) ?? "";
const isDay = (text: string): boolean => text.startsWith("trip") || text.includes("\ntrip ");
/** Days that have findings, below one that has none. */
const WRONG = EXAMPLES.filter((text) => isDay(text) && !SOUND_EXAMPLES.includes(text)).slice(0, 3);
const ALL_DAYS = [
  ...SOUND_EXAMPLES.filter((text) => isDay(text) && text !== BOOK).slice(0, 1),
  ...WRONG,
].join("\n");

/** One edit of a line: by its share of the way down, so that it fits any text. */
const lineEdit = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }),
  what: fc.constantFrom("digit", "digit", "digit", "delete", "twice", "blank", "comment"),
  digit: fc.nat(9),
});

test("diagnostics, hints and hovers after edits, as if opened anew", () => {
  let found = 0;
  fc.assert(
    fc.property(
      fc.constantFrom({ text: ALL_DAYS, book: BOOK }, { text: `${BOOK}\n${ALL_DAYS}`, book: "" }),
      fc.array(lineEdit, { minLength: 1, maxLength: 4 }),
      ({ text, book }, edits) => {
        const service = openService(text, { book });
        let now = text;
        edits.forEach((edit, i) => {
          answersOf(service, now);
          now = edited(now, edit);
          service.update(URI, i + 2, now);
        });
        found += service.diagnostics(URI).length;
        expect(answersOf(service, now)).toEqual(answersOf(openService(now, { book }), now));
      },
    ),
    { seed: 20310704, numRuns: 12 },
  );
  expect(found).toBeGreaterThan(100);
});

function edited(text: string, { at, what, digit }: { at: number; what: string; digit: number }): string {
  const lines = text.split("\n");
  const index = Math.floor(at * lines.length);
  const line = lines[index] ?? "";
  const replaced = {
    digit: [line.replace(/(\d)(?!.*\d)/u, String(digit))],
    delete: [],
    twice: [line, line],
    blank: ["", line],
    comment: [`# ${line}`],
  }[what] ?? [line];
  return lines.toSpliced(index, 1, ...replaced).join("\n");
}

/** Findings, hints with their ranges, and the hover on every fifth line. */
function answersOf(service: LanguageService, text: string): unknown {
  const lines = text.split("\n");
  return {
    diagnostics: service.diagnostics(URI),
    actions: service.codeActions(URI, EVERYTHING, ["quickfix"]),
    hints: service.inlayHints(URI, EVERYTHING),
    hovers: lines.flatMap((line, index) =>
      index % 5 === 0 ? [service.hover(URI, { line: index, character: Math.min(7, line.length) })] : [],
    ),
  };
}
