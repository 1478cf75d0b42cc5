/** What the readings of the bottom solve, counted: a line that can't have come near it is left alone. */
import { expect, test, vi } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";
import * as longLineBand from "../../server/physics/long-line-band.ts";

vi.mock("../../server/physics/long-line-band.ts", { spy: true });

const BOOK = `boat "Bright Penny"
  units ft mph F lb in
  zone America/Detroit
lure glow-spoon spoon 4 in
lure barred-plug plug 4.5 in
cable core leadcore diameter 0.85 mm
rig PB leadcore port cable core board 60 ft leader 30 ft
`;

function shoalsOf(lure: string, bottomFt: number, mph: number) {
  vi.clearAllMocks();
  const text = `trip 2031-06-21 "Bright Penny"
05:00 surface temp 62 F speed 2.4 mph
05:01 sonar bottom 200 ft
05:02 set PB out 5 colors lure ${lure}
05:30 surface temp 61 F speed ${mph} mph
05:31 sonar bottom ${bottomFt} ft
`;
  const book = { uri: "file:///b.gear", parse: parse(BOOK) };
  const [day] = analyzeJournal({ uri: "file:///a.trip", parse: parse(text) }, [book]).trips;
  if (day === undefined) throw new Error("no trip");
  expect(day.depths.map(({ lure }) => lure !== null)).toEqual([true]);
  const before = vi.mocked(longLineBand.solveLongLineBand).mock.calls.length;
  const told = day.shoals.flatMap(({ lines }) => lines.map(({ rig }) => rig));
  return { told, solved: vi.mocked(longLineBand.solveLongLineBand).mock.calls.length - before };
}

test.each([
  // lure, ft of water, mph at that minute, what is told, how often the line is solved
  ["glow-spoon", 120, 2.3, [], 0],
  ["glow-spoon", 120, 2.6, [], 0],
  // The shoal, a boat that all but stops, and a plug that may dive have to be solved.
  ["glow-spoon", 12, 2.4, ["PB"], 1],
  ["glow-spoon", 120, 0.8, [], 1],
  ["barred-plug", 120, 2.3, [], 1],
] as const)("a %s on leadcore over %d ft at %d mph", (lure, bottomFt, mph, told, solved) => {
  expect(shoalsOf(lure, bottomFt, mph)).toEqual({ told, solved });
});
