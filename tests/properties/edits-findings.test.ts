/** After any edits the findings are those of the text read anew: no rule keeps what an edit concerns (`sights.ts`). */
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Parse, parse, reparse } from "../../grammar/parse.ts";
import { createDepthMemo } from "../../server/analysis/depth-memo.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";
import { runChecks, type SeverityChoices } from "../../server/checks/run-checks.ts";
import { sampleTexts } from "../bench/generate.ts";
import { EXAMPLES } from "./grammar-settings.ts";
import { anyEdit, type Edit, edited } from "./random-edits.ts";

const isDay = (text: string): boolean => /^trip /mu.test(text);
const BOOK = EXAMPLES.find((text) => /^boat /mu.test(text) && !isDay(text)) ?? "";
const DAYS = EXAMPLES.filter(isDay);
/** The bench's own long day, with its book in the same file. */
const GENERATED = sampleTexts(150).journal;
const TEXTS = [...DAYS, `${DAYS[0]}\n${DAYS[1]}`, GENERATED];

/** More than the suite does, of another seed: `DEEPWAKE_EDITS=50 DEEPWAKE_SEED=7 npx vitest run tests/properties/edits-findings.test.ts`. */
const { DEEPWAKE_EDITS: times = "1", DEEPWAKE_SEED: seed = "20310708" } = process.env;
const SETTINGS = { seed: Number(seed), numRuns: 24 * Number(times), endOnFailure: true };

/** An edit of the day, or of its book; a few are taken back. */
interface Step {
  readonly edit: Edit;
  readonly isOfBook: boolean;
  readonly isBack: boolean;
}
const oneIn = (count: number): fc.Arbitrary<boolean> => fc.nat(count - 1).map((n) => n === 0);
const anyStep: fc.Arbitrary<Step> = fc.record({ edit: anyEdit, isOfBook: oneIn(25), isBack: oneIn(10) });

test("findings after edits, as if read anew", () => {
  let found = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...TEXTS),
      fc.array(anyStep, { minLength: 10, maxLength: 25 }),
      (text, steps) => {
        const [day, book] = [new Edits(text), new Edits(BOOK)];
        findingsOf("file:///kept.trip", day.read, book.read);
        for (const step of steps) {
          (step.isOfBook ? book : day).take(step);
          const anew = findingsOf("file:///anew.trip", parse(day.text), parse(book.text));
          expect(findingsOf("file:///kept.trip", day.read, book.read)).toBe(anew);
          found += anew.split("\n").length;
        }
      },
    ),
    SETTINGS,
  );
  expect(found).toBeGreaterThan(1000);
});

/** A text under edits, read again after each. */
class Edits {
  readonly #texts: string[];
  read: Parse;

  constructor(text: string) {
    this.#texts = [text];
    this.read = parse(text);
  }

  get text(): string {
    return this.#texts.at(-1) ?? "";
  }

  take({ edit, isBack }: Step): void {
    const text = isBack ? this.#texts.at(-2) : edited(this.text, edit);
    this.#texts.push(text ?? this.text);
    this.read = reparse(this.read, this.text);
  }
}

const MEMO = createDepthMemo();
const CHOICES: SeverityChoices = new Map([["unit-not-written", "hint"]]);

/** A line for each finding, with all it says and the fixes it offers. */
function findingsOf(uri: string, day: Parse, book: Parse): string {
  const analysis = analyzeJournal({ uri, parse: day }, [{ uri: "file:///b.gear", parse: book }], MEMO);
  const found = runChecks(analysis, { choices: CHOICES, today: "2031-09-01" });
  return found
    .map((one) => JSON.stringify({ ...one, fixes: one.fixes }))
    .join("\n")
    .replaceAll(uri, "");
}
