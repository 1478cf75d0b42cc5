/** How much of a trip's checks is worked out again after one digit of an amount was typed, counted. */
import { beforeEach, expect, test, vi } from "vitest";
import { type Parse, parse, reparse } from "../../grammar/parse.ts";
import { createDepthMemo } from "../../server/analysis/depth-memo.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";
import * as speedUsed from "../../server/analysis/speed-used.ts";
import { runChecks } from "../../server/checks/run-checks.ts";
import * as calibrate from "../../server/physics/calibrate.ts";
import * as lineCurve from "../../server/physics/line-curve.ts";
import * as roughCurves from "../../server/physics/rough-curves.ts";
import * as settled from "../../server/physics/settled-downrigger.ts";

vi.mock("../../server/analysis/speed-used.ts", { spy: true });
vi.mock("../../server/physics/settled-downrigger.ts", { spy: true });
vi.mock("../../server/physics/calibrate.ts", { spy: true });
vi.mock("../../server/physics/line-curve.ts", { spy: true });
vi.mock("../../server/physics/rough-curves.ts", { spy: true });

const BOOK = `boat "Bright Penny"
  units ft mph F lb in
  zone America/Detroit
  quiet no-profile
cable rigger-wire steel diameter 0.9 mm
ball round-12 sphere 12 lb
lure glow-spoon spoon 4 in
rig P1 downrigger port cable rigger-wire ball round-12
rig C1 downrigger center cable rigger-wire ball round-12 probe 1.25 ft
rig S1 downrigger starboard cable rigger-wire ball round-12
`;
/** Read anew for each test: what is kept is kept by the gear it was made from. */
let books = [{ uri: "file:///b.gear", parse: parse(BOOK) }];

/** C1's cable out, ft, one after the other, and what its probe then shows. */
const LENGTHS = [
  [60, 57],
  [80, 75],
  [100, 92],
  [120, 109],
  [90, 83],
] as const;

/** A trip of about 150 lines: three downriggers, four readings of the probe at each length, and a turn after each. */
function day(lengths: readonly (readonly [number, number])[] = LENGTHS): string {
  const lines: string[] = ['trip 2031-06-21 "Bright Penny"'];
  const write = (line: string): void => {
    const minute = 300 + lines.length;
    lines.push(
      `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")} ${line}`,
    );
  };
  write("surface temp 62 F speed 2.4 mph");
  write("set P1 out 55 ft setback 20 ft lure glow-spoon");
  write("set S1 out 70 ft setback 20 ft lure glow-spoon");
  for (const [i, [out, depth]] of lengths.entries()) {
    write(`${i === 0 ? "set" : "move"} C1 out ${out} ft${i === 0 ? " setback 15 ft lure glow-spoon" : ""}`);
    for (let k = 0; k < 4; k++)
      write(`probe C1 depth ${depth} ft temp 48 F speed ${2.3 + 0.1 * (k % 2)} mph`);
    write(`turn ${i % 2 === 0 ? "left" : "right"} to 090`);
    while (lines.length < 30 * (i + 1)) write('note "calm"');
  }
  return `${lines.join("\n")}\n`;
}

/** What was worked out for the checks of a text. */
function workFor(read: Parse, memo = createDepthMemo()) {
  vi.clearAllMocks();
  const found = runChecks(analyzeJournal({ uri: "file:///a.trip", parse: read }, books, memo), {});
  return {
    found: found.map((one) => one.slug),
    solves: vi.mocked(settled.solveSettled).mock.calls.length,
    fits: vi.mocked(calibrate.fitCalibration).mock.calls.length,
    roughFits: vi.mocked(calibrate.fitDragAndCounter).mock.calls.length,
    speeds: vi.mocked(speedUsed.speedAt).mock.calls.length,
    curves: vi.mocked(lineCurve.lineCurve).mock.calls.length,
    rough: vi.mocked(roughCurves.roughDownriggerCurves).mock.calls.length,
  };
}

beforeEach(() => {
  books = [{ uri: "file:///b.gear", parse: parse(BOOK) }];
});

test("a quiet trip is fitted and drawn roughly only", () => {
  const { found, fits, curves, rough } = workFor(parse(day()));
  expect(found).toEqual([]);
  expect({ fits, curves, rough }).toEqual({ fits: 0, curves: 0, rough: 15 });
});

test("a rig without readings leaves what was made of the other's alone", () => {
  const memo = createDepthMemo();
  const first = parse(day());
  const all = workFor(first, memo);
  // One depth, and the one rig in each turn; its range only where it may be told.
  const { solves, fits, curves, rough } = workFor(
    reparse(first, day().replace("P1 out 55", "P1 out 56")),
    memo,
  );
  expect({ solves, fits, curves, rough }).toEqual({ solves: 1, fits: 0, curves: 0, rough: 5 });
  expect(all.solves).toBeGreaterThan(20);
});

test("of the rig with the readings only what hangs on the line is solved again", () => {
  const memo = createDepthMemo();
  const first = parse(day());
  workFor(first, memo);
  const { found, solves, fits, curves, rough } = workFor(
    reparse(first, day().replace("C1 out 100", "C1 out 101")),
    memo,
  );
  // Its depth; of its readings a middle and four slopes; in its turn the rig.
  expect(found).toEqual([]);
  expect({ solves, fits, curves, rough }).toEqual({ solves: 6, fits: 0, curves: 0, rough: 1 });
});

test("typing in a setting finds no speed again, and fits no counter whose readings stay", () => {
  const memo = createDepthMemo();
  const first = parse(day());
  const all = workFor(first, memo);
  const { roughFits, speeds } = workFor(reparse(first, day().replace("P1 out 55", "P1 out 56")), memo);
  expect({ roughFits, speeds }).toEqual({ roughFits: 0, speeds: 0 });
  expect(Math.min(all.roughFits, all.speeds)).toBeGreaterThan(0);
});

test("one length only is told from a middle and two slopes: no counter is fitted", () => {
  const only = day([[60, 58]]);
  const memo = createDepthMemo();
  const first = parse(only);
  workFor(first, memo);
  const { solves, roughFits } = workFor(reparse(first, only.replace("C1 out 60", "C1 out 61")), memo);
  // Its depth besides.
  expect({ solves, roughFits }).toEqual({ solves: 4, roughFits: 0 });
});

/** The same lengths on a cable that drags so much more that a rough fit has to begin anew nearer to it. */
const DRAGGING = [
  [60, 55],
  [80, 71],
  [100, 86],
  [120, 101],
  [90, 79],
] as const;

test("where a fit begins anew, a digit leaves what is expected of the other settings from there", () => {
  const memo = createDepthMemo();
  const first = parse(day(DRAGGING));
  const all = workFor(first, memo);
  expect(all.roughFits).toBe(2);
  const second = reparse(first, day(DRAGGING).replace("C1 out 100", "C1 out 99"));
  const typed = workFor(second, memo);
  // Its depth; of its readings a middle and four slopes, from the book and from where the second fit begins.
  expect({ solves: typed.solves, roughFits: typed.roughFits }).toEqual({ solves: 11, roughFits: 2 });
  const back = workFor(reparse(second, day(DRAGGING)), memo);
  expect({ solves: back.solves, roughFits: back.roughFits }).toEqual({ solves: 0, roughFits: 0 });
});
