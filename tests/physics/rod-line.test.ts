import { describe, expect, test } from "vitest";
import { completeDownrigger, type RodOnCable, solveDownrigger } from "../../server/physics/downrigger.ts";
import { type Pull, type RodLine, rodPull } from "../../server/physics/rod-line.ts";
import { expectNear, WATER } from "./line-maker.ts";
import { FOOT_M, MPH_MS, rig, rod } from "./rig-maker.ts";
import { fullRodPull } from "./two-point-rod.ts";

const ROD: RodLine = { tipTensionN: 8, tipHeightM: 2, tipBehindM: 0, diameterM: 4e-4, dragMultiplier: 1.2 };

function pullOf(change: Partial<RodLine>, behindM: number, depthM: number, speedMS: number): Pull {
  const pull = { forceXN: 0, forceZN: 0 };
  rodPull(pull, { ...ROD, ...change }, behindM, depthM, speedMS, WATER);
  return pull;
}

describe("the pull of a rod's line, against the full two-point solution", () => {
  test.each([
    [8, 5, 30, 1.0],
    [8, 15, 42, 1.12],
    [15, 15, 42, 1.12],
    [25, 15, 42, 1.12],
    [4, 3, 20, 0.9],
    [8, 40, 60, 1.16],
  ])(
    "%s N at the tip, release %s m behind and %s m down, %s m/s",
    (tipTensionN, behindM, depthM, speedMS) => {
      const quick = pullOf({ tipTensionN }, behindM, depthM, speedMS);
      const full = fullRodPull({ ...ROD, tipTensionN }, behindM, depthM, speedMS);
      expectNear("astern", quick.forceXN, full.forceXN, 0.04 * tipTensionN);
      expectNear("up", quick.forceZN, full.forceZN, 0.04 * tipTensionN);
    },
  );
});

describe("the pull of a rod's line in simple cases", () => {
  test("in still water it points straight at the tip, with the tip's tension", () => {
    const { forceXN, forceZN } = pullOf({}, 3, 10, 0);
    expectNear("astern", forceXN, (-8 * 3) / Math.hypot(3, 12), 1e-9);
    expectNear("up", forceZN, (-8 * 12) / Math.hypot(3, 12), 1e-9);
  });
  test("it always lifts, hardly ever pulls more than the tip, and is finite in the extreme", () => {
    for (const depthM of [0, 0.1, 10, 100, 600])
      for (const speedMS of [0, 0.01, 1, 3, 10])
        for (const tipTensionN of [0, 0.01, 8, 200]) {
          const { forceXN, forceZN } = pullOf({ tipTensionN }, 0.3 * depthM, depthM, speedMS);
          expect(forceZN).toBeLessThanOrEqual(0);
          expect(Math.hypot(forceXN, forceZN)).toBeLessThanOrEqual(tipTensionN * 1.2);
        }
  });
});

/** Feet that a 12 lb ball on 0.9 mm steel loses, with smooth lines, at a tip tension in N and a tip height in m. */
function lossFt(outFt: number, speedMph: number, tipTensionN: number, tipHeightM: number): number {
  const base = rod("R", 0, 0);
  const bare: RodOnCable = {
    ...base,
    lure: { weightN: 0, dragAreaM2: 0, liftAreaM2: 0 },
    rodLine: { ...ROD, tipTensionN, tipHeightM, dragMultiplier: 1 },
  };
  const steel = rig(outFt, speedMph).cable.make;
  const solved = solveDownrigger(
    completeDownrigger({
      outM: outFt * FOOT_M,
      speedMS: speedMph * MPH_MS,
      cable: { make: steel, dragMultiplier: 1 },
      ball: { massKg: 5.44311, dragMultiplier: 1 },
      rods: tipTensionN === 0 ? [] : [bare],
    }),
  );
  if (!solved.ok) throw new Error(solved.why);
  return outFt - solved.ball.depthM / FOOT_M;
}

describe("what the rod's line adds to a ball's loss: design figures, tip at the water line (run)", () => {
  test.each([
    [150, 2.5, 0, 10.6],
    [150, 2.5, 8, 17.0],
    [150, 2.5, 15, 18.3],
    [150, 2.5, 25, 20.1],
    [100, 2.0, 0, 1.7],
    [100, 2.0, 8, 3.0],
    [100, 2.0, 15, 3.2],
    [100, 2.0, 25, 3.7],
  ])("%s ft at %s mph with %s N: %s ft", (outFt, speedMph, tensionN, lost) => {
    expectNear("lost", lossFt(outFt, speedMph, tensionN, 0), lost, 0.11);
  });
  test("two metres of line in the air let the ball rise a little more", () => {
    expect(lossFt(150, 2.5, 8, 2) - lossFt(150, 2.5, 8, 0)).toBeGreaterThan(0.1);
    expect(lossFt(150, 2.5, 8, 2) - lossFt(150, 2.5, 8, 0)).toBeLessThan(0.5);
  });
});
