import { describe, expect, test } from "vitest";
import { bandsOf, DEVIATIONS_80 } from "../../server/physics/band.ts";
import { atSpeed, type Downrigger, solveDownrigger } from "../../server/physics/downrigger.ts";
import {
  type BandedDownrigger,
  type BandedPlace,
  type DownriggerSpreads,
  defaultSpreads,
  rigParameters,
  solveDownriggerBand,
} from "../../server/physics/downrigger-band.ts";
import { uniformFlow } from "../../server/physics/flow-profile.ts";
import { expectNear } from "./line-maker.ts";
import { FOOT_M, MPH_MS, rig, rod } from "./rig-maker.ts";

const SPREADS = defaultSpreads(0.1 * MPH_MS);
const NONE: DownriggerSpreads = {
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

function banded(one: Downrigger, spreads = SPREADS): BandedDownrigger {
  const answer = solveDownriggerBand(one, rigParameters(spreads));
  if (!answer.ok) throw new Error(answer.why);
  return answer;
}

function placesOf(answer: BandedDownrigger): BandedPlace[] {
  const probe = answer.probe === undefined ? [] : [answer.probe];
  return [answer.ball, ...probe, ...answer.rods.map((one) => one.lure)];
}

const width = (place: BandedPlace) => place.highM - place.lowM;

const USUAL = rig(150, 2.5, [rod("P1", 0, 20), rod("P1U", 20, 25, "plug")], {
  probeAboveBallM: 1.25 * FOOT_M,
});

describe("the band around a depth", () => {
  test("holds the depth, on the ball, the probe and each lure", () => {
    for (const speedMph of [0, 1, 2.3, 3.5])
      for (const outFt of [0, 2, 40, 150, 300]) {
        const rods = outFt > 20 ? [rod("P1", 0, 20), rod("P1U", 20, 25, "plug")] : [rod("P1", 0, 20)];
        for (const place of placesOf(banded(rig(outFt, speedMph, rods, { probeAboveBallM: 0.3 })))) {
          expect(place.lowM).toBeLessThanOrEqual(place.depthM);
          expect(place.highM).toBeGreaterThanOrEqual(place.depthM);
          // A plug floats up when the boat lies still; otherwise a band ends at the surface.
          expect(place.lowM).toBeGreaterThanOrEqual(Math.min(0, place.depthM));
          for (const figure of [place.lowM, place.highM, place.depthPerOut, place.depthPerSpeed])
            expect(Number.isFinite(figure)).toBe(true);
        }
      }
  });

  test("has the same centre as the depth without a band", () => {
    const plain = solveDownrigger(USUAL);
    expect(banded(USUAL).solved).toEqual(plain);
  });

  test("grows with each spread, and shrinks to nothing without any", () => {
    const here = banded(USUAL);
    for (const key of [
      "speedMS",
      "lnDragShared",
      "lnDragCable",
      "counterScale",
      "counterOffsetM",
      "rodPullN",
    ] as const) {
      const wider = banded(USUAL, { ...SPREADS, [key]: 2 * SPREADS[key] });
      expect(width(wider.ball), key).toBeGreaterThan(width(here.ball));
    }
    for (const place of placesOf(banded(USUAL, NONE))) expect(width(place)).toBe(0);
  });

  test("a calibrated rig has a narrower one", () => {
    const calibrated = {
      ...SPREADS,
      lnDragShared: 0,
      lnDragCable: 0.07,
      counterScale: 0.013,
      counterOffsetM: 0.28,
    };
    expect(width(banded(USUAL, calibrated).ball)).toBeLessThan(0.8 * width(banded(USUAL).ball));
  });

  test("is lopsided where the model is: more drag lifts a deep ball more than less drag drops it", () => {
    const { ball } = banded(rig(150, 2.5), { ...NONE, lnDragCable: 0.3 });
    expect(ball.depthM - ball.lowM).toBeGreaterThan(1.2 * (ball.highM - ball.depthM));
  });

  test("the lure's own forces move that lure and nothing else", () => {
    const only = banded(USUAL, { ...NONE, lureShare: 0.5 });
    expect(width(only.ball)).toBe(0);
    for (const one of only.rods) expect(width(one.lure)).toBeGreaterThan(0);
    const plug = only.rods[1]?.lure;
    const keys = plug?.shares.filter((share) => share.less + share.more > 0.01).map((share) => share.key);
    expect(keys).toContain("lure-lift");
  });

  test("names what it is made of, each share as solved by itself", () => {
    const speedSdMS = 0.1 * MPH_MS;
    const { ball } = banded(USUAL);
    const share = ball.shares.find((one) => one.key === "speed");
    const faster = solveDownrigger(atSpeed(USUAL, 2.5 * MPH_MS + DEVIATIONS_80 * speedSdMS));
    const rise = faster.ok ? ball.depthM - faster.ball.depthM : Number.NaN;
    expectNear("rise", share?.less ?? Number.NaN, rise, 1e-3);
    const whole = Math.sqrt(ball.shares.reduce((sum, one) => sum + one.less ** 2, 0));
    expectNear("low", ball.lowM, ball.depthM - whole, 1e-9);
  });

  test("on long fast cable drag rules it; on short slow cable the counter does", () => {
    const largest = (one: Downrigger) => {
      const { shares } = banded(one).ball;
      return shares.reduce((most, share) => (share.less + share.more > most.less + most.more ? share : most))
        .key;
    };
    expect(largest(rig(230, 2.6))).toMatch(/^drag/);
    expect(largest(rig(40, 1.8))).toMatch(/^counter/);
  });

  test("its slopes are those of the depth itself", () => {
    const { ball } = banded(USUAL);
    const at = (change: Partial<Downrigger>) => {
      const answer = solveDownrigger({ ...USUAL, ...change });
      return answer.ok ? answer.ball.depthM : Number.NaN;
    };
    const speedMS = 2.5 * MPH_MS;
    const { outM } = USUAL;
    expectNear(
      "per speed",
      ball.depthPerSpeed,
      (at({ flow: uniformFlow(speedMS + 0.05) }) - at({ flow: uniformFlow(speedMS - 0.05) })) / 0.1,
      0.02 * Math.abs(ball.depthPerSpeed),
    );
    expectNear("per out", ball.depthPerOut, (at({ outM: outM + 1 }) - at({ outM: outM - 1 })) / 2, 3e-3);
    expect(ball.depthPerSpeed).toBeLessThan(0);
    expect(ball.depthPerOut).toBeGreaterThan(0);
    expect(ball.depthPerOut).toBeLessThan(1);
  });

  test("covers about 80 in 100 of rigs drawn from the spreads", () => {
    const { ball } = banded(rig(150, 2.5, [rod("P1", 0, 20)]));
    const parameters = rigParameters(SPREADS).filter((one) => !one.luresOnly);
    let inside = 0;
    const draws = 400;
    const normal = normalDraws(7);
    for (let i = 0; i < draws; i++) {
      const drawn = parameters.reduce(
        (one, parameter) => parameter.moved(one, normal()),
        rig(150, 2.5, [rod("P1", 0, 20)]),
      );
      const answer = solveDownrigger(drawn);
      if (answer.ok && answer.ball.depthM >= ball.lowM && answer.ball.depthM <= ball.highM) inside++;
    }
    expect(inside / draws).toBeGreaterThan(0.72);
    expect(inside / draws).toBeLessThan(0.88);
  });

  test("refuses what the depth refuses", () => {
    const answer = solveDownriggerBand(atSpeed(USUAL, Number.NaN), rigParameters(SPREADS));
    expect(answer).toEqual({ ok: false, why: "the speed is not a number" });
  });
});

/** Normal draws, always the same ones: a linear congruential generator and the sum of twelve. */
function normalDraws(seed: number): () => number {
  let state = seed;
  return () => {
    let sum = -6;
    for (let i = 0; i < 12; i++) {
      state = (state * 1664525 + 1013904223) % 2 ** 32;
      sum += state / 2 ** 32;
    }
    return sum;
  };
}

describe("bands of any outputs", () => {
  test("add one-sided moves in quadrature", () => {
    const inputs = [
      { key: "a", at: (d: number) => [d > 0 ? 13 : 6] },
      { key: "b", at: (d: number) => [d > 0 ? 14 : 7] },
    ];
    expect(bandsOf([10], inputs, 1)[0]).toMatchObject({ value: 10, low: 5, high: 15 });
  });
  test("count an input that only ever lowers on that side", () => {
    const inputs = [{ key: "a", at: () => [8] }];
    expect(bandsOf([10], inputs, 1)[0]).toMatchObject({ low: 8, high: 10 });
  });
  test("take a missing side to be as far as the other", () => {
    const inputs = [{ key: "a", at: (d: number) => (d > 0 ? undefined : [7]) }];
    expect(bandsOf([10], inputs, 1)[0]).toMatchObject({ low: 7, high: 13 });
  });
});
