/** Long lines and divers fitted to depths that a world with its own drag, counter and diver would show. */
import { describe, expect, test } from "vitest";
import type { CalibrationFit } from "../../server/physics/calibrate.ts";
import { type DiverFit, fitDiver } from "../../server/physics/calibrate-diver.ts";
import { fitLongLine, isCounterHeld, lineWithValues } from "../../server/physics/calibrate-line.ts";
import { uniformFlow } from "../../server/physics/flow-profile.ts";
import type { LongLine } from "../../server/physics/long-line.ts";
import { defaultLongLineSpreads, fasterLine } from "../../server/physics/long-line-parameters.ts";
import { expectedOnLine, type LongLineReading } from "../../server/physics/long-line-reading.ts";
import { DIVER, lineInUse, longLine } from "./long-line-maker.ts";
import { normalDraws } from "./random-normal.ts";
import { FOOT_M, MPH_MS } from "./rig-maker.ts";

const SPREADS = { ...defaultLongLineSpreads(0.1 * MPH_MS), weightShare: 0.15 };

function touch(line: LongLine, change: Partial<LongLineReading> = {}): LongLineReading {
  const base = { line, spreads: SPREADS, as: "ball-depth" as const, probeAboveJointM: undefined };
  return { ...base, measuredM: 0, sdM: 2 * FOOT_M, ...change };
}

/** The same readings as a world would give them, whose lines truly are as `world` makes them. */
function measured(
  readings: readonly LongLineReading[],
  world: (line: LongLine) => LongLine,
  noise: () => number,
): LongLineReading[] {
  return readings.map((reading) => {
    const truly = fasterLine(world(reading.line), noise() * reading.spreads.speedMS);
    const depthM = expectedOnLine(truly, reading) ?? Number.NaN;
    return { ...reading, measuredM: Math.max(0, depthM + noise() * reading.sdM) };
  });
}

const quiet = (): number => 0;
const CORE = lineInUse("leadcore", 0.85);
const touches = (lengths: readonly number[], mph = 2.2): LongLineReading[] =>
  lengths.map((ft) => touch(longLine(CORE, ft, mph)));

function fitOf(answer: CalibrationFit | DiverFit | { ok: false; why: string }): CalibrationFit {
  if (!answer.ok || !("values" in answer)) throw new Error("why" in answer ? answer.why : "a diver");
  return answer;
}

describe("leadcore that touched bottom", () => {
  const truth = { lnDrag: Math.log(1.6), counterScale: 1, counterOffsetM: 0 };
  const readings = measured(touches([150, 210, 300, 300]), (line) => lineWithValues(line, truth), quiet);

  test("counted in colors: the drag is found and the counter left as it was", () => {
    const fit = fitOf(fitLongLine(readings, true));
    expect(isCounterHeld(fit)).toBe(true);
    expect(fit.values.lnDrag).toBeGreaterThan(Math.log(1.45));
    expect(fit.values.lnDrag).toBeLessThan(Math.log(1.62));
    expect(fit.values.counterScale).toBeCloseTo(1, 4);
    expect(fit.lnDragSd).toBeLessThan(0.5 * fit.prior.lnDragSd);
  });

  test("read off a counter: part of it may be the counter's", () => {
    const fit = fitOf(fitLongLine(readings, false));
    expect(isCounterHeld(fit)).toBe(false);
    expect(fit.lnDragSd).toBeGreaterThan(fitOf(fitLongLine(readings, true)).lnDragSd * 0.99);
    const [, dragScale = 0] = fit.covariance;
    expect(dragScale / (fit.lnDragSd * fit.counterScaleSd)).toBeGreaterThan(0.1);
  });

  test("one snag does not rule", () => {
    const snag = { ...(readings[0] ?? touch(longLine(CORE, 150, 2.2))), measuredM: 1 };
    const fit = fitOf(fitLongLine([...readings, snag], true));
    expect(fit.readings.at(-1)?.weight).toBeLessThan(0.5);
    expect(fit.values.lnDrag).toBeGreaterThan(Math.log(1.4));
  });
});

test("a probe on copper is read where it is clipped", () => {
  const copper = longLine(lineInUse("copper", 0.95), 200, 2.2);
  const at = (aboveFt: number): number =>
    expectedOnLine(copper, touch(copper, { as: "probe-depth", probeAboveJointM: aboveFt * FOOT_M })) ?? 0;
  expect(at(50)).toBeLessThan(at(0));
  expect(at(0)).toBeLessThan(expectedOnLine(copper, touch(copper)) ?? 0);
  const fit = fitOf(
    fitLongLine([touch(copper, { as: "probe-depth", probeAboveJointM: 0, measuredM: at(0) })], false),
  );
  expect(fit.values.lnDrag).toBeCloseTo(Math.log(1.2), 2);
});

describe("a diver", () => {
  const WIRE = lineInUse("steel", 0.53);
  const set = (lengths: readonly number[], mph = 2.4): LongLineReading[] =>
    lengths.map((ft) => touch(longLine(WIRE, ft, mph, { joint: DIVER })));
  const world = (line: LongLine): LongLine => ({
    ...line,
    joint: { weightN: 0, liftAreaM2: 0.025, dragAreaM2: 0.013 },
  });
  const fitTo = (lengths: readonly number[], noise = quiet): DiverFit => {
    const fitted = fitDiver(measured(set(lengths), world, noise));
    if (!fitted.ok) throw new Error(fitted.why);
    return fitted;
  };

  test("is found from lengths far apart", () => {
    const { liftAreaM2, dragAreaM2, leftOfSize, leftOfRatio } = fitTo([40, 60, 120, 200, 250, 250]);
    expect(liftAreaM2).toBeGreaterThan(0.019);
    expect(liftAreaM2).toBeLessThan(0.027);
    expect(dragAreaM2 / liftAreaM2).toBeGreaterThan(0.45);
    expect(dragAreaM2 / liftAreaM2).toBeLessThan(0.62);
    expect(Math.max(leftOfSize, leftOfRatio)).toBeLessThan(0.5);
  });

  test("of one length tells one combination of the two areas", () => {
    const one = fitTo([150, 150, 150]);
    expect(one.leftOfRatio).toBeGreaterThan(0.5);
    expect(one.spread.link).toBeGreaterThan(0.5);
    // What it does know is the depth at that length.
    const line = longLine(WIRE, 150, 2.4, {
      joint: { weightN: 0, liftAreaM2: one.liftAreaM2, dragAreaM2: one.dragAreaM2 },
    });
    const [reading = touch(line)] = set([150]);
    const truth = expectedOnLine(world(line), reading) ?? 0;
    expect(Math.abs((expectedOnLine(line, reading) ?? 0) - truth)).toBeLessThan(0.03 * truth);
  });

  test("is found about as well as it says, over many simulated boats", () => {
    const normal = normalDraws(77);
    let inside = 0;
    const boats = 60;
    for (let i = 0; i < boats; i++) {
      const { liftAreaM2, spread } = fitTo([60, 100, 160, 220, 250], normal);
      if (Math.abs(Math.log(liftAreaM2 / 0.025)) < 1.2816 * spread.lnLiftSd) inside++;
    }
    expect(inside / boats).toBeGreaterThan(0.7);
  });
});

describe("what can't be used says why", () => {
  test.each([
    [touch(longLine(CORE, 0, 2.2)), "no line is out"],
    [touch(longLine(CORE, 150, 0)), /hardly moves/u],
    [touch(longLine(CORE, Number.NaN, 2.2)), "the line out is not a number"],
    [touch(longLine(CORE, 150, 2.2), { measuredM: Number.NaN }), "a number of the reading is missing"],
    [touch(longLine(CORE, 150, 2.2), { measuredM: -1 }), "a depth or distance below zero can't be"],
    [touch(longLine(CORE, 150, 2.2), { as: "probe-depth" }), "where the probe is clipped isn't known"],
    [
      touch(longLine(CORE, 150, 2.2), { as: "probe-depth", probeAboveJointM: 80 }),
      "the probe is clipped above the line that is out",
    ],
    [touch({ ...longLine(CORE, 1e9, 2.2), flow: uniformFlow(1) }), /^the line out is/u],
  ])("%#", (reading, why) => {
    for (const answer of [fitLongLine([reading], true), fitDiver([reading])]) {
      expect(answer.ok ? "" : answer.why).toMatch(why);
    }
  });

  test("no readings at all", () => {
    expect(fitDiver([]).ok).toBe(false);
    expect(fitLongLine([], true).ok).toBe(false);
  });
});
