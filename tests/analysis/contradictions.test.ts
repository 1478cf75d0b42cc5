/** Readings of one minute that can't both be true: what leans on them no longer, and what is said of it. */
import { describe, expect, test } from "vitest";
import { calibrationReadings } from "../../server/analysis/calibration-readings.ts";
import { createDepthMemo } from "../../server/analysis/depth-memo.ts";
import { analyzeTrip } from "../../server/analysis/journal-analysis.ts";
import { depthSentences } from "../../server/reports/depth-sentences.ts";
import { readTrip } from "../model/read-trip.ts";

const BOOK = `boat "Bright Penny"
  units ft mph F lb in
  zone America/Detroit
cable rigger-wire steel diameter 0.9 mm
ball round-12 sphere 12 lb
rig P1 downrigger port cable rigger-wire ball round-12 probe 1.25 ft
`;
const MPH = 0.44704;
const FOOT_M = 0.3048;
const SET = "05:12 set P1 out 90 ft";
const TWO = "05:10 probe P1 speed 2.1 mph depth 80 ft\n05:10 probe P1 speed 3.1 mph depth 80 ft";

function depthAt(lines: string, set = SET) {
  const day = analyzeTrip(readTrip(`${lines}\n${set}\n`, "2031-06-21", BOOK), createDepthMemo());
  const depth = day.depths.at(-1);
  if (depth === undefined) throw new Error("no line");
  const said = depthSentences(day, depth).join(" ");
  return { day, depth, said, mph: depth.speed && Number((depth.speed.value / MPH).toFixed(3)) };
}

describe("two speeds of a probe in one minute", () => {
  test("leave the speed on top, and are said to be left out", () => {
    const { depth, said, mph } = depthAt(`05:08 surface speed 2.4 mph\n${TWO}`);
    expect([depth.speed?.source, mph]).toEqual(["surface", 2.4]);
    expect(said).toContain("Left out: 2.1 mph and 3.1 mph at P1's probe, both read 05:10.");
  });
  test("leave the reading before them", () => {
    const { depth, mph } = depthAt(`05:00 probe P1 speed 2.2 mph depth 80 ft\n${TWO}`);
    expect([depth.speed?.source, mph]).toEqual(["probe", 2.2]);
  });
  test("leave no depth where there is nothing else, and the line says why", () => {
    const { depth, said } = depthAt(TWO);
    expect(depth.ball).toBeNull();
    expect(said).toContain("No depth for P1: the speeds read within reach contradict each other.");
    expect(said).toContain("Left out: 2.1 mph and 3.1 mph at P1's probe, both read 05:10.");
  });
  test.each([
    [
      "first",
      TWO.replace("80 ft\n", "80 ft sure\n"),
      2.1,
      "Left out: 3.1 mph at P1's probe, read 05:10; 2.1 mph of that minute is sure.",
    ],
    [
      "second",
      `${TWO} sure`,
      3.1,
      "Left out: 2.1 mph at P1's probe, read 05:10; 3.1 mph of that minute is sure.",
    ],
  ])("the %s holds where it is sure", (_, lines, speed, left) => {
    const { mph, said } = depthAt(lines);
    expect(mph).toBe(speed);
    expect(said).toContain(left);
  });
  test("nearer to each other, the later line holds and nothing is left out", () => {
    const { mph, said } = depthAt(TWO.replace("3.1", "2.3"));
    expect(mph).toBe(2.3);
    expect(said).not.toContain("Left out");
  });
  test("say nothing of the current", () => {
    const { day } = depthAt(`${TWO}\n05:10 surface speed 2.4 mph\n05:11 gps speed 2.0 mph course 310`);
    expect(day.water.looks.map((look) => look.where)).toEqual(["surface"]);
  });
});

describe("two depths of a probe in one minute", () => {
  const lines = TWO.replace("3.1", "2.1").replace("80 ft\n", "72 ft temp 50 F\n");
  test("leave the speed without a depth to join it to the one on top", () => {
    const { depth, said } = depthAt(`05:10 surface speed 1.8 mph\n${lines}`);
    expect([depth.speed?.source, depth.speed?.depthM, depth.speed?.onTop]).toEqual([
      "probe",
      undefined,
      undefined,
    ]);
    expect(said).toContain("Left out: 72 ft and 80 ft at P1's probe, both read 05:10.");
  });
  test("teach a calibration nothing, and place no temperature", () => {
    const { day } = depthAt(
      `05:00 set P1 out 90 ft\n05:05 probe P1 depth 81 ft temp 49 F speed 2.1 mph\n${lines}`,
    );
    const { used, unused } = calibrationReadings(day);
    expect(used.map(({ reading }) => Math.round(reading.measuredM / FOOT_M))).toEqual([81]);
    expect(unused.map(({ why }) => why)).toEqual([
      "its probe shows two depths in that minute",
      "its probe shows two depths in that minute",
    ]);
    expect(day.water.points.map(({ depthM }) => Math.round(depthM / FOOT_M))).toEqual([81]);
  });
});
