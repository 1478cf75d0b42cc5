import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  atSpeed,
  type Downrigger,
  type SolvedDownrigger,
  solveDownrigger,
} from "../../server/physics/downrigger.ts";
import { defaultSpreads, rigParameters, solveDownriggerBand } from "../../server/physics/downrigger-band.ts";
import { type FlowProfile, uniformFlow } from "../../server/physics/flow-profile.ts";
import { outForDepth } from "../../server/physics/out-for-depth.ts";
import type { Pull, RodLine } from "../../server/physics/rod-line.ts";
import { rodPullIn } from "../../server/physics/rod-line-shear.ts";
import { gentleFlow } from "./flow-maker.ts";
import { expectNear, WATER } from "./line-maker.ts";
import { FOOT_M, MPH_MS, rig, rod } from "./rig-maker.ts";
import { fullRodPull } from "./two-point-rod.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const linear = (topMph: number, deepMph: number, toM: number): FlowProfile => ({
  type: "piecewise",
  depthsM: [0, toM],
  speedsMS: [topMph * MPH_MS, deepMph * MPH_MS],
});

function solved(one: Downrigger): SolvedDownrigger {
  const answer = solveDownrigger(one);
  if (!answer.ok) throw new Error(answer.why);
  return answer;
}

const RODS = [rod("P1", 0, 20), rod("P1U", 20, 25, "plug")];

describe("the pull of a rod's line in shear, against the full two-point solution", () => {
  const ROD: RodLine = { tipTensionN: 8, tipHeightM: 2, tipBehindM: 0, diameterM: 4e-4, dragMultiplier: 1.2 };
  const layer: FlowProfile = { type: "tanh", upperMS: 1.3, lowerMS: 0.7, middleM: 15, halfWidthM: 2 };
  test.each<[number, number, number, FlowProfile]>([
    [8, 5, 30, linear(2.6, 1.8, 25)],
    [8, 15, 42, linear(2.8, 2.2, 40)],
    [15, 15, 42, linear(2.0, 2.6, 40)],
    [25, 15, 42, layer],
    [8, 6, 28, layer],
    [4, 3, 20, linear(2.2, 1.6, 20)],
  ])("%s N at the tip, release %s m behind and %s m down", (tipTensionN, behindM, depthM, flow) => {
    const quick: Pull = { forceXN: 0, forceZN: 0 };
    rodPullIn(quick, { ...ROD, tipTensionN }, behindM, depthM, flow, WATER);
    const full = fullRodPull({ ...ROD, tipTensionN }, behindM, depthM, flow);
    expectNear("astern", quick.forceXN, full.forceXN, 0.04 * tipTensionN);
    expectNear("up", quick.forceZN, full.forceZN, 0.04 * tipTensionN);
  });
  test("is the uniform form where the speed is the same all the way down", () => {
    for (const depthM of [0, 0.5, 20, 60]) {
      const [flat, plain]: Pull[] = [
        { forceXN: 0, forceZN: 0 },
        { forceXN: 0, forceZN: 0 },
      ];
      if (flat === undefined || plain === undefined) return;
      rodPullIn(flat, ROD, 0.3 * depthM, depthM, linear(2.3, 2.3, 40), WATER);
      rodPullIn(plain, ROD, 0.3 * depthM, depthM, uniformFlow(2.3 * MPH_MS), WATER);
      expectNear("astern", flat.forceXN, plain.forceXN, 0.002);
      expectNear("up", flat.forceZN, plain.forceZN, 0.002);
    }
  });
});

describe("a downrigger in shear", () => {
  test("with one speed at all depths is the uniform one", () => {
    const plain = solved(rig(150, 2.5, RODS, { probeAboveBallM: 0.4 }));
    const flat = solved(rig(150, 2.5, RODS, { probeAboveBallM: 0.4, flow: linear(2.5, 2.5, 30) }));
    expectNear("ball", flat.ball.depthM, plain.ball.depthM, 2e-3);
    expectNear("probe", flat.probe?.depthM ?? Number.NaN, plain.probe?.depthM ?? Number.NaN, 2e-3);
    for (const [i, one] of plain.rods.entries())
      expectNear("lure", flat.rods[i]?.lure.depthM ?? Number.NaN, one.lure.depthM, 3e-3);
    expect(plain.conditioning).toBeUndefined();
    expectNear("conditioning", flat.conditioning ?? 0, 1, 1e-3);
  });
  test("lies between the uniform ones of its speeds", () => {
    fc.assert(
      fc.property(between(1.2, 3), between(1.2, 3), between(60, 200), (topMph, deepMph, outFt) => {
        const at = (flow: FlowProfile) => solved(rig(outFt, 2, RODS, { flow })).ball.depthM;
        const here = at(linear(topMph, deepMph, 30));
        const [one, other] = [at(uniformFlow(topMph * MPH_MS)), at(uniformFlow(deepMph * MPH_MS))];
        expect(here).toBeGreaterThan(Math.min(one, other) - 2e-3);
        expect(here).toBeLessThan(Math.max(one, other) + 2e-3);
      }),
      { seed: 20310621, numRuns: 40 },
    );
  });
  test("bands have a share for each speed, and the deep one alone is `speed`", () => {
    const spreads = { ...defaultSpreads(0.1 * MPH_MS), surfaceSpeedMS: 0.3 * MPH_MS };
    const one = rig(150, 2.5, RODS, { flow: linear(2.3, 2.6, 40), probeAboveBallM: 0.4 });
    const answer = solveDownriggerBand(one, rigParameters(spreads));
    if (!answer.ok) throw new Error(answer.why);
    const share = (key: string) => answer.ball.shares.find((s) => s.key === key)?.less ?? 0;
    expect(share("surface-speed")).toBeGreaterThan(0.1);
    expect(share("speed")).toBeGreaterThan(0.05);
    expect(answer.solved).toEqual(solved(one));
    const stiller = solveDownriggerBand(one, rigParameters({ ...spreads, surfaceSpeedMS: 0 }));
    expect(stiller.ok && stiller.ball.lowM).toBeGreaterThan(answer.ball.lowM);
    // Both speeds together lift what one uniform speed would.
    const uniform = solveDownriggerBand(rig(150, 2.45, RODS), rigParameters(defaultSpreads(0.1 * MPH_MS)));
    const whole = uniform.ok ? (uniform.ball.shares.find((s) => s.key === "speed")?.less ?? 0) : 0;
    expectNear("sum", share("speed") + share("surface-speed") / 3, whole, 0.25 * whole);
  });
  test("says when the ball could hang at several depths, and takes the deepest", () => {
    // An interface put where the ball's own drop makes the place of the end turn back on itself.
    const counts = [];
    for (let middleM = 20; middleM < 45; middleM += 0.5) {
      const flow = { type: "tanh", upperMS: 2.2, lowerMS: 0.2, middleM, halfWidthM: 0.8 } as const;
      const answer = solved(
        rig(200, 2, [], { flow, ball: { massKg: 3, densityKgM3: 11340, dragMultiplier: 1.2 } }),
      );
      const others = answer.otherBallDepthsM ?? [];
      counts.push(others.length);
      for (const depthM of others) expect(depthM).toBeLessThan(answer.ball.depthM);
    }
    expect(counts).toContain(2);
    expect(counts).toContain(0);
  });
  test("never answers NaN", () => {
    fc.assert(
      fc.property(gentleFlow, between(0, 300), between(0, 60), (flow, outFt, releaseFt) => {
        const answer = solveDownrigger(rig(outFt, 2, [rod("P1", releaseFt, 20, "plug")], { flow }));
        if (!answer.ok) return;
        for (const place of [answer.ball, answer.rods[0]?.lure, answer.rods[0]?.release])
          expect(Number.isFinite(place?.depthM) && Number.isFinite(place?.behindM)).toBe(true);
      }),
      { seed: 20310621, numRuns: 60 },
    );
  });
});

describe("what to set the counter to", () => {
  const change = { counterScale: 1.04, counterOffsetM: -0.5, probeAboveBallM: 0.4 };
  test("undoes the depth, for the ball and each lure, in any stream", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          between(0.6, 3).map((mph) => uniformFlow(mph * MPH_MS)),
          gentleFlow,
        ),
        between(30, 200),
        fc.constantFrom("ball", "P1", "P1U"),
        (flow, outFt, target) => {
          const one = rig(outFt, 2, RODS, { ...change, flow });
          const there = solved(one);
          if ((there.conditioning ?? 0) > 3) return;
          const place = target === "ball" ? there.ball : there.rods.find((r) => r.id === target)?.lure;
          const back = outForDepth({ ...one, outM: 0 }, target, place?.depthM ?? Number.NaN);
          if (!back.ok) throw new Error(back.why);
          const slope = Math.cos((there.topAngleDeg * Math.PI) / 180);
          expectNear("out", back.outM, one.outM, (3e-5 * one.outM) / slope);
          expectNear("ball", back.solved.ball.depthM, there.ball.depthM, 3e-5 * one.outM);
        },
      ),
      { seed: 20310621, numRuns: 80 },
    );
  });
  test("out of reach, by name and with the deepest that is not", () => {
    const one = atSpeed(rig(0, 2, RODS, change), 3 * MPH_MS);
    const answer = outForDepth(one, "P1", 100, 200 * FOOT_M);
    expect(answer).toMatchObject({ ok: false, why: expect.stringMatching(/^not reachable at this speed/) });
    const there = solved({ ...one, outM: 200 * FOOT_M });
    const deepestM = "deepestM" in answer ? (answer.deepestM ?? 0) : 0;
    expectNear("deepest", deepestM, there.rods[0]?.lure.depthM ?? Number.NaN, 1e-6);
    expect(outForDepth(one, "P1", deepestM - 0.1, 200 * FOOT_M).ok).toBe(true);
  });
  test("refuses in words what cannot be asked", () => {
    const one = rig(100, 2.3, RODS, change);
    const why = (target: string, depthM: number, from = one) => {
      const answer = outForDepth(from, target, depthM);
      return answer.ok ? "" : answer.why;
    };
    expect(why("P9", 20)).toMatch(/no rod P9/);
    expect(why("ball", Number.NaN)).toBe("the depth to reach is not a number");
    expect(why("ball", -3)).toMatch(/the depth to reach is -3 m/);
    expect(why("ball", 2)).toMatch(/deeper than that|above the water/);
    expect(why("ball", 20, atSpeed(one, Number.NaN))).toBe("the speed is not a number");
  });
});
