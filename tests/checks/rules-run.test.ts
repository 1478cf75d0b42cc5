/** How many of a trip's rules run again after an edit: those that could see it, and no others. */
import { expect, test } from "vitest";
import { parse, reparse } from "../../grammar/parse.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";
import { TRIP_RULES } from "../../server/checks/day-rules.ts";
import { prepareChecks, type SeverityChoices } from "../../server/checks/run-checks.ts";
import { BOOK, BOOK_URI, TRIP_URI } from "./check-findings.ts";

const DAY = `trip 2031-06-21 "Bright Penny"
  guest G1 "Marv"
  target chinook
04:45 depart engine 1243.6 h
05:00 weather sky clear air 57 F
05:05 profile 0 ft 61 F, 30 ft 58 F, 50 ft 52 F
05:14 set P1 out 90 ft setback 20 ft lure glow-spoon
05:18 set S1 out 70 ft setback 20 ft lure glow-spoon
05:45 probe P1 depth 82 ft temp 45.5 F speed 2.6 mph
05:46 gps speed 2.4 mph course 310
05:48 sonar bottom 165 ft marks 65 to 80 ft
05:58 strike P1
06:14 catch P1 chinook 18 lb 35 in kept by G1
06:18 again P1
06:40 note "a seiche"
  the water rose
08:00 pull all
`;
const OF_LINES = TRIP_RULES.filter((rule) => "ofLine" in rule).length;
const EVERY = TRIP_RULES.length - OF_LINES;
const CHOICES: SeverityChoices = new Map();
const BOOKS = [{ uri: BOOK_URI, parse: parse(BOOK) }];

const EDITS: readonly (readonly [of: string, from: string, to: string, rules: number])[] = [
  ["nothing", "18 lb", "18 lb", 0],
  ["a fish's weight", "18 lb", "19 lb", 0],
  ["a note", "seiche", "seiches", 0],
  ["a note's text", "rose", "rose much", 0],
  ["a remark on the weather", "57 F", '57 F "calm"', 0],
  ["a comment", "08:00 pull all", "# all out\n08:00 pull all", 0],
  ["who reeled it", "by G1", "by G2", 1],
  ["the engine's hours", "1243.6", "1243.7", 1],
  ["a line that isn't read yet", "06:18 again", "06:1\n06:18 again", 2],
  ["an amount", "out 90 ft", "out 91 ft", 12],
  ["a lure", "setback 20 ft lure glow-spoon\n05:45", "setback 20 ft lure mini-spoon\n05:45", 12],
  ["a probe's depth", "depth 82 ft", "depth 83 ft", 16],
  ["a course", "course 310", "course 300", 14],
  ["marks", "65 to 80 ft", "65 to 82 ft", 15],
  ["a guest", 'guest G1 "Marv"', 'guest G1 "Marvin"', 1],
  ["a clock", "05:45", "05:44", EVERY - 2],
  ["a trip below", "pull all\n", 'pull all\ntrip 2031-06-22 "Bright Penny"\n', 2 * TRIP_RULES.length + 1],
  ["the gear of the day", "trip 2031-06-21", "trip 2031-06-22", TRIP_RULES.length],
];

test.each(EDITS)("%s", (_, from, to, rules) => {
  const read = parse(DAY);
  expect(rulesRunIn(read)).toBe(TRIP_RULES.length);
  expect(rulesRunIn(reparse(read, DAY.replace(from, to)))).toBe(rules);
});

/** Each rule that runs is a step; one more ends the trip. */
function rulesRunIn(read: ReturnType<typeof parse>): number {
  const analysis = analyzeJournal({ uri: TRIP_URI, parse: read }, BOOKS);
  return [...prepareChecks(analysis, CHOICES)].length - 1;
}
