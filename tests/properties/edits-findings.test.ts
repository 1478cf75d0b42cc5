/** After any edits the findings are those of the text read anew: no rule keeps what an edit concerns (`day-rules.ts`). */
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Parse, parse, reparse } from "../../grammar/parse.ts";
import { createDepthMemo } from "../../server/analysis/depth-memo.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";
import type { LineDepth } from "../../server/analysis/line-depth.ts";
import { runChecks, type SeverityChoices } from "../../server/checks/run-checks.ts";
import { sampleTexts } from "../bench/generate.ts";
import { EXAMPLES } from "./grammar-settings.ts";
import { anyEdit, type Edit, edited } from "./random-edits.ts";

const isDay = (text: string): boolean => /^trip /mu.test(text);
const BOOK = EXAMPLES.find((text) => /^boat /mu.test(text) && !isDay(text)) ?? "";
const DAYS = EXAMPLES.filter(isDay);
/** The bench's own long day, with its book in the same file. */
const GENERATED = sampleTexts(150).journal;
/** Short days on which nearly every line stands near a finding. */
const DENSE = [
  `trip 2031-11-02 "Bright Penny"
00:30 depart engine 1243.6 h
01:10 set P1 out 60 ft setback 20 ft lure glow-spoon
01:30 sonar bottom 64 ft
01:50 gps speed 2.4 mph course 310 at 44 46.1N 086 21.7W
02:30 gps speed 2.4 mph course 130 at 44 46.9N 086 21.7W
03:00 return engine 1242.0 h`,
  `trip 2031-06-21 "Bright Penny"
  guest G1
05:00 depart
05:10 set P1U above 20 ft
05:40 set P1 out 90 ft setback 100 ft
05:50 surface speed 2.4 mph temp 62 F
05:52 probe C1 depth 60 ft temp 40 F speed 2.3 mph
06:00 pull P1
06:10 again P1U
06:30 strike P1
06:35 catch P1 chinook 70 lb by G2
06:40 move C1 out 80 ft
07:30 box chinook 1`,
  `trip 2031-06-21 "Bright Penny"
05:00 set S1 out 60 ft setback 20 ft
05:05 set P1 out 60 ft
05:20 check S1 down 90 min
05:30 strike S1
05:31 strike S1 slider
05:40 tangle P1 with S1 down 5 min
05:45 tangle P1 with S1
05:50 catch P1 chinook
06:00 probe S1 depth 50 ft
06:05 again P1 on-bottom
06:20 move P1 out 90 ft
06:25 probe P1 depth 50 ft`,
  `trip 2031-06-21 "Bright Penny"
05:00 birds some at 44 46.1N 086 21.7W
05:10 set P1 out 60 ft
05:20 gps speed 2.4 mph course 010 at 44 46.5N 086 21.7W
05:30 fleas light at 44 47.0N 086 21.7W
05:40 gps speed 2.4 mph course 010 at 44 47.3N 086 21.7W
05:50 turn right to 090
06:05 gps speed 2.4 mph course 350 magnetic at 44 48.3N 086 21.7W
06:10 birds some at 44 58.3N 086 21.7W`,
  `trip 2031-06-21 "Bright Penny"
  method deep
05:10 set C1 out 80 ft setback 10 ft lure glow-spoon
05:15 set P1 out 70 ft setback 90 ft lure glow-spoon
05:20 probe C1 depth 78 ft temp 48 F speed 2.6 mph behind 30 ft
05:21 gps speed 1.0 mph course 180
05:22 sonar bottom 75 ft marks 80 to 90 ft
05:24 probe C1 depth 78 ft temp 47 F speed 2.2 mph
05:25 touch C1 out 82 ft behind 120 ft
05:30 move C1 out 100 ft
05:32 probe C1 depth 78 ft temp 39 F speed 2.6 mph
05:32 probe C1 depth 95 ft speed 1.0 mph
05:40 turn left to 090
05:45 set S1 out 90 ft lure glow-spoon
06:10 profile 0 ft 61 F, 30 ft 58 F, 50 ft 59 F`,
];
const LONG = [...DAYS, `${DAYS[0]}\n${DAYS[1]}`, GENERATED];

/** More than the suite does, of another seed: `DEEPWAKE_EDITS=50 DEEPWAKE_SEED=7 npx vitest run tests/properties/edits-findings.test.ts`. */
const { DEEPWAKE_EDITS: times = "1", DEEPWAKE_SEED: seed = "20310708" } = process.env;

/** An edit of the day, or of its book; or all of them taken back, so that the next one is of the text as it was. */
interface Step {
  readonly edit: Edit;
  readonly isOfBook: boolean;
  readonly isBack: boolean;
}
const oneIn = (count: number): fc.Arbitrary<boolean> => fc.nat(count - 1).map((n) => n === 0);
const anyStep: fc.Arbitrary<Step> = fc.record({ edit: anyEdit, isOfBook: oneIn(25), isBack: oneIn(3) });

test.each([
  ["short days with much to find", DENSE, 150],
  ["long days", LONG, 12],
])("findings after edits, as if read anew: %s", (_, texts, chains) => {
  let found = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...texts),
      fc.array(anyStep, { minLength: 15, maxLength: 25 }),
      (text, steps) => {
        const [day, book] = [new Edits(text), new Edits(BOOK)];
        findingsOf("file:///kept.trip", day.read, book.read);
        for (const step of steps) {
          (step.isOfBook ? book : day).take(step);
          const anew = findingsOf("file:///anew.trip", parse(day.text), book.read);
          expect(findingsOf("file:///kept.trip", day.read, book.read)).toBe(anew);
          found += anew.split("\n").length;
        }
      },
    ),
    { seed: Number(seed), numRuns: chains * Number(times), endOnFailure: true },
  );
  expect(found).toBeGreaterThan(1000);
});

/** A text under edits, read again after each. */
class Edits {
  readonly #first: string;
  text: string;
  read: Parse;

  constructor(text: string) {
    this.#first = text;
    this.text = text;
    this.read = parse(text);
  }

  take({ edit, isBack }: Step): void {
    this.text = isBack ? this.#first : edited(this.text, edit);
    this.read = reparse(this.read, this.text);
  }
}

const MEMO = createDepthMemo();
const CHOICES: SeverityChoices = new Map([["unit-not-written", "hint"]]);

/** A line for each finding, with all it says and the fixes it offers, and for each depth. */
function findingsOf(uri: string, day: Parse, book: Parse): string {
  const analysis = analyzeJournal({ uri, parse: day }, [{ uri: "file:///b.gear", parse: book }], MEMO);
  const found = runChecks(analysis, { choices: CHOICES, today: "2031-09-01" });
  const findings = found.map((one) => JSON.stringify({ ...one, fixes: one.fixes }));
  const depths = analysis.trips.flatMap((trip) => [...trip.depths, ...trip.changeDepths]).map(depthText);
  return [...findings, ...depths].join("\n").replaceAll(uri, "");
}

function depthText({ event, rig, ball, lure, speed, bottom }: LineDepth): string {
  const used = speed?.used.map((reading) => reading.event);
  return JSON.stringify([event, rig, ball?.depthM, lure?.depthM, speed?.value, used, bottom?.event]);
}
