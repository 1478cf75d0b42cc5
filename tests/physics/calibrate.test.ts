import { describe, expect, test } from "vitest";
import { type CalibrationFit, defaultPrior, fitCalibration } from "../../server/physics/calibrate.ts";
import { calibrationLacks, readingToTake } from "../../server/physics/calibration-lacks.ts";
import { type CalibrationReading, expectedOf, predict } from "../../server/physics/calibration-reading.ts";
import { type CalibrationValues, withValues } from "../../server/physics/calibration-values.ts";
import { atSpeed } from "../../server/physics/downrigger.ts";
import { deepSpeedMS } from "../../server/physics/flow-profile.ts";
import { inverse } from "../../server/physics/symmetric-matrix.ts";
import { normalDraws } from "./random-normal.ts";
import { FOOT_M, MPH_MS, rig, rod } from "./rig-maker.ts";

const PROBE = { probeAboveBallM: 1.25 * FOOT_M };

/** A probe reading in feet and mph. */
function probe(outFt: number, speedMph: number, depthFt = 0, rods = 0): CalibrationReading {
  const clipped = Array.from({ length: rods }, (_, i) => rod(`R${i}`, 20 * i, 20));
  return {
    rig: rig(outFt, speedMph, clipped, PROBE),
    as: "probe-depth",
    measuredM: depthFt * FOOT_M,
    sdM: 0.7 * FOOT_M,
    speedSdMS: 0.1 * MPH_MS,
  };
}

/** A ball on the bottom. */
function touch(outFt: number, speedMph: number, bottomFt: number): CalibrationReading {
  return { ...probe(outFt, speedMph, bottomFt), as: "ball-depth", sdM: 2 * FOOT_M };
}

/**
 * Six readings of the span that the design names; it does not list them. Of the ways to pair such lengths and
 * speeds this one gives its figures without a prior.
 */
const MIXED = [
  [40, 2.3],
  [80, 1.8],
  [120, 2.3],
  [160, 1.8],
  [200, 2.8],
  [230, 2.8],
] as const;

const TRUTH: CalibrationValues = {
  lnDrag: Math.log(1.45),
  counterScale: 1.03,
  counterOffsetM: -1.5 * FOOT_M,
};

/** The same readings as a world with these values would give them, with noise. */
function measuredIn(
  truth: CalibrationValues,
  readings: readonly CalibrationReading[],
  normal: () => number,
): CalibrationReading[] {
  return readings.map((reading) => {
    const speedMS = deepSpeedMS(reading.rig.flow) + normal() * reading.speedSdMS;
    const trueM = expectedOf(withValues(atSpeed(reading.rig, speedMS), truth), reading.as) ?? Number.NaN;
    return { ...reading, measuredM: trueM + normal() * reading.sdM };
  });
}

function fitTo(readings: readonly CalibrationReading[]): CalibrationFit {
  const fitted = fitCalibration(readings);
  if (!fitted.ok) throw new Error(fitted.why);
  return fitted;
}

const SOURCE = "published figures of the model: drag, scale and offset of a 12 lb ball on 0.9 mm wire";

describe(SOURCE, () => {
  test.each([
    // ft out, mph, ft per unit of the drag multiplier, ft per unit of scale, ft per ft of offset, ft per mph
    [50, 2.3, -0.81, 48, 0.97, -1.1],
    [150, 2.5, -16.8, 116, 0.78, -17],
    [230, 2.6, -41.6, 140, 0.61, -40],
  ])("sensitivities at %d ft and %d mph", (outFt, mph, drag, scale, offset, speed) => {
    const seen = predict(probe(outFt, mph), defaultPrior().values);
    const [byLnDrag = 0, byScale = 0, byOffset = 0] = seen?.slopes ?? [];
    const near = (value: number, expected: number, share: number): void =>
      expect(Math.abs(value / expected - 1)).toBeLessThan(share);
    near(byLnDrag / 1.2 / FOOT_M, drag, 0.06);
    near(byScale / FOOT_M, scale, 0.02);
    near(byOffset, offset, 0.02);
    near(((seen?.perSpeed ?? 0) * MPH_MS) / FOOT_M, speed, 0.1);
  });

  test("spreads and ties of six mixed readings, without a prior and with it", () => {
    const bare = spreadsOfMixed([0, 0, 0]);
    const expected = [0.087, 0.017, 1.2, 0.71, -0.48, -0.89];
    for (const [i, value] of bare.entries()) {
      const published = expected[i] ?? 0;
      expect(Math.abs(value - published)).toBeLessThan(i < 3 ? 0.05 * published : 0.05);
    }
    const held = spreadsOfMixed([0.35, 0.03, 2 * FOOT_M]).slice(0, 3);
    for (const [i, published] of [0.078, 0.013, 0.93].entries())
      expect(Math.abs((held[i] ?? 0) / published - 1)).toBeLessThan(0.05);
  });

  test("short slow readings say nothing about drag", () => {
    const readings = [40, 50, 60, 70, 80].map((outFt) => probe(outFt, 1.8, outFt - 2));
    expect(fitTo(readings).lnDragSd).toBeGreaterThan(0.9 * defaultPrior().lnDragSd);
  });

  test("synthetic data sets come out near the truth, drawn a little toward the prior", () => {
    const normal = normalDraws(5);
    const sets = Array.from({ length: 36 }, () =>
      fitTo(
        measuredIn(
          TRUTH,
          MIXED.map(([outFt, mph]) => probe(outFt, mph)),
          normal,
        ),
      ),
    );
    const drag = momentsOf(sets.map((one) => Math.exp(one.values.lnDrag)));
    const scale = momentsOf(sets.map((one) => one.values.counterScale));
    const offset = momentsOf(sets.map((one) => one.values.counterOffsetM / FOOT_M));
    // Published for twelve sets: mean (1.40, 1.02, -1.0), sd (0.046, 0.009, 0.78), each uncertain by its own noise.
    expect(Math.abs(drag.mean - 1.4)).toBeLessThan(0.05);
    expect(Math.abs(scale.mean - 1.02)).toBeLessThan(0.01);
    expect(Math.abs(offset.mean + 1)).toBeLessThan(0.6);
    expect(drag.sd).toBeLessThan(0.1);
    expect(scale.sd).toBeLessThan(0.02);
    expect(offset.sd).toBeLessThan(1.4);
  });
});

/** Spreads of the multiplier, scale and offset (ft) and their correlations, from the linear model at the defaults. */
function spreadsOfMixed(prior: readonly number[]): number[] {
  const information = prior.flatMap((sd, i) => [0, 1, 2].map((j) => (i === j && sd > 0 ? sd ** -2 : 0)));
  for (const [outFt, mph] of MIXED) {
    const seen = predict(probe(outFt, mph), defaultPrior().values);
    const [byLnDrag = 0, byScale = 0, byOffset = 0] = seen?.slopes ?? [];
    const slopes = [byLnDrag / 1.2, byScale, byOffset];
    information.forEach((value, at) => {
      const [a = 0, b = 0] = [slopes[Math.floor(at / 3)], slopes[at % 3]];
      information[at] = value + (a * b) / (seen?.sdM ?? 1) ** 2;
    });
  }
  const covariance = inverse(information, 3) ?? [];
  const at = (i: number): number => covariance[i] ?? Number.NaN;
  const [d, k, b] = [0, 4, 8].map((i) => Math.sqrt(at(i))) as [number, number, number];
  return [d, k, b / FOOT_M, at(1) / d / k, at(2) / d / b, at(5) / k / b];
}

function momentsOf(values: readonly number[]): { mean: number; sd: number } {
  const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
  const sum = values.reduce((total, one) => total + (one - mean) ** 2, 0);
  return { mean, sd: Math.sqrt(sum / (values.length - 1)) };
}

describe("a fit", () => {
  const exact = (values: CalibrationValues, readings: readonly CalibrationReading[]): CalibrationReading[] =>
    measuredIn(values, readings, () => 0);
  const mixed = MIXED.map(([outFt, mph]) => probe(outFt, mph));

  test("finds what gave exact readings when there are many", () => {
    const many = Array.from({ length: 10 }, () => mixed).flat();
    const { values } = fitTo(exact(TRUTH, many));
    expect(Math.exp(values.lnDrag)).toBeCloseTo(1.45, 1);
    expect(values.counterScale).toBeCloseTo(1.03, 2);
  });

  test("knows that length and offset can't be told apart at one length", () => {
    const lacks = calibrationLacks(fitTo(exact(TRUTH, [probe(90, 2.4), probe(90, 2.5), probe(90, 2.6)])));
    expect(lacks).toMatchObject({ drag: true, scaleFromOffset: true });
  });

  test("asks for a reading that tells more", () => {
    const fitted = fitTo(exact(TRUTH, [probe(90, 2.4), probe(90, 2.5)]));
    const next = readingToTake(fitted, probe(90, 2.4).rig);
    expect(next?.leaves).toBeLessThan(0.8);
    expect(next?.outM).toBeGreaterThan(120 * FOOT_M);
  });

  test("slow touches at two depths pin the counter", () => {
    const touches = [40, 60, 150, 150, 180].map((outFt) => touch(outFt, 1, 0));
    const fitted = fitTo(exact(TRUTH, touches));
    const far = fitted.values.counterScale * 150 * FOOT_M + fitted.values.counterOffsetM;
    expect(Math.abs(far / FOOT_M - 153)).toBeLessThan(1.5);
    expect(fitted.lnDragSd).toBeGreaterThan(0.25);
  });

  test("a snagged reading hardly moves it, and shows by its weight", () => {
    const sane = fitTo(exact(TRUTH, [...mixed, ...mixed]));
    const readings = exact(TRUTH, [...mixed, ...mixed]);
    readings.push(probe(120, 2.3, 60));
    const snagged = fitTo(readings);
    expect(snagged.readings.at(-1)?.weight).toBeLessThan(0.2);
    expect(Math.abs(snagged.values.counterScale - sane.values.counterScale)).toBeLessThan(0.01);
  });

  test("holds the rods' pull against the cable", () => {
    const clipped = exact(
      TRUTH,
      mixed.map((one) => ({ ...one, rig: { ...one.rig, rods: [rod("P1", 0, 20)] } })),
    );
    expect(Math.exp(fitTo(clipped).values.lnDrag)).toBeGreaterThan(1.3);
  });

  test("is the same in any order, and never NaN", () => {
    const readings = measuredIn(TRUTH, mixed, normalDraws(3));
    const one = fitTo(readings);
    const other = fitTo(readings.toReversed());
    expect(other.values.lnDrag).toBeCloseTo(one.values.lnDrag, 5);
    expect(one.covariance.every(Number.isFinite)).toBe(true);
  });

  test.each([
    ["nothing", [], "there is no reading to go by"],
    ["a rig without a probe", [{ ...probe(90, 2), rig: rig(90, 2) }], "the rig has no probe"],
    ["no depth", [probe(90, 2, Number.NaN)], "a number of the reading is missing"],
    ["no speed", [probe(90, Number.NaN, 80)], "the speed is not a number"],
    [
      "a probe in the air",
      [probe(0, 2, 80)],
      "the model has no answer for it, as with a probe above the water",
    ],
  ])("refuses %s", (_, readings, why) => {
    expect(fitCalibration(readings)).toEqual({ ok: false, why });
  });

  test("leaves out what can't be used and says why", () => {
    const fitted = fitTo([...exact(TRUTH, mixed), probe(90, 2, Number.NaN)]);
    expect(fitted.leftOut).toEqual([{ index: 6, why: "a number of the reading is missing" }]);
    expect(fitted.readings).toHaveLength(6);
  });
});
