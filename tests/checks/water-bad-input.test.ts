/** Readings as no captain means them: a clear message where there is one, never a crash, never a silent average. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { createDepthMemo } from "../../server/analysis/depth-memo.ts";
import { analyzeTrip } from "../../server/analysis/journal-analysis.ts";
import { waterReadingSentences } from "../../server/reports/water-reading-sentences.ts";
import { waterSummarySentences } from "../../server/reports/water-summary-sentences.ts";
import { LanguageService } from "../../server/service/language-service.ts";
import { readTrip } from "../model/read-trip.ts";
import { findingsIn, OPENER } from "./check-findings.ts";

const slugsIn = (lines: string, opener = OPENER): string[] =>
  findingsIn(`${opener}${lines}\n`).map((finding) => finding.slug);

const wordsOf = (lines: string, date?: string): string => {
  const day = analyzeTrip(readTrip(`${lines}\n`, date), createDepthMemo());
  const said = day.trip.events.flatMap(({ lineIndex }) => waterReadingSentences(day, lineIndex));
  return [...said, ...waterSummarySentences(day)].join("\n");
};

const READINGS = [
  "05:10 profile 0 ft 61 F, 30 ft 58 F, 50 ft 52 F, 70 ft 47 F, 100 ft 43 F",
  "05:45 probe P1 depth 82 ft temp 45.5 F speed 2.6 mph",
  "05:45 surface temp 61.2 F speed 2.3 mph",
  "05:45 gps speed 2.1 mph course 310 at 44 46.1N 086 21.7W",
  "06:20 gps speed 2.4 mph course 040 at 44 46.5N 086 22.0W",
  "06:20 surface speed 2.3 mph",
];

describe("in any order, and twice", () => {
  const inOrder = wordsOf(READINGS.join("\n"));
  test("out of order they say the same", () => {
    const sorted = (text: string): string[] => text.split("\n").sort();
    expect(sorted(wordsOf(READINGS.toReversed().join("\n")))).toEqual(sorted(inOrder));
  });
  test("a line written twice weighs no more than once", () => {
    const twice = wordsOf([...READINGS, ...READINGS].join("\n"));
    const summary = (text: string): string[] =>
      text.split("\n").filter((line) => /^(At least|Current along)/u.test(line));
    expect(summary(twice)).toEqual(summary(inOrder));
  });
  test("out of order they are told", () => {
    expect(slugsIn(READINGS.toReversed().join("\n"))).toContain("time-backwards");
  });
});

describe("that contradict each other", () => {
  test.each([
    ["two depths of one profile", "05:10 profile 0 ft 61 F, 50 ft 52 F, 50 ft 44 F", "temp-implausible"],
    [
      "one depth minutes apart",
      "05:10 probe P1 depth 60 ft temp 60 F\n05:14 probe P1 depth 60 ft temp 45 F",
      "temp-implausible",
    ],
    [
      "speeds that no current joins",
      "05:00 set P1 out 60 ft\n05:10 surface speed 2.3 mph\n05:10 gps speed 6.2 mph course 310",
      "speeds-disagree",
    ],
    [
      "one probe's speeds of one minute",
      "05:00 set P1 out 60 ft\n05:10 probe P1 speed 2.1 mph\n05:10 probe P1 speed 3.1 mph",
      "readings-contradict",
    ],
    [
      "one probe's depths of one minute",
      "05:00 set P1 out 60 ft\n05:10 probe P1 depth 50 ft\n05:10 probe P1 depth 58 ft",
      "readings-contradict",
    ],
    [
      "a wheel that died",
      "05:00 set P1 out 60 ft\n05:10 surface speed 0 mph\n05:10 gps speed 2.4 mph course 310",
      "stuck-wheel",
    ],
    [
      "a probe that died",
      "05:00 set P1 out 60 ft\n05:05 surface speed 2 mph\n05:10 probe P1 depth 55 ft\n05:20 move P1 out 90 ft\n05:25 probe P1 depth 55 ft",
      "probe-frozen",
    ],
    [
      "a position across the lake",
      "05:10 gps at 44 46.1N 086 21.7W\n05:20 gps at 44 46.1N 068 21.7W",
      "position-implausible",
    ],
  ])("%s", (_, lines, slug) => {
    expect(slugsIn(lines)).toContain(slug);
  });
});

describe("in the hour that daylight saving skips or repeats", () => {
  test.each([
    ["2031-03-09", "02:30", "clock-missing"],
    ["2031-11-02", "01:30", "clock-repeated"],
  ])("%s %s is told, and the day goes on", (date, clock, slug) => {
    const lines = `${clock} gps speed 2 mph course 310 at 44.7 -86.3\n${clock} surface speed 2.4 mph temp 50 F`;
    expect(slugsIn(lines, `trip ${date} "Bright Penny"\n`)).toContain(slug);
    expect(wordsOf(lines, date)).toContain("Sunrise");
  });
});

describe("at odd places", () => {
  test.each([
    ["across the antimeridian", "45 00.0N 179 59.9E", "45 00.0N 179 59.9W"],
    ["over the pole", "89 59.9N 000 00.0E", "89 59.9N 180 00.0E"],
    ["at the pole itself", "90 00.0N 000 00.0E", "90 00.0N 123 00.0W"],
  ])("%s a troll of some hundred yards is no jump", (_, one, other) => {
    const lines = `05:00 gps speed 2 mph at ${one}\n05:20 gps speed 2 mph at ${other}`;
    expect(slugsIn(lines)).not.toContain("position-implausible");
    expect(wordsOf(lines)).toMatch(/At least 0(\.\d)? nautical miles/u);
  });
});

/** A line of readings, its numbers anything that can be written. */
const anyNumber = fc.oneof(fc.integer({ min: -99, max: 999 }), fc.constantFrom(0, 1e6, -1e6, 0.1, 39.2, 32));
const anyClock = fc
  .tuple(fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 }))
  .map((parts) => parts.map((part) => String(part).padStart(2, "0")).join(":"));
const anyPlace = fc
  .tuple(fc.integer({ min: -90, max: 90 }), fc.integer({ min: -180, max: 180 }))
  .map(([lat, lon]) => ` at ${lat}.0 ${lon}.0`);
const anyLine = fc.oneof(
  fc
    .tuple(anyClock, fc.array(fc.tuple(anyNumber, anyNumber), { minLength: 1, maxLength: 6 }))
    .map(([clock, points]) => `${clock} profile ${points.map(([m, f]) => `${m} ft ${f} F`).join(", ")}`),
  fc
    .tuple(anyClock, anyNumber, anyNumber, anyNumber)
    .map(([clock, m, f, s]) => `${clock} probe P1 depth ${m} ft temp ${f} F speed ${s} mph`),
  fc
    .tuple(anyClock, anyNumber, anyNumber)
    .map(([clock, f, s]) => `${clock} surface temp ${f} F speed ${s} mph`),
  fc
    .tuple(
      anyClock,
      anyNumber,
      fc.integer({ min: -400, max: 400 }),
      fc.constantFrom("", " magnetic"),
      anyPlace,
    )
    .map(
      ([clock, s, course, north, place]) => `${clock} gps speed ${s} mph course ${course}${north}${place}`,
    ),
  fc.tuple(anyClock, fc.integer({ min: 0, max: 360 })).map(([clock, to]) => `${clock} turn left to ${to}`),
  fc.tuple(anyClock, anyNumber).map(([clock, out]) => `${clock} set P1 out ${out} ft`),
  fc.tuple(anyClock).map(([clock]) => `${clock} catch P1 king`),
);
const anyDay = fc.tuple(
  fc.constantFrom("2031-06-21", "2026-03-08", "2031-11-02"),
  fc.array(anyLine, { minLength: 1, maxLength: 14 }),
);

test("whatever is written, everything is answered and no figure is out of this world", () => {
  fc.assert(
    fc.property(anyDay, ([date, lines]) => {
      const text = `trip ${date} "Bright Penny"\n  target chinook\n${lines.join("\n")}\n`;
      const service = new LanguageService({ booksNear: () => BOOKS, severities: () => new Map() });
      service.update("file:///day.trip", 1, text);
      const said = [
        ...service.diagnostics("file:///day.trip").map((one) => one.message),
        ...text
          .split("\n")
          .map((_, line) => JSON.stringify(service.hover("file:///day.trip", { line, character: 1 }))),
      ];
      expect(said.filter((one) => /NaN|Infinity|undefined|null ft/u.test(String(one)))).toEqual([]);
    }),
    { seed: 20_310_621, numRuns: 150 },
  );
});

const BOOKS = [
  {
    uri: "file:///boat.gear",
    parse: parse(`boat "Bright Penny"
  units ft mph F lb in
  zone America/Detroit
cable rigger-wire steel diameter 0.9 mm
ball round-12 sphere 12 lb
rig P1 downrigger port cable rigger-wire ball round-12 probe 1.25 ft
`),
  },
];
