import { describe, expect, test } from "vitest";
import { createDepthMemo } from "../../server/analysis/depth-memo.ts";
import { analyzeTrip } from "../../server/analysis/journal-analysis.ts";
import type { TripSummary } from "../../server/analysis/summary.ts";
import { readTrip } from "../model/read-trip.ts";

function summaryOf(lines: string): TripSummary {
  return analyzeTrip(readTrip(lines), createDepthMemo()).summary;
}

const DAY = `04:30 depart
05:00 set P1 out 60 ft setback 15 ft lure a
05:00 set S1 out 50 ft setback 12 ft lure c
05:05 surface temp 61 F speed 2.2 mph
05:10 probe P1 temp 48 F speed 2.5 mph
06:00 strike P1
06:15 catch P1 king 12 lb kept
06:30 again P1
06:40 gps speed 2.0 mph
07:00 lost S1 coho
07:15 again S1
07:20 probe P1 temp 46 F speed 2.3 mph
08:00 catch P1 coho released
08:00 pull all
09:00 return
catch unknown coho
`;

/** Worked by hand: P1 fishes 05:00 to 06:00 and 06:30 to 08:00, S1 05:00 to 07:00 and 07:15 to 08:00; wet besides is P1's fish. */
describe("a day", () => {
  const summary = summaryOf(DAY);

  test("hours and rod-hours", () => {
    expect(summary.hours).toBeCloseTo(4.5, 12);
    expect(summary.rodHoursFishing).toBeCloseTo(2.5 + 2.75, 12);
    expect(summary.rodHoursWet).toBeCloseTo(2.5 + 0.25 + 2.75, 12);
    expect(summary.rodHoursByRig.map(({ rig, fishing }) => [rig, fishing])).toEqual([
      ["P1", 2.5],
      ["S1", 2.75],
    ]);
  });

  test("bites and fish", () => {
    const { landed, lost, broke, missed, open } = summary;
    expect({ landed, lost, broke, missed, open }).toEqual({
      landed: 3,
      lost: 1,
      broke: 0,
      missed: 0,
      open: 0,
    });
    expect(summary.species).toEqual([
      { species: "chinook", kept: 1, released: 0, unsaid: 0 },
      { species: "coho", kept: 0, released: 1, unsaid: 1 },
    ]);
  });

  test("fish per rod-hour, with the range that would fit as well", () => {
    // Three fish: 1.102065 to 6.680783 (exact 80 % limits of a Poisson mean; tails of 10 % checked below).
    const { rate, range } = summary.landedPerRodHour ?? { rate: 0, range: { low: 0, high: 0 } };
    expect(rate).toBeCloseTo(3 / 5.25, 12);
    expect(chanceOfAtMost(3, range.high * 5.25)).toBeCloseTo(0.1, 9);
    expect(1 - chanceOfAtMost(2, range.low * 5.25)).toBeCloseTo(0.1, 9);
  });

  test("speeds and temperatures", () => {
    const { down, surface, ground } = summary.speedsMS;
    expect([down?.count, surface?.count, ground?.count]).toEqual([2, 1, 1]);
    expect(down?.low).toBeCloseTo(2.3 * 0.44704, 12);
    expect(summary.tempsC.down?.high).toBeCloseTo((48 - 32) / 1.8, 12);
  });

  test("each fish with the depth its line was last computed at", () => {
    expect(summary.caughtAt.map(({ rig, species, lure }) => [rig, species, lure])).toEqual([
      ["P1", "chinook", "a"],
      ["P1", "coho", "a"],
      ["unknown", "coho", undefined],
    ]);
    const depths = summary.caughtAt.map(({ depthM }) => depthM);
    expect(depths[0]).toBeGreaterThan(50 * 0.3048);
    expect(depths[2]).toBeNull();
    expect([summary.depthsComputed, summary.depthLines]).toEqual([4, 4]);
  });
});

/** P(X <= n) of a Poisson count, by its sum. */
function chanceOfAtMost(n: number, mean: number): number {
  let term = Math.exp(-mean);
  let sum = term;
  for (let k = 1; k <= n; k++) {
    term *= mean / k;
    sum += term;
  }
  return sum;
}

describe("lines in doubt", () => {
  test("an afternoon written like a morning counts as the afternoon", () => {
    const slip = summaryOf("05:00 set P1 out 60 ft\n12:30 miss P1\n1:05 pull all");
    const meant = summaryOf("05:00 set P1 out 60 ft\n12:30 miss P1\n13:05 pull all");
    expect(slip.rodHoursFishing).toBeCloseTo(8 + 1 / 12, 9);
    expect([slip.rodHoursByRig, slip.hours]).toEqual([meant.rodHoursByRig, meant.hours]);
    expect([slip.slippedLines, meant.slippedLines]).toEqual([1, 0]);
  });

  test("so do a night past midnight and the return", () => {
    const summary = summaryOf("22:00 depart\n23:00 set P1 out 60 ft\n00:30 pull P1\n01:00 return");
    expect([summary.hours, summary.rodHoursFishing, summary.slippedLines]).toEqual([3, 1.5, 2]);
  });

  test("a time that nothing explains is taken as written", () => {
    const summary = summaryOf("05:00 set P1 out 60 ft\n07:00 birds some\n06:55 birds some\n08:00 pull P1");
    expect([summary.misplacedLines, summary.rodHoursFishing]).toEqual([1, 3]);
  });
});

describe("readings that are doubted, or read on the run, are no part of the extents", () => {
  test.each([
    ["05:30 gps speed 24 mph", null],
    ["05:30 gps speed 6.5 mph sure", 6.5],
    ["05:30 run\n05:35 gps speed 18 mph sure", null],
    ["05:30 run\n05:35 gps speed 18 mph sure\n05:50 set P1 out 60 ft\n05:51 gps speed 2 mph", 2],
  ])("%j", (lines, highMph) => {
    const high = summaryOf(`05:00 set P1 out 60 ft\n${lines}`).speedsMS.ground?.high;
    expect(high === undefined ? null : high / 0.44704).toEqual(
      highMph === null ? null : expect.closeTo(highMph, 9),
    );
  });

  test.each([
    ["500 F", null],
    ["4.8 F", null],
    ["120 F sure", null],
    ["95 F", null],
    ["95 F sure", 35],
    ["48.2 F", 9],
  ])("%s", (temp, highC) => {
    const high = summaryOf(`05:00 set P1 out 60 ft\n05:30 probe P1 temp ${temp}`).tempsC.down?.high;
    expect(high === undefined ? null : high).toEqual(highC === null ? null : expect.closeTo(highC, 9));
  });
});

describe("what isn't written isn't guessed", () => {
  test("a day without lines has no hours and no rate", () => {
    const summary = summaryOf("birds some\n");
    expect([summary.hours, summary.rodHoursWet, summary.landedPerRodHour]).toEqual([null, 0, null]);
  });

  test("without departure or return, from the first time to the last", () => {
    expect(summaryOf("05:00 birds some\n06:30 fleas some").hours).toBeCloseTo(1.5, 12);
  });
});

describe("rods", () => {
  test("a cast or jigged rod counts its anglers", () => {
    const summary = summaryOf("05:00 set J1 out 90 ft anglers 4\n06:00 move J1 anglers 2\n07:00 pull J1");
    expect(summary.rodHoursFishing).toBeCloseTo(6, 12);
  });

  test("a rig of several rods counts each", () => {
    expect(summaryOf("05:00 set TW out 90 ft\n06:00 pull TW").rodHoursFishing).toBeCloseTo(2, 12);
  });

  test("those never pulled are counted to the return", () => {
    const summary = summaryOf("05:00 set P1\n05:30 set S1\n06:00 return");
    expect([summary.assumedPulls, summary.rodHoursWet]).toEqual([2, 1.5]);
  });

  test.each([
    ["on deck for a change", "05:00 set P1\n05:30 change P1 down 12 min\n06:00 pull P1", 0.8, 0],
    ["as long as it had been in", "05:00 set P1\n05:10 change P1 down 45 min\n06:00 pull P1", 5 / 6, 0],
    ["with a fish in the boat", "05:00 set P1\n05:30 catch P1 coho\n06:00 return", 0.5, 0],
    ["but wet with one on", "05:00 set P1\n05:30 strike P1\n05:45 lost P1 fish\n06:00 return", 0.75, 0],
    [
      "a move of its ball is no way back",
      "05:00 set P1\n05:30 lost P1 fish\n05:40 move P1 out 40 ft\n06:00 return",
      0.5,
      0,
    ],
    ["one left out is", "05:00 set P1\n05:00 set S1\n05:30 lost P1 fish\n06:00 return", 1.5, 1],
  ])("dry: %s", (_, lines, wet, assumedPulls) => {
    const summary = summaryOf(lines);
    expect(summary.rodHoursWet).toBeCloseTo(wet, 12);
    expect(summary.assumedPulls).toBe(assumedPulls);
  });
});
