/** How much is solved again after an edit, counted; and that what spares solving never hides a finding. */
import { expect, test } from "vitest";
import { type Parse, parse, reparse } from "../../grammar/parse.ts";
import { calibrationReadings } from "../../server/analysis/calibration-readings.ts";
import { createDepthMemo, type DepthMemo } from "../../server/analysis/depth-memo.ts";
import { expectedLineReading, expectedReading, explainLine } from "../../server/analysis/expected-reading.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";
import { runChecks } from "../../server/checks/run-checks.ts";
import { EXAMPLES } from "../properties/grammar-settings.ts";
import { BOOK, MORNING } from "../service/open-service.ts";

const BOOKS = [{ uri: "file:///bright-penny.gear", parse: parse(BOOK) }];
const CHOICES = new Map();

/** So many mornings, each with a cable of its own out, so that none is solved for another. */
function mornings(count: number): string {
  const one = (n: number): string =>
    MORNING.replace("2031-06-21", `2031-06-${n + 10}`).replace("out 90 ft", `out ${60 + n} ft`);
  return Array.from({ length: count }, (_, n) => one(n)).join("\n");
}

/** How many rigs are solved for everything that is found in a text. */
function solvedFor(memo: DepthMemo, read: Parse): number {
  const before = memo.solved;
  runChecks(analyzeJournal({ uri: "file:///season.trip", parse: read }, BOOKS, memo), { choices: CHOICES });
  return memo.solved - before;
}

test.each([2, 4, 12])("of %i mornings, an edit solves what hangs on the line", (count) => {
  const memo = createDepthMemo();
  const text = mornings(count);
  const first = parse(text);
  const all = solvedFor(memo, first);
  expect(all).toBeGreaterThanOrEqual(count);
  const typed = reparse(first, text.replace("out 61 ft", "out 161 ft"));
  expect(solvedFor(memo, typed)).toBe(1);
  const moved = reparse(typed, `# a line more\n${text.replace("out 61 ft", "out 161 ft")}`);
  expect(solvedFor(memo, moved)).toBe(0);
  const noted = reparse(
    moved,
    `# a line more\n${text.replace("out 61 ft", "out 161 ft")}\n07:00 note "calm"`,
  );
  expect(solvedFor(memo, noted)).toBe(0);
});

test("a reading is never farther off than its bound without a range says", () => {
  const books = [...EXAMPLES, BOOK, TOUCHES].map((text, n) => ({
    uri: `file:///${n}.trip`,
    parse: parse(text),
  }));
  const readings = books.flatMap((file) =>
    analyzeJournal(file, books, createDepthMemo()).trips.map((day) => calibrationReadings(day)),
  );
  const onCables = readings.flatMap(({ used }) => used.flatMap((one) => expectedReading(one) ?? []));
  const onLines = readings.flatMap(({ ofLines }) => ofLines.flatMap((one) => expectedLineReading(one) ?? []));
  expect(onCables.length).toBeGreaterThan(10);
  expect(onLines.length).toBeGreaterThan(2);
  for (const { off, offAtMost } of [...onCables, ...onLines]) expect(off).toBeLessThanOrEqual(offAtMost);
});

/** A leadcore held to the bottom three times. */
const TOUCHES = `trip 2031-06-21 "Bright Penny"
05:00 probe P1 speed 2.3 mph
05:02 set PB out 5 colors lure glow-spoon
05:10 touch PB bottom 35 ft
05:20 touch PB out 8 colors bottom 44 ft
05:30 touch PB out 10 colors bottom 54 ft`;

test("what would explain a touch is found once, until its setting is another", () => {
  const memo = createDepthMemo();
  const explanations = (read: Parse): unknown[] => {
    const { trips } = analyzeJournal({ uri: "file:///touches.trip", parse: read }, BOOKS, memo);
    return trips.flatMap((day) => calibrationReadings(day).ofLines.map(explainLine));
  };
  const first = parse(TOUCHES);
  const before = explanations(first);
  expect(before).toHaveLength(3);
  const noted = explanations(reparse(first, `${TOUCHES}\n05:40 note "calm"`));
  before.forEach((one, n) => {
    expect(noted[n]).toBe(one);
  });
  const [moved, ...others] = explanations(reparse(first, TOUCHES.replace("bottom 35 ft", "bottom 36 ft")));
  expect(moved).not.toEqual(before[0]);
  expect(others).toEqual(before.slice(1));
});
