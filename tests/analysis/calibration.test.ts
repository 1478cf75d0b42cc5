/** Which lines of trips are readings, with what setting, and how they are grouped by gear. */
import { describe, expect, test } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { calibrateAll, groupReadings } from "../../server/analysis/calibration.ts";
import { calibrationReadings, type ReadingsOfTrip } from "../../server/analysis/calibration-readings.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";

const FOOT_M = 0.3048;
const BOOK = `boat "Bright Penny"
  units ft mph F lb in
  sounder 2 ft
cable rigger-wire steel diameter 0.9 mm
cable rigger-braid braid diameter 0.6 mm
ball round-12 sphere 12 lb
lure glow-spoon spoon 4 in
rig C1 downrigger center cable rigger-wire ball round-12 probe 1.25 ft
rig C1U stacked C1
rig P1 downrigger port cable rigger-wire ball round-12
rig PB leadcore port
2031-08-09 rig C1 downrigger center cable rigger-braid ball round-12 probe 1.25 ft
`;

function readings(lines: string, date = "2031-06-21"): ReadingsOfTrip {
  const file = { uri: `file:///${date}.trip`, parse: parse(`trip ${date} "Bright Penny"\n${lines}\n`) };
  const [day] = analyzeJournal(file, [{ uri: "file:///b.gear", parse: parse(BOOK) }]).trips;
  if (day === undefined) throw new Error("no trip");
  return calibrationReadings(day);
}

const short = ({ used }: ReadingsOfTrip): unknown[] =>
  used.map(({ rig, counterM, speed, reading }) => [
    rig.name,
    reading.as,
    Math.round(reading.measuredM / FOOT_M),
    Math.round(counterM / FOOT_M),
    Number((speed.value / 0.44704).toFixed(1)),
    reading.rig.rods.length,
  ]);

describe("readings of a trip", () => {
  test("carry the cable, the rods clipped and the speed of their minute", () => {
    const lines = `05:00 set C1 out 90 ft setback 15 ft lure glow-spoon
05:02 set C1U above 20 ft setback 15 ft lure glow-spoon
05:10 probe C1 depth 82 ft speed 2.4 mph
05:20 strike C1U
05:30 probe C1 depth 83 ft speed 2.2 mph behind 20 ft
05:40 pull C1
05:50 set C1 out 60 ft
05:55 probe C1 depth 57 ft speed 2.0 mph`;
    expect(short(readings(lines))).toEqual([
      ["C1", "probe-depth", 82, 90, 2.4, 2],
      ["C1", "probe-depth", 83, 90, 2.2, 1],
      ["C1", "probe-behind", 20, 90, 2.2, 1],
      ["C1", "probe-depth", 57, 60, 2, 0],
    ]);
  });

  test("of a touch take its own cable, and the sounder with its face's depth added", () => {
    const lines = `05:00 surface speed 1.5 mph
05:00 set P1 out 90 ft
05:10 touch P1 out 120 ft
05:11 sonar bottom 115 ft
05:30 touch P1 out 110 ft bottom 108 ft`;
    expect(short(readings(lines))).toEqual([
      ["P1", "ball-depth", 117, 120, 1.5, 0],
      ["P1", "ball-depth", 108, 110, 1.5, 0],
    ]);
  });

  test.each([
    ["05:00 set C1 out 90 ft\n05:10 probe C1 depth 80 ft", "no speed was read near it"],
    ["05:10 probe C1 depth 80 ft speed 2 mph", "how much cable was out isn't stated"],
    [
      "05:00 set C1 out 90 ft on-bottom\n05:10 probe C1 depth 80 ft speed 2 mph",
      "the ball was on the bottom",
    ],
    [
      "05:00 set PB out 90 ft\n05:10 probe PB depth 30 ft speed 2 mph",
      "where the probe is clipped on PB isn't in the gear book (probe 5 ft on its rig line: so far above its diver, weight or leader)",
    ],
    [
      "05:00 set P1 out 90 ft\n05:10 probe P1 depth 80 ft speed 2 mph",
      "where the probe rides on P1 isn't in the gear book (probe 1.25 ft on its rig line)",
    ],
    [
      "05:00 set C1 out 95 cm\n05:10 probe C1 depth 93 ft speed 2 mph",
      "93 ft deep can't be with 3 ft of cable out (if it is so, write sure on its line)",
    ],
    [
      "05:00 set C1 out 60 ft\n05:10 probe C1 behind 90 ft speed 2 mph",
      "90 ft behind can't be with 60 ft of cable out (if it is so, write sure on its line)",
    ],
  ])("are left out with a reason: %s", (lines, why) => {
    const { used, unused } = readings(lines);
    expect([used.length, unused.map((one) => one.why)]).toEqual([0, [why]]);
  });
});

test("a depth beyond the cable counts where a counter that reads short may explain it, or the line says sure", () => {
  const lines = `05:00 surface speed 2 mph
05:00 set C1 out 60 ft
05:10 probe C1 depth 66 ft
05:20 probe C1 depth 90 ft
05:30 probe C1 depth 90 ft sure`;
  expect(readings(lines).used.map(({ event }) => event.line.clock?.slice(0, 5))).toEqual(["05:10", "05:30"]);
});

test("a new cable starts a new calibration from its date", () => {
  const lines = "05:00 set C1 out 90 ft\n05:10 probe C1 depth 80 ft speed 2.4 mph";
  const days = ["2031-08-10", "2031-06-21", "2031-07-01"].flatMap((date) => readings(lines, date).used);
  const groups = groupReadings(days).map((one) => [one.since, one.readings.map((reading) => reading.date)]);
  expect(groups).toEqual([
    ["", ["2031-06-21", "2031-07-01"]],
    ["2031-08-09", ["2031-08-10"]],
  ]);
  expect(calibrateAll(days).map((one) => [one.date, one.fit.ok])).toEqual([
    ["2031-07-01", true],
    ["2031-08-10", true],
  ]);
});
