import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Downrigger, type SolvedDownrigger, solveDownrigger } from "../../server/physics/downrigger.ts";
import { journalDrag } from "../../server/physics/drag.ts";
import { JOURNAL } from "../../server/physics/exactness.ts";
import { uniformFlow } from "../../server/physics/flow-profile.ts";
import { weightInWaterNPerM } from "../../server/physics/line-materials.ts";
import { liftAreaForDive, solveLureLine } from "../../server/physics/lure.ts";
import { solveTowedLine } from "../../server/physics/towed-line.ts";
import { waterAt } from "../../server/physics/water.ts";
import { expectNear } from "./line-maker.ts";
import { FOOT_M, MPH_MS, rig, rod } from "./rig-maker.ts";

const SEED = { seed: 20310621, numRuns: 100 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

function solved(one: Downrigger): SolvedDownrigger {
  const answer = solveDownrigger(one);
  if (!answer.ok) throw new Error(answer.why);
  return answer;
}

function whyNot(change: Partial<Downrigger>): string {
  const answer = solveDownrigger(rig(100, 2.3, [rod("P1", 0, 20)], change));
  return answer.ok ? "" : answer.why;
}

describe("a downrigger", () => {
  test("without rods is the towed cable with its ball", () => {
    const one = rig(150, 2.5);
    const water = waterAt(10);
    if (!water.ok) throw new Error(water.why);
    const { massKg, densityKgM3 } = one.ball;
    const plain = solveTowedLine(
      {
        segments: [
          {
            lengthM: one.outM,
            diameterM: 0.9e-3,
            weightNPerM: weightInWaterNPerM(one.cable.make, water.densityKgM3),
            normalDrag: journalDrag(1.2),
            tangentialCoefficient: 0.01,
          },
        ],
        bodies: [
          {
            node: 1,
            weightN: massKg * 9.80665 * (1 - water.densityKgM3 / densityKgM3),
            dragAreaM2: 0,
            liftAreaM2: 0,
            forceXN: 0,
            sphere: { diameterM: Math.cbrt((6 * massKg) / (Math.PI * densityKgM3)), multiplier: 1.2 },
          },
        ],
      },
      water,
      one.flow,
      { xM: 0, zM: 0 },
      JOURNAL.tolerance,
    );
    if (!plain.ok) throw new Error(plain.why);
    const answer = solved(one);
    expectNear("depth", answer.ball.depthM, plain.depthM, 1e-7);
    expectNear("behind", answer.ball.behindM, plain.behindM, 1e-7);
    expectNear("angle", answer.topAngleDeg, plain.topAngleDeg, 1e-6);
  });

  test("at rest everything hangs straight down, the probe its own height above the ball", () => {
    const answer = solved(rig(100, 0, [], { probeAboveBallM: 1.25 * FOOT_M }));
    expectNear("ball", answer.ball.depthM, 100 * FOOT_M, 1e-9);
    expectNear("probe", answer.probe?.depthM ?? Number.NaN, 98.75 * FOOT_M, 1e-9);
    expect(answer.surfaced).toBe(false);
  });

  test("the probe is read along the leaning cable, not straight above the ball", () => {
    const answer = solved(rig(200, 2.6, [], { probeAboveBallM: 10 * FOOT_M }));
    const above = answer.ball.depthM - (answer.probe?.depthM ?? 0);
    expect(above).toBeLessThan(10 * FOOT_M);
    expect(above).toBeGreaterThan(9 * FOOT_M);
    expect(answer.probe?.behindM).toBeLessThan(answer.ball.behindM);
  });

  test("the counter's scale and offset say how much cable is out", () => {
    const read = solved(rig(100, 2.3, [], { counterScale: 1.03, counterOffsetM: -0.5 }));
    const plain = solved(rig(103 - 0.5 / FOOT_M, 2.3));
    expectNear("cable", read.cableOutM, plain.cableOutM, 1e-12);
    expectNear("depth", read.ball.depthM, plain.ball.depthM, 1e-9);
    expect(solved(rig(1, 2.3, [], { counterOffsetM: -2 })).cableOutM).toBe(0);
  });

  test("a rod's pull lifts the ball; a stacked release is shallower than one at the ball", () => {
    const bare = solved(rig(150, 2.5));
    const one = solved(rig(150, 2.5, [rod("low", 0, 20)]));
    const two = solved(rig(150, 2.5, [rod("high", 20, 20), rod("low", 0, 20)]));
    expect(one.ball.depthM).toBeLessThan(bare.ball.depthM);
    expect(two.ball.depthM).toBeLessThan(one.ball.depthM);
    const [high, low] = two.rods;
    expect(high?.id).toBe("high");
    expect(high?.release.depthM).toBeLessThan((low?.release.depthM ?? 0) - 10 * FOOT_M);
    expect(low?.release).toEqual(two.ball);
    const swapped = solved(rig(150, 2.5, [rod("low", 0, 20), rod("high", 20, 20)]));
    expectNear("order", swapped.ball.depthM, two.ball.depthM, 1e-6);
  });

  test("a spoon runs a little under its release, a plug more, each no farther than its line is long", () => {
    const [spoon, plug] = solved(rig(80, 2.3, [rod("a", 0, 20), rod("b", 0, 20, "plug")])).rods;
    if (spoon === undefined || plug === undefined) throw new Error("two rods were given");
    const under = (one: typeof spoon) => one.lure.depthM - one.release.depthM;
    expect(under(spoon)).toBeGreaterThan(0);
    expect(under(plug)).toBeGreaterThan(under(spoon));
    const reach = Math.hypot(under(plug), plug.lure.behindM - plug.release.behindM);
    expect(reach).toBeLessThanOrEqual(20 * FOOT_M * (1 + 1e-9));
    expect(reach).toBeGreaterThan(19 * FOOT_M);
  });

  test("more cable is deeper, more speed shallower, and no depth beyond the cable out", () => {
    fc.assert(
      fc.property(between(5, 200), between(0.5, 3), between(1, 15), (outFt, speedMph, setbackFt) => {
        const rods = [rod("P1", 0, setbackFt)];
        const here = solved(rig(outFt, speedMph, rods)).ball.depthM;
        expect(here).toBeLessThanOrEqual(outFt * FOOT_M);
        expect(solved(rig(outFt, speedMph + 0.3, rods)).ball.depthM).toBeLessThan(here + 1e-7);
        expect(solved(rig(outFt + 5, speedMph, rods)).ball.depthM).toBeGreaterThan(here);
      }),
      SEED,
    );
  });

  test("a light ball at speed with a rod pulling comes to no NaN", () => {
    fc.assert(
      fc.property(
        between(0, 600),
        between(0, 20),
        between(0.2, 12),
        between(0, 60),
        (outFt, speedMph, massKg, aboveFt) => {
          const one = rig(outFt, speedMph, [rod("P1", aboveFt, 20, "plug")], {
            ball: { massKg, densityKgM3: 11340, dragMultiplier: 1.2 },
          });
          const answer = solveDownrigger(one);
          if (!answer.ok) {
            expect(answer.why).not.toBe("");
            return;
          }
          for (const place of [answer.ball, answer.rods[0]?.release, answer.rods[0]?.lure]) {
            expect(Number.isFinite(place?.depthM)).toBe(true);
            expect(Number.isFinite(place?.behindM)).toBe(true);
          }
        },
      ),
      SEED,
    );
  });
});

describe("the surfaced flag", () => {
  const floating = { weightN: -2, dragAreaM2: 1e-3, liftAreaM2: 0 };
  test("is up when a lure floats to the top on a long line, and down in ordinary trolling", () => {
    const high = { ...rod("F", 0, 200), lure: floating };
    expect(solved(rig(5, 0.5, [high])).surfaced).toBe(true);
    expect(solved(rig(72, 2.3, [rod("P1", 2, 15)])).surfaced).toBe(false);
  });
  test("a ball just at the surface with no cable out is not surfaced", () => {
    expect(solved(rig(0, 2.3)).surfaced).toBe(false);
  });
});

describe("a downrigger that cannot be solved says why", () => {
  const ball = { massKg: 5, densityKgM3: 11340, dragMultiplier: 1.2 };
  test.each<[string, Partial<Downrigger>, RegExp]>([
    [
      "more cable than any reel",
      { outM: 2500 },
      /the cable out on the counter is 2500 m, outside 0 to 2000 m/,
    ],
    ["negative cable", { outM: -1 }, /cable out on the counter is -1 m/],
    ["no number", { outM: Number.NaN }, /cable out on the counter is not a number/],
    ["a speed in other units", { flow: uniformFlow(23) }, /the speed is 23 m\/s, outside 0 to 10 m\/s/],
    ["an endless speed", { flow: uniformFlow(Number.POSITIVE_INFINITY) }, /the speed is not a number/],
    ["no ball", { ball: { ...ball, massKg: 0 } }, /the ball has no mass/],
    ["a wooden ball", { ball: { ...ball, densityKgM3: 700 } }, /not heavier than water/],
    ["boiling water", { waterTemperatureC: 100 }, /water temperature is 100 C/],
    ["a release above the water", { rods: [rod("P1U", 120, 20)] }, /the release of P1U is above the water/],
    [
      "a setback of no number",
      { rods: [{ ...rod("P1", 0, 20), setbackM: Number.NaN }] },
      /the setback of P1 is not a number/,
    ],
    [
      "too many rods",
      { rods: Array.from({ length: 13 }, (_, i) => rod(`R${i}`, i, 20)) },
      /13 rods on one cable/,
    ],
  ])("%s", (_name, change, why) => {
    expect(whyNot(change)).toMatch(why);
  });
});

describe("a plug said to pull down", () => {
  const water = waterAt(10);
  if (!water.ok) throw new Error(water.why);
  const { lureLine, lure } = rod("P1", 0, 50, "plug");
  test.each([2, 4, 6, 8])("%s ft does so at the speed and lead it was fitted for", (feet) => {
    const setbackM = 50 * FOOT_M;
    const speedMS = 2.3 * MPH_MS;
    const fitted = liftAreaForDive(feet * FOOT_M, { setbackM, lureLine, lure }, speedMS, water);
    if (!fitted.ok) throw new Error(fitted.why);
    const line = solveLureLine(
      { setbackM, lureLine, lure: { ...lure, liftAreaM2: fitted.liftAreaM2 } },
      speedMS,
      water,
    );
    expectNear("dive", line.ok ? line.depthM : Number.NaN, feet * FOOT_M, 1e-5);
  });
  test("deeper than its line allows is refused", () => {
    const answer = liftAreaForDive(20, { setbackM: 15, lureLine, lure }, 1, water);
    expect(answer.ok).toBe(false);
  });
});
