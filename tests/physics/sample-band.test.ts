import { describe, expect, test } from "vitest";
import { calibrationAxes, covarianceOf, spreadOf } from "../../server/physics/calibration-spread.ts";
import { atSpeed } from "../../server/physics/downrigger.ts";
import { rigParameters, solveDownriggerBand } from "../../server/physics/downrigger-band.ts";
import { deepSpeedMS } from "../../server/physics/flow-profile.ts";
import { sampleBands } from "../../server/physics/sample-band.ts";
import { rig } from "./rig-maker.ts";

describe("sampled bands", () => {
  test("of a sum of normals lie where its quantiles do", () => {
    const [band] = sampleBands(2, ([a = 0, b = 0]) => [3 * a + 4 * b], 0.8) ?? [];
    expect(Math.abs((band?.low ?? 0) + 5 * 1.2816)).toBeLessThan(0.5);
    expect(Math.abs((band?.high ?? 0) - 5 * 1.2816)).toBeLessThan(0.5);
  });
  test("of a lopsided output are lopsided", () => {
    const [band] = sampleBands(1, ([a = 0]) => [Math.exp(a)], 0.8) ?? [];
    expect(band?.low).toBeCloseTo(Math.exp(-1.2816), 1);
    expect(band?.high).toBeCloseTo(Math.exp(1.2816), 1);
  });
  test("are the same every time, and none where hardly anything has an answer", () => {
    const at = ([a = 0]: readonly number[]) => [a];
    expect(sampleBands(1, at, 0.8)).toEqual(sampleBands(1, at, 0.8));
    expect(sampleBands(1, ([a = 0]) => (a > 1 ? [a] : undefined), 0.8)).toBeUndefined();
  });
  test("take over where one input lifts a depth far more than it lowers it", () => {
    const lifting = {
      key: "x",
      moved: (one: ReturnType<typeof rig>, d: number) =>
        atSpeed(one, deepSpeedMS(one.flow) * Math.exp(0.9 * d)),
    };
    const banded = solveDownriggerBand(rig(100, 1.2), [lifting]);
    if (!banded.ok) throw new Error(banded.why);
    const { depthM, lowM, highM } = banded.ball;
    expect(depthM - lowM).toBeGreaterThan(2 * (highM - depthM));
    expect(lowM).toBeGreaterThanOrEqual(0);
  });
});

describe("a calibration's spread", () => {
  const SPREAD = {
    lnDragSd: 0.08,
    counterScaleSd: 0.013,
    counterOffsetSdM: 0.28,
    dragWithScale: 0.7,
    dragWithOffset: -0.48,
    scaleWithOffset: -0.89,
  };
  test("goes into a covariance and back", () => {
    for (const [key, value] of Object.entries(spreadOf(covarianceOf(SPREAD))))
      expect(value).toBeCloseTo(SPREAD[key as keyof typeof SPREAD], 10);
  });
  test("comes back from its three axes", () => {
    const base = rig(100, 2);
    const moves = calibrationAxes(SPREAD).map(({ moved }) => {
      const { cable, counterScale, counterOffsetM } = moved(base, 1);
      return [Math.log(cable.dragMultiplier / base.cable.dragMultiplier), counterScale - 1, counterOffsetM];
    });
    covarianceOf(SPREAD).forEach((value, i) => {
      const sum = moves.reduce(
        (total, move) => total + (move[Math.floor(i / 3)] ?? 0) * (move[i % 3] ?? 0),
        0,
      );
      expect(sum).toBeCloseTo(value, 10);
    });
  });
  test("that can't be is drawn in until it can", () => {
    const odd = { ...SPREAD, dragWithScale: 0.99, dragWithOffset: 0.99, scaleWithOffset: -0.99 };
    const [axis] = calibrationAxes(odd);
    expect(Number.isFinite(axis?.moved(rig(100, 2), 1).counterOffsetM)).toBe(true);
  });
  test("narrows a band where scale and offset pull against each other", () => {
    const width = (scaleWithOffset: number): number => {
      const spreads = {
        speedMS: 0,
        lnDragShared: 0,
        lnDragCable: 0,
        lnDragLines: 0,
        counterScale: 0,
        counterOffsetM: 0,
        rodPullN: 0,
        ballMassShare: 0,
        lureShare: 0,
      };
      const calibration = { ...SPREAD, dragWithScale: 0, dragWithOffset: 0, scaleWithOffset };
      const banded = solveDownriggerBand(rig(70, 1.8), rigParameters({ ...spreads, calibration }));
      return banded.ok ? banded.ball.highM - banded.ball.lowM : Number.NaN;
    };
    expect(width(-0.89)).toBeLessThan(0.6 * width(0));
  });
});
