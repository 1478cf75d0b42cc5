/** Files that no captain writes: they are read to the end, in a time that grows with their length and no faster. */
import { expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";
import { LANGUAGE_RULES } from "../../server/checks/language-rules.ts";
import { runChecks } from "../../server/checks/run-checks.ts";
import { findingsIn, OPENER, TRIP_URI } from "./check-findings.ts";

const MEGABYTE = 1_000_000;

const slugsIn = (text: string, books: Record<string, string> = {}): string[] =>
  findingsIn(text, { books, rules: LANGUAGE_RULES }).map((finding) => finding.slug);

test("a line of 50 MB is not read, and its text not repeated", () => {
  const [found] = findingsIn(`${OPENER}05:14 set ${"x".repeat(50 * MEGABYTE)} out 72 ft`, {
    rules: LANGUAGE_RULES,
  });
  expect(found?.slug).toBe("syntax");
  expect(found?.message.length).toBeLessThan(200);
}, 20_000);

test("a note of 50 MB", () => {
  expect(slugsIn(`note\n  ${"\u202e ab".repeat(10 * MEGABYTE)}`)).toEqual(["bidi-control"]);
}, 20_000);

test("a line as long as lines may be", () => {
  const name = "x".repeat(19_900);
  const [rig, ...others] = findingsIn(`${OPENER}05:14 set ${name} out 72 ft`, { rules: LANGUAGE_RULES });
  expect(others).toEqual([]);
  expect(rig?.slug).toBe("unknown-rig");
  expect(rig?.message.length).toBeLessThan(200);
});

test.each([
  ["an empty file", ""],
  ["a byte order mark alone", "\ufeff"],
  ["a trip without day and boat", "trip"],
  ["a trip without a boat", "trip 2031-06-21\n05:14 set P1 out 72"],
  ["a boat without a name", "boat\n  units ft\nrig P1 downrigger\n"],
  ["a nameless boat and trip", 'boat ""\ntrip 2031-06-21 ""\n05:14 set P1 out 72 ft'],
  ["a stamp that is none", "99:99 set\n2031-99-99 00:00 set P1"],
])("%s is read to the end", (_, text) => {
  expect(() => slugsIn(text)).not.toThrow();
});

/** Lines that each check has to look something up for. */
function hardFile(lines: number): string {
  const names = Array.from({ length: lines }, (_, index) => `n${index}`);
  const gear = names.map(
    (name, index) => `rig ${name} stacked n${index + 1}\nrig ${name} flat cable c${name}`,
  );
  const day = names.map(
    (name) => `05:14 set u${name} out 72 lure l${name} ball b${name}\n05:15 lost P1 s${name}`,
  );
  return `boat "Bright Penny"\nlure a\n${gear.join("\n")}\n${OPENER}${day.join("\n")}`;
}

test("sixteen thousand lines, each with something to look up, are checked in seconds", () => {
  const file = { uri: TRIP_URI, parse: parse(hardFile(4000)) };
  const analysis = analyzeJournal(file, []);
  const from = performance.now();
  const found = runChecks(analysis, { rules: LANGUAGE_RULES });
  // About a second; a check that looked at every line for every line would take minutes.
  expect(performance.now() - from).toBeLessThan(15_000);
  expect(found.length).toBeGreaterThan(16_000);
}, 60_000);
