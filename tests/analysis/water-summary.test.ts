/** The water's part of a trip's summary: layers as read, current by leg, light, fish by the hour. */
import { describe, expect, test } from "vitest";
import { createDepthMemo } from "../../server/analysis/depth-memo.ts";
import { analyzeTrip, type TripAnalysis } from "../../server/analysis/journal-analysis.ts";
import { waterReadingSentences } from "../../server/reports/water-reading-sentences.ts";
import { waterSummarySentences } from "../../server/reports/water-summary-sentences.ts";
import { readTrip } from "../model/read-trip.ts";

const MPH = 0.44704;
const HOUR_MS = 3_600_000;

const dayOf = (lines: string, date?: string): TripAnalysis =>
  analyzeTrip(readTrip(`${lines}\n`, date), createDepthMemo());
const waterOf = (lines: string, date?: string) => dayOf(lines, date).summary.water;
const at = (clock: string, date = "2031-06-21"): number => Date.parse(`${date}T${clock}:00-04:00`);

describe("profiles", () => {
  const lines = `05:00 surface temp 67.5 F
05:10 profile 0 m 20 C, 10 m 19 C, 15 m 18 C, 18 m 10 C, 25 m 7 C, 40 m 5 C
12:30 profile 0 m 20 C, 40 m 5 C`;
  test("each with its layers and the lines it was taken from", () => {
    const { layers } = waterOf(lines);
    expect(layers.map((one) => one.layers.kind)).toEqual(["layers", "too-few"]);
    // The surface of ten minutes before is of the same water.
    expect(layers.map((one) => one.lines)).toEqual([[1, 2], [3]]);
  });
  test.each([
    [lines, /05:10 thermocline about \d+ ft; 12:30 too few depths to tell a thermocline/u],
    ["05:10 profile 0 ft 42 F, 50 ft 42 F, 100 ft 41 F", /05:10 no thermocline/u],
    ["05:10 profile 0 m 20 C, 10 m 19.8 C, 40 m 5 C", /thermocline somewhere between 33 and 131 ft/u],
  ])("%s in words", (given, wanted) => {
    expect(waterSummarySentences(dayOf(given)).join("\n")).toMatch(wanted);
  });
});

describe("current by leg", () => {
  const lines = `05:00 gps speed 2.0 mph course 310
05:00 surface speed 2.3 mph
05:30 gps speed 2.2 mph course 312
05:30 surface speed 2.3 mph
06:00 turn right to 130
06:02 gps speed 2.9 mph course 130
06:02 surface speed 2.3 mph
06:20 gps speed 2.6 mph course 130
06:20 surface speed 2.3 mph`;
  test("the mean of its pairs; none near the turn", () => {
    const { legs } = waterOf(lines);
    expect(legs.map((leg) => Number(((leg.onTop?.alongMS ?? 0) / MPH).toFixed(6)))).toEqual([-0.2, 0.3]);
    expect(legs.map((leg) => leg.atProbe)).toEqual([null, null]);
    expect(legs.map((leg) => leg.lines)).toEqual([
      [1, 2, 3, 4],
      [8, 9],
    ]);
  });
  test("a speed that no current makes has no say", () => {
    const slip = lines.replace("05:30 gps speed 2.2 mph", "05:30 gps speed 22 mph");
    expect((waterOf(slip).legs[0]?.onTop?.alongMS ?? 0) / MPH).toBeCloseTo(-0.3, 6);
  });
});

describe("a leg's current says what the hover of its readings does", () => {
  const through = (instrument: string, ground: number) =>
    `05:00 ${instrument} speed 2.4 mph\n05:00 gps speed ${ground} mph course 090`;
  // Told from none: 0.4 mph and more of the wheel on top, 0.2 mph and more at the probe.
  test.each([
    ["surface", 2.8, "no current to speak of", "on 090 none to speak of on top."],
    ["surface", 2.9, "running with about half a mph", "on 090 with half a mph on top."],
    ["surface", 1.9, "running into about half a mph", "on 090 into half a mph on top."],
    ["probe P1", 2.5, "no current to speak of", "on 090 none to speak of at the probe."],
    [
      "probe P1",
      2.6,
      "running with about a quarter of a mph",
      "on 090 with a quarter of a mph at the probe.",
    ],
  ])("%s at 2.4 mph, over ground %d", (instrument, ground, hover, leg) => {
    const day = dayOf(through(instrument, ground));
    expect(waterReadingSentences(day, 2).join(" ")).toContain(hover);
    expect(waterSummarySentences(day).join(" ")).toContain(leg);
  });
});

describe("light", () => {
  const place = "04:00 gps at 44.7 -86.3";
  test("sunrise and sunset of the trip's day, and the moon at its first line", () => {
    const { sun, moon } = waterOf(place);
    expect(sun?.sunriseMs).toBeGreaterThan(at("05:30"));
    expect(sun?.sunsetMs).toBeLessThan(at("22:00"));
    expect(moon?.phase).toBeGreaterThan(0);
  });
  test("none without a position", () => {
    expect(waterOf("04:00 surface temp 60 F")).toMatchObject({ sun: null, moon: null });
  });
  const caught = (lines: string, date?: string): (number | null)[] =>
    dayOf(`${place}\n04:10 set P1 out 60 ft\n${lines}`, date).summary.caughtAt.map(
      (one) => one.sunriseMinutes,
    );
  const rise = (waterOf(place).sun?.sunriseMs ?? Number.NaN) / 60_000;
  const minutes = (clock: string): number => Math.round(at(clock) / 60_000 - rise);
  test("minutes from sunrise of the strike, else of the landing", () => {
    expect(caught("06:20 strike P1\n06:30 catch P1 king")).toEqual([minutes("06:20")]);
    expect(caught("06:30 catch P1 king")).toEqual([minutes("06:30")]);
    expect(caught("04:30 catch P1 king")).toEqual([minutes("04:30")]);
    expect(minutes("04:30")).toBeLessThan(0);
  });
  test("past midnight from the sunrise of the new day", () => {
    const [found] = caught("2031-06-22 00:30 catch P1 king");
    // The sun rises seconds later on the next day.
    expect(Math.abs((found ?? 0) - minutes("00:30"))).toBeLessThanOrEqual(1);
  });
  test.each([
    ["without a clock", "catch P1 king", "2031-06-21"],
    ["in the hour that daylight saving skips", "02:30 catch P1 king", "2031-03-09"],
    ["in the hour that it repeats", "01:30 catch P1 king", "2031-11-02"],
  ])("none %s", (_, line, date) => {
    const lines = `00:10 gps at 44.7 -86.3\n00:20 set P1 out 60 ft\n${line}`;
    expect(dayOf(lines, date).summary.caughtAt.map((one) => one.sunriseMinutes)).toEqual([null]);
  });
  test("told by its offset, the repeated hour is two", () => {
    const of = (offset: string) =>
      dayOf(`00:10 gps at 44.7 -86.3\n00:20 set P1 out 60 ft\n01:30${offset} catch P1 king`, "2031-11-02")
        .summary.caughtAt[0]?.sunriseMinutes ?? Number.NaN;
    expect(of("-05:00") - of("-04:00")).toBe(60);
  });
});

describe("landed by the hour", () => {
  const lines = `05:30 set P1 out 60 ft
06:15 catch P1 king
06:30 again P1
08:00 pull P1`;
  test("fish and the rod-hours of every hour in which a rod fished", () => {
    expect(waterOf(lines).landedByHour).toEqual([
      { fromMs: at("05:00"), landed: 0, rodHours: 0.5 },
      { fromMs: at("06:00"), landed: 1, rodHours: 0.75 },
      { fromMs: at("07:00"), landed: 0, rodHours: 1 },
    ]);
  });
  test("the repeated hour comes twice, and the second is said to", () => {
    const night = `00:30 set P1 out 60 ft\n01:30-04:00 catch P1 king\n01:40-04:00 again P1\n02:30 pull P1`;
    const day = dayOf(night, "2031-11-02");
    expect(day.summary.water.landedByHour).toHaveLength(4);
    expect(waterSummarySentences(day).join("\n")).toMatch(
      /from 01:00 1 in 0\.8, from 01:00 again 0 in 1, from 02:00/u,
    );
  });
  test("is worded as what was", () => {
    expect(waterSummarySentences(dayOf(lines)).join("\n")).toContain(
      "Landed hour by hour, as it was that day: from 05:00 0 in 0.5 rod-hours, from 06:00 1 in 0.8, from 07:00 0 in 1.",
    );
  });
  test("hours are those of the clock, whose zones may differ by half of one", () => {
    const [first] = waterOf(lines).landedByHour;
    expect((first?.fromMs ?? 1) % HOUR_MS).toBe(0);
  });
});
