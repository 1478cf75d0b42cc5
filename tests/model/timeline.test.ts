import { describe, expect, test } from "vitest";
import { buildTimeline } from "../../server/model/build-timeline.ts";
import { localClock } from "../../server/model/local-time.ts";
import { readTrip } from "./read-trip.ts";

/** Stretches as `P1 fishing 05:00 60`: the rig, its state, from when, for how many minutes. */
function checkStretches(lines: string, stretches: readonly string[], date?: string): void {
  const trip = readTrip(lines, date);
  const found = buildTimeline(trip)
    .stretches.map((one) => ({ ...one, minutes: (one.toMs - one.fromMs) / 60_000 }))
    .sort((a, b) => (a.rig === b.rig ? a.fromMs - b.fromMs : a.rig < b.rig ? -1 : 1))
    .map(({ rig, state, fromMs, minutes }) => `${rig} ${state} ${localClock(fromMs, trip.zone)} ${minutes}`);
  expect(found).toEqual(stretches);
}

/** Doubts as `not-in-water P1 3`: what, which rig, which line of the file, from 1. */
function checkDoubts(lines: string, doubts: readonly string[]): void {
  const { anomalies } = buildTimeline(readTrip(lines));
  expect(anomalies.map(({ kind, rig, event }) => `${kind} ${rig} ${event.lineIndex + 1}`)).toEqual(doubts);
}

test.each<[string, string, string[]]>([
  [
    "a fish takes the rod out until again",
    "05:00 set P1 out 60 ft\n06:00 strike P1\n06:10 catch P1 coho\n06:15 again P1\n08:00 pull P1",
    ["P1 fishing 05:00 60", "P1 interrupted 06:00 15", "P1 fishing 06:15 105"],
  ],
  [
    "so do a loss and a break-off; a miss does not",
    "05:00 set P1\n06:00 lost P1 fish\n06:20 again P1\n06:30 miss P1\n07:00 broke P1 lure a\n07:10 set P1\n08:00 pull P1",
    [
      "P1 fishing 05:00 60",
      "P1 interrupted 06:00 20",
      "P1 fishing 06:20 40",
      "P1 interrupted 07:00 10",
      "P1 fishing 07:10 50",
    ],
  ],
  [
    "a rig with other capitals is the one that can be meant",
    "05:00 set p1 out 60 ft\n06:00 strike P1\n06:15 again p1\n08:00 pull p1",
    ["P1 fishing 05:00 60", "P1 interrupted 06:00 15", "P1 fishing 06:15 105"],
  ],
  [
    "a change is done at its time, and was out as long as it says",
    "05:00 set P1\n06:50 change P1 lure a down 4 min\n07:00 pull P1",
    ["P1 fishing 05:00 106", "P1 interrupted 06:46 4", "P1 fishing 06:50 10"],
  ],
  [
    "without saying how long it takes no time",
    "05:00 set P1\n06:50 change P1 lure a\n07:00 pull P1",
    ["P1 fishing 05:00 110", "P1 fishing 06:50 10"],
  ],
  [
    "a change after a fish puts it back",
    "05:00 set P1\n06:00 lost P1 fish\n06:10 change P1 lure a\n07:00 pull P1",
    ["P1 fishing 05:00 60", "P1 interrupted 06:00 10", "P1 fishing 06:10 50"],
  ],
  [
    "a move splits it",
    "05:00 set P1 out 60 ft\n06:00 move P1 out 70 ft\n07:00 pull P1",
    ["P1 fishing 05:00 60", "P1 fishing 06:00 60"],
  ],
  [
    "raising the ball interrupts every rod on it",
    "05:00 set P1\n05:10 set P1U above 20 ft\n06:00 pull P1\n06:30 set P1\n06:40 again P1U\n07:00 pull all",
    [
      "P1 fishing 05:00 60",
      "P1 fishing 06:30 30",
      "P1U fishing 05:10 50",
      "P1U interrupted 06:00 40",
      "P1U fishing 06:40 20",
    ],
  ],
  [
    "looking at it too, for as long as it takes",
    "05:00 set P1\n05:10 set P1U above 20 ft\n06:00 check P1 down 3 min\n07:00 pull all",
    [
      "P1 fishing 05:00 57",
      "P1 interrupted 05:57 3",
      "P1 fishing 06:00 60",
      "P1U fishing 05:10 47",
      "P1U interrupted 05:57 3",
      "P1U fishing 06:00 60",
    ],
  ],
  [
    "the upper rod alone leaves the lower fishing",
    "05:00 set P1\n05:00 set P1U above 20 ft\n06:00 pull P1U\n07:00 pull P1",
    ["P1 fishing 05:00 120", "P1U fishing 05:00 60"],
  ],
  [
    "pull all takes everything out",
    "05:00 set P1\n05:30 set S1\n05:40 strike S1\n06:00 pull all",
    ["P1 fishing 05:00 60", "S1 fishing 05:30 10", "S1 interrupted 05:40 20"],
  ],
  [
    "crossed lines are out until again",
    "05:00 set P1\n05:00 set S1\n06:00 tangle P1 with S1\n06:20 again S1\n06:30 again P1\n07:00 pull all",
    [
      "P1 fishing 05:00 60",
      "P1 interrupted 06:00 30",
      "P1 fishing 06:30 30",
      "S1 fishing 05:00 60",
      "S1 interrupted 06:00 20",
      "S1 fishing 06:20 40",
    ],
  ],
  [
    "or for as long as the line says",
    "05:00 set P1\n05:00 set S1\n06:00 tangle P1 with S1 down 9 min\n07:00 pull all",
    [
      "P1 fishing 05:00 51",
      "P1 interrupted 05:51 9",
      "P1 fishing 06:00 60",
      "S1 fishing 05:00 51",
      "S1 interrupted 05:51 9",
      "S1 fishing 06:00 60",
    ],
  ],
  [
    "a line without a clock is some time in the trip",
    "05:00 set P1\nstrike P1\ncatch P1 coho\n07:00 pull P1",
    ["P1 fishing 05:00 120"],
  ],
  [
    "a set without one has no hours until a line with one",
    "set P1\n05:00 strike P1\n05:10 again P1\n06:00 pull P1",
    ["P1 interrupted 05:00 10", "P1 fishing 05:10 50"],
  ],
  [
    "lines logged on two devices go by their times",
    "05:00 set P1\n06:00 strike P1\n07:00 pull all\n06:10 again P1\n05:30 set S1",
    ["P1 fishing 05:00 60", "P1 interrupted 06:00 10", "P1 fishing 06:10 50", "S1 fishing 05:30 90"],
  ],
  [
    "what was never pulled is out at the return, whatever is written below it",
    "05:00 set P1\n08:00 return\n09:00 strike P1",
    ["P1 fishing 05:00 180"],
  ],
  ["or at the last time there is", "05:00 set P1\n08:00 weather sky clear", ["P1 fishing 05:00 180"]],
])("%s", (_, lines, stretches) => {
  checkStretches(lines, stretches);
});

describe("clocks", () => {
  test("over midnight", () => {
    const lines = "23:00 set P1\n2031-06-22 00:10 strike P1\n2031-06-22 00:30 pull P1";
    checkStretches(lines, ["P1 fishing 23:00 70", "P1 interrupted 00:10 20"]);
  });

  test("the night that has an hour twice", () => {
    const lines = "00:30 set P1\n01:30-04:00 strike P1\n01:10-05:00 again P1\n02:10 pull P1";
    const stretches = ["P1 fishing 00:30 60", "P1 interrupted 01:30 40", "P1 fishing 01:10 60"];
    checkStretches(lines, stretches, "2031-11-02");
  });

  test("the night that lacks one", () => {
    checkStretches("01:30 set P1\n03:30 pull P1", ["P1 fishing 01:30 60"], "2031-03-09");
  });

  test("an afternoon by a twelve-hour clock stays where it is in the file", () => {
    checkDoubts("11:00 set P1\n1:10 strike P1\n1:20 again P1\n2:00 pull P1", []);
  });
});

test("the setting is carried from line to line", () => {
  const timeline = buildTimeline(
    readTrip("05:00 set P1 out 60 ft lure a\n05:30 move P1 out 70 ft\n05:40 pull P1\n06:00 again P1"),
  );
  expect(timeline.settingAfter.get(4)).toMatchObject({ outM: 70 * 0.3048, lure: "a" });
});

test("a rod struck is not clipped to the cable", () => {
  const { spreadAfter } = buildTimeline(
    readTrip("05:00 set P1 out 60 ft\n05:10 set P1U above 20 ft\n06:00 strike P1U"),
  );
  const clipped = (lineIndex: number): string[] =>
    [...(spreadAfter.get(lineIndex) ?? [])].flatMap(([rig, { isClipped }]) => (isClipped ? [rig] : []));
  expect([1, 2, 3].map(clipped)).toEqual([["P1"], ["P1", "P1U"], ["P1"]]);
});

describe("doubts", () => {
  test.each<[string, string[]]>([
    ["05:00 set P1\n06:00 strike P1\n06:05 catch P1 coho\n06:10 again P1\n07:00 pull P1", []],
    ["05:00 strike P1\n05:10 catch P1 coho", ["not-in-water P1 2"]],
    ["05:00 set P1\n05:10 pull P1\n05:20 move P1 out 70 ft", ["not-in-water P1 4"]],
    ["05:00 set P1\n05:10 set P1", ["already-set P1 3"]],
    ["05:00 set P1\n05:10 strike P1\n05:20 set P1", []],
    ["05:00 set P1\n05:10 lost P1 fish\n05:20 strike P1", ["waiting-again P1 4"]],
    ["05:00 set P1\n05:10 strike P1\n05:11 strike P1 slider", []],
    ["05:00 catch unknown coho", []],
  ])("%j", (lines, doubts) => {
    checkDoubts(lines, doubts);
  });
});

test("rigs still out at the return, and whether they fished", () => {
  const { assumedPulls } = buildTimeline(
    readTrip("05:00 set P1\n05:00 set S1\n06:00 lost S1 fish\n08:00 return\n09:00 strike P1"),
  );
  expect(assumedPulls.map(({ rig, state }) => `${rig} ${state}`)).toEqual(["P1 fishing", "S1 interrupted"]);
});

test("what stays as it was is kept once, however many lines look at it", () => {
  const readings = Array.from(
    { length: 30 },
    (_, n) => `05:${10 + n} sonar bottom 90 ft\n05:${10 + n} probe P1 depth 40 ft`,
  );
  const timeline = buildTimeline(readTrip(["05:00 set P1 out 60 ft", ...readings].join("\n")));
  expect(timeline.wetAfter.size).toBe(31);
  expect(new Set(timeline.wetAfter.values()).size).toBe(1);
  expect(timeline.spreadAfter.size).toBe(31);
  expect(new Set(timeline.spreadAfter.values()).size).toBe(1);
});
