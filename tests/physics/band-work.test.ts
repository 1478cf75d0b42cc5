/** What a band takes, counted, and how near its sides come to those of rigs that are settled by themselves, closely. */
import fc from "fast-check";
import { beforeEach, describe, expect, test, vi } from "vitest";
import { bandsOf } from "../../server/physics/band.ts";
import * as climbLine from "../../server/physics/climb-line.ts";
import * as climbRig from "../../server/physics/climb-rig.ts";
import type { Downrigger } from "../../server/physics/downrigger.ts";
import { defaultSpreads, rigParameters, solveDownriggerBand } from "../../server/physics/downrigger-band.ts";
import { type FlowProfile, uniformFlow } from "../../server/physics/flow-profile.ts";
import { solveLongLineBand } from "../../server/physics/long-line-band.ts";
import { defaultLongLineSpreads, longLineParameters } from "../../server/physics/long-line-parameters.ts";
import { solveSettled } from "../../server/physics/settled-downrigger.ts";
import { gentleFlow } from "./flow-maker.ts";
import { lineInUse, longLine } from "./long-line-maker.ts";
import { MPH_MS, rig, rod } from "./rig-maker.ts";

vi.mock("../../server/physics/climb-rig.ts", { spy: true });
vi.mock("../../server/physics/climb-line.ts", { spy: true });

const SHEARED: FlowProfile = { type: "piecewise", depthsM: [0, 25], speedsMS: [1.03, 1.16] };
const SPREADS = { ...defaultSpreads(0.1 * MPH_MS), surfaceSpeedMS: 0.3 * MPH_MS };
const PARAMETERS = rigParameters(SPREADS);
const RODS = [rod("P1", 0, 20), rod("P1U", 20, 25, "plug")];

beforeEach(() => {
  vi.clearAllMocks();
});

describe("climbs of the cable for a depth with its band and its two slopes", () => {
  test.each<[string, number, FlowProfile, number]>([
    ["one rod", 1, uniformFlow(1.16), 31],
    ["one rod, in shear", 1, SHEARED, 34],
    ["two rods", 2, uniformFlow(1.16), 43],
    ["two rods, in shear", 2, SHEARED, 46],
  ])("%s", (_name, rods, flow, most) => {
    const answer = solveDownriggerBand(
      rig(90, 2, RODS.slice(0, rods), { flow, probeAboveBallM: 0.38 }),
      PARAMETERS,
    );
    if (!answer.ok) throw new Error(answer.why);
    expect(answer.ball.lowM + answer.ball.depthPerSpeed + answer.ball.depthPerOut).toBeGreaterThan(0);
    expect(vi.mocked(climbRig.climbCable).mock.calls.length).toBeLessThanOrEqual(most);
  });
});

describe("climbed pieces of a leadcore line's main and leader, for its depth and with its band", () => {
  test.each<[string, FlowProfile, number, number]>([
    ["in a uniform stream", uniformFlow(1.16), 2, 44],
    ["in shear", SHEARED, 10, 78],
  ])("%s", (_name, flow, forDepth, forBoth) => {
    const answer = solveLongLineBand(
      longLine(lineInUse("leadcore", 0.85), 180, 2.3, { flow }),
      longLineParameters({ ...defaultLongLineSpreads(0.1 * MPH_MS), surfaceSpeedMS: 0.3 * MPH_MS }),
    );
    if (!answer.ok) throw new Error(answer.why);
    const climbs = vi.mocked(climbLine.climbLine).mock.calls;
    expect(climbs.length).toBeLessThanOrEqual(forDepth);
    expect(answer.lure.lowM).toBeGreaterThan(0);
    expect(climbs.length).toBeLessThanOrEqual(forBoth);
  });
});

/** The depth of the ball, settled by itself and a thousand times as closely. */
function closely(one: Downrigger): number[] | undefined {
  const solved = solveSettled(one, undefined, { tolerance: 1e-8, share: 1e-7 });
  return solved.ok ? [solved.answer.ball.depthM] : undefined;
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rigs = (stream: fc.Arbitrary<FlowProfile>) =>
  fc.sample(fc.tuple(between(60, 250), stream, fc.integer({ min: 0, max: 2 })), {
    seed: 20310621,
    numRuns: 80,
  });

test.each([
  ["in a uniform stream", between(0.7, 1.6).map(uniformFlow)],
  ["in shear", gentleFlow],
])(
  "what an input moves the ball is within 1 cm in 100 m of cable, and all but never off by 6, %s",
  (_, stream) => {
    const offs: number[] = [];
    for (const [outFt, flow, rods] of rigs(stream)) {
      const one = rig(outFt, 2, RODS.slice(0, rods), { flow, probeAboveBallM: 0.4 });
      const answer = solveDownriggerBand(one, PARAMETERS);
      const ballM = closely(one);
      // A shaky shape answers to everything, and says so.
      if (!answer.ok || ballM === undefined || (answer.solved.conditioning ?? 0) > 1.5) continue;
      const inputs = PARAMETERS.filter(({ mirrors, luresOnly }) => !mirrors && !luresOnly).map(
        (parameter) => ({
          key: parameter.key,
          at: (deviations: number) => closely(parameter.moved(one, deviations)),
        }),
      );
      for (const exact of bandsOf(ballM, inputs)[0]?.shares ?? []) {
        const found = answer.ball.shares.find(({ key }) => key === exact.key);
        for (const side of ["less", "more"] as const)
          offs.push(Math.abs((found?.[side] ?? Number.NaN) - exact[side]) / one.outM);
      }
    }
    offs.sort((a, b) => a - b);
    expect(offs.length).toBeGreaterThan(500);
    expect(offs[Math.floor(0.75 * offs.length)]).toBeLessThan(1e-4);
    expect(offs[Math.floor(0.985 * offs.length)]).toBeLessThan(6e-4);
  },
);
