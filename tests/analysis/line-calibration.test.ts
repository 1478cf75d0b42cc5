/** Leadcore, copper and divers learn from what the captain states: touches of the bottom, a probe clipped on the line. */
import { describe, expect, test } from "vitest";
import { lineCalibrationLine } from "../../server/analysis/calibration-line.ts";
import { calibrationReadings } from "../../server/analysis/calibration-readings.ts";
import { calibrateLines } from "../../server/analysis/line-calibration.ts";
import { depthSentences } from "../../server/reports/depth-sentences.ts";
import { lineCalibrationSentences } from "../../server/reports/line-calibration-sentences.ts";
import { readingSentences } from "../../server/reports/reading-sentences.ts";
import { dayOf, depthOf } from "./depth-of.ts";

/** What is written for the gear book, what is said, and what is not used. */
function learned(lines: string, gear?: string) {
  const { day } = dayOf(lines, gear);
  const { ofLines, unused } = calibrationReadings(day);
  const fits = calibrateLines(ofLines);
  return {
    text: fits.map((one) => lineCalibrationLine(day.trip.gear, one) ?? "").join("\n"),
    said: fits.flatMap(lineCalibrationSentences).join(" "),
    why: unused.map((one) => one.why),
    readings: ofLines.length,
  };
}

const FRESH = "06:00 probe P1 speed 2.3 mph\n";
const COLORS = `${FRESH}06:00 set PB out 5 colors lure glow-spoon
06:10 touch PB bottom 29 ft
06:20 touch PB out 8 colors bottom 44 ft
06:30 touch PB out 10 colors bottom 54 ft`;
const COUNTED = `${FRESH}06:00 set CU out 200 ft lure glow-spoon
06:10 touch CU bottom 45 ft
06:20 touch CU out 260 ft bottom 57 ft`;
const DIVER = `${FRESH}06:00 set SD out 60 ft lure glow-spoon
06:10 touch SD bottom 33 ft
06:20 touch SD out 150 ft bottom 75 ft
06:30 touch SD out 220 ft bottom 100 ft`;

describe("touches of the bottom", () => {
  test("in colors settle the drag, and say that the counter has no part in it", () => {
    const { text, said } = learned(COLORS);
    expect(text).toMatch(/^2031-06-21 calibrate PB drag [\d.]+ drag-error [\d.]+ readings 3$/u);
    expect(said).toContain("counted in colors, so there is no counter to fit");
    expect(said).toContain("Drag and weight of the line go together");
  });

  test("by a counter settle both, as far as they can be told apart", () => {
    const { text, said } = learned(COUNTED);
    expect(text).toMatch(
      /^2031-06-21 calibrate CU drag [\d.]+ .* counter-scale [\d.]+ .* scale-offset-link \S+ readings 2$/u,
    );
    expect(said).toMatch(/100 on CU's counter is \d+ ft/u);
  });

  test("with a diver settle its areas; of one length they can't be told apart", () => {
    const { text, said } = learned(DIVER);
    expect(text).toMatch(
      /^2031-06-21 calibrate SD lift-area \S+ cm2 lift-area-error \S+ cm2 drag-area \S+ cm2 drag-area-error \S+ cm2 area-link \S+ readings 3$/u,
    );
    expect(said).not.toContain("can't be told apart");
    const one = learned("06:00 set SD out 150 ft lure glow-spoon\n06:10 touch SD bottom 70 ft");
    expect(one.said).toContain(
      "can't be told apart yet: touch bottom with it at a short and at a long length",
    );
  });
});

describe("the reading to take next", () => {
  const fitted = (lines: string, gear?: string) => {
    const [one] = calibrateLines(calibrationReadings(dayOf(lines, gear).day).ofLines);
    if (one === undefined || !one.what.fit.ok) throw new Error(`no fit of ${lines}`);
    return one;
  };
  const lnDragSd = (lines: string): number => {
    const { what } = fitted(lines);
    return what.is === "line" && what.fit.ok ? what.fit.lnDragSd : Number.NaN;
  };

  test("of leadcore is told in colors, and is the one that takes the most off the error", () => {
    const short = `${FRESH}06:00 set PB out 3 colors lure glow-spoon\n06:10 touch PB bottom 18 ft`;
    const { next } = fitted(short);
    expect([next?.kind, Math.round((next?.outM ?? 0) / 9.144)]).toEqual(["touch", 10]);
    expect(learned(short).said).toMatch(
      /What would tell the most: touch bottom with 10 colors out on PB, at 2\.4 mph or so\. It takes about \d+ % off the error\./u,
    );
    const far = lnDragSd(`${short}\n06:20 touch PB out 10 colors bottom 54 ft`);
    const near = lnDragSd(`${short}\n06:20 touch PB out 2 colors bottom 12 ft`);
    expect(far).toBeLessThan(near);
    expect(Math.abs(far / lnDragSd(short) - (next?.leaves ?? 0))).toBeLessThan(0.1);
  });

  test("is no longer than the line", () => {
    const gear = "rig PH leadcore cable lead-27 holds 6 colors";
    const { next } = fitted(
      `${FRESH}06:00 set PH out 3 colors lure glow-spoon\n06:10 touch PH bottom 18 ft`,
      gear,
    );
    expect((next?.outM ?? 0) / 9.144).toBeCloseTo(6, 6);
  });

  test("of a diver read at a short length is at a long one, and the other way round", () => {
    const at = (ft: number, bottomFt: number) =>
      fitted(`${FRESH}06:00 set SD out ${ft} ft lure glow-spoon\n06:10 touch SD bottom ${bottomFt} ft`).next;
    expect((at(60, 33)?.outM ?? 0) / 0.3048).toBeCloseTo(240, 6);
    expect(at(60, 33)?.leaves).toBeLessThan(0.6);
    expect((at(240, 105)?.outM ?? 0) / 0.3048).toBeLessThan(240);
  });

  test("may be at the probe where one is clipped on; it is not asked for where it would tell little", () => {
    const gear = "rig CP copper cable copper-45 probe 5 ft";
    const lines = `${FRESH}06:00 set CP out 100 ft lure glow-spoon\n06:10 probe CP depth 21 ft`;
    expect(fitted(lines, gear).next).toBeDefined();
    const many = Array.from({ length: 9 }, (_, i) => `06:${20 + i} touch PB out 10 colors bottom 54 ft`);
    expect(learned(`${COLORS}\n${many.join("\n")}`).said).not.toContain("What would tell the most");
  });
});

describe("the line of the gear book", () => {
  const width = (lines: string, gear?: string): number => {
    const { lure } = depthOf(lines, gear);
    return (lure?.highM ?? Number.NaN) - (lure?.lowM ?? Number.NaN);
  };

  test.each([
    [`${FRESH}06:00 set PB out 8 colors lure glow-spoon`, COLORS, 44],
    [`${FRESH}06:00 set CU out 230 ft lure glow-spoon`, COUNTED, 51],
  ])("narrows %s and brings it near what was touched", (set, readings, ft) => {
    const { text } = learned(readings);
    const before = depthOf(set);
    const after = depthOf(set, text.replace("2031-06-21", "2031-06-20"));
    const off = (depth: typeof before): number => Math.abs((depth.lure?.depthM ?? 0) / 0.3048 - ft);
    expect(off(after)).toBeLessThan(off(before));
    expect(off(after)).toBeLessThan(4);
    expect(width(set, text.replace("2031-06-21", "2031-06-20"))).toBeLessThan(0.75 * width(set));
  });

  test("gives a diver its depth, with the errors' link told", () => {
    const text = learned(DIVER).text.replace("2031-06-21", "2031-06-20");
    const set = `${FRESH}06:00 set SD out 150 ft lure glow-spoon`;
    const { lure, weight } = depthOf(set, text);
    expect(weight?.depthM).toBeGreaterThan(20);
    expect((lure?.highM ?? 0) - (lure?.lowM ?? 0)).toBeLessThan(8);
    expect(width(set, text.replace(/ area-link \S+/u, ""))).toBeGreaterThan(1.2 * width(set, text));
  });
});

test("a probe clipped on a line counts from the diver, the weight or the leader up", () => {
  const gear = "rig PP leadcore cable lead-27 leader 30 ft probe 10 ft";
  const lines = "06:00 set PP out 8 colors lure glow-spoon\n06:10 probe PP depth 40 ft speed 2.2 mph";
  expect(learned(lines, gear)).toMatchObject({ readings: 1, why: [] });
  const { day } = dayOf(lines, gear);
  const [said] = readingSentences(day, day.trip.events.at(-1)?.lineIndex ?? 0);
  expect(said).toMatch(/^The probe shows 40 ft; about \d+ ft \(\d+ to \d+\) was expected with 240 ft out/u);
});

test("a new line starts anew", () => {
  const gear = "2031-06-20 cable lead-27 leadcore diameter 0.9 mm";
  const { day } = dayOf(COLORS, gear);
  expect(calibrateLines(calibrationReadings(day).ofLines).map((one) => one.since)).toEqual(["2031-06-20"]);
});

test.each([
  ["05:50 set FL out 60 ft\n06:10 touch PB bottom 29 ft", "PB isn't in the water"],
  ["06:00 set PB lure glow-spoon\n06:10 touch PB bottom 29 ft", "how much line was out isn't stated"],
  ["06:00 set J1 out 60 ft\n06:10 touch J1 bottom 60 ft", "J1 is cast or jigged"],
  ["06:00 set SD out 60 ft\n06:05 strike SD\n06:10 touch SD bottom 30 ft", "the diver was tripped by a fish"],
  [
    "06:00 set SD out 60 ft dial 3\n06:10 touch SD bottom 30 ft",
    "the diver is at dial 3, and the gear book's line is for dial 2",
  ],
  ["05:50 set FL out 60 ft\n06:10 touch X9 out 60 ft bottom 30 ft", "X9 isn't in the gear book"],
  ["12:30 set PB out 5 colors\n12:40 touch PB bottom 29 ft", "no speed was read near it"],
])("%s tells nothing, and why", (lines, why) => {
  expect(learned(lines)).toMatchObject({ readings: 0, why: [why] });
});

test("what a downrigger's calibration says of every line is carried to one that was never measured, and said", () => {
  const set = "06:00 set CU out 200 ft lure glow-spoon";
  const rough = "2031-06-01 calibrate P1 drag 1.6 drag-error 0.08 counter-scale 1.2 counter-offset 20 ft";
  const { day, depth } = dayOf(set, rough);
  const alone = depthOf(set);
  expect(depth.lure?.depthM).toBeLessThan(alone.lure?.depthM ?? 0);
  expect(depth.sharedFrom.map((one) => one.of)).toEqual(["P1"]);
  expect(depthSentences(day, depth).join(" ")).toContain(
    "CU's depth was never measured, so the range is wide; what the calibration of P1 of 2031-06-01 says of every line on this boat is carried to it.",
  );
  // The counter's part stays where it is.
  const plain = "2031-06-01 calibrate P1 drag 1.6 drag-error 0.08";
  expect(depthOf(set, plain).lure).toEqual(depth.lure);
  // A line that was measured, or a diver, keeps its own.
  const own = `${rough}\n2031-06-01 calibrate CU drag 1.2 drag-error 0.1`;
  expect(depthOf(set, own).sharedFrom).toEqual([]);
});

test("a line that could hang elsewhere in the current, or hangs shakily, says so", () => {
  const { day, depth } = dayOf("06:00 set FW out 100 ft lure glow-spoon");
  const said = (change: object): string => depthSentences(day, { ...depth, ...change }).join(" ");
  expect(said({ conditioning: 15, otherBallDepthsM: [3.048, 3.7] })).toContain(
    "In this current the weight could as well hang at 10 ft or 12 ft; the deepest is given.",
  );
  expect(said({ conditioning: 15 })).toContain("This current makes the depth shaky");
  expect(depth.otherBallDepthsM).toEqual([]);
});
