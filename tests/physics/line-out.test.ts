import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type FlowProfile, uniformFlow } from "../../server/physics/flow-profile.ts";
import { lineOutForDepth } from "../../server/physics/line-out.ts";
import { solveTowedLine, type TowedLine } from "../../server/physics/towed-line.ts";
import { gentleFlow } from "./flow-maker.ts";
import { expectNear, lineOf, WATER } from "./line-maker.ts";

const SEED = { seed: 20310621, numRuns: 120 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyFlow = fc.oneof(between(0.2, 1.8).map(uniformFlow), gentleFlow);

const CABLE = {
  lengthM: 40,
  diameterM: 9e-4,
  weightNPerM: 0.0336,
  coefficient: 1.3,
  tangential: 0.01,
  bodyWeightN: 45,
  bodyDragM2: 3e-3,
  speedMS: 1,
};

/** A cable with a release and a probe above its ball: three segments, of which the top one is let out. */
function rigged(topM: number, bodyWeightN: number): TowedLine {
  const { segments, bodies } = lineOf({ ...CABLE, bodyWeightN });
  const [cable] = segments;
  if (cable === undefined) throw new Error("no cable");
  return {
    segments: [topM, 2, 0.5].map((lengthM) => ({ ...cable, lengthM })),
    bodies: [
      ...bodies.map((body) => ({ ...body, node: 3 })),
      { node: 1, weightN: -4, dragAreaM2: 5e-4, liftAreaM2: 0, forceXN: 1 },
    ],
  };
}

describe("line out for a depth", () => {
  test("undoes the depth for a line out, at every node, from any top, in any stream", () => {
    fc.assert(
      fc.property(
        anyFlow,
        between(3, 70),
        between(15, 80),
        fc.constantFrom(1, 2, 3),
        between(0, 4),
        (flow, topM, weightN, node, zM) => {
          const line = rigged(topM, weightN);
          const top = { xM: 0, zM };
          const there = solveTowedLine(line, WATER, flow, top);
          if (!there.ok || (there.conditioning ?? 0) > 3) return;
          const depthM = there.nodes[node]?.zM ?? Number.NaN;
          const back = lineOutForDepth(line, WATER, flow, { node, depthM }, top);
          if (!back.ok) throw new Error(back.why);
          // A length is as exact as the depth is over the slope of depth on length, which is the line's own.
          const slope = Math.cos((there.topAngleDeg * Math.PI) / 180);
          expectNear("length", back.lengthM, topM, (2e-7 * (topM + 2.5)) / slope);
          const end = back.nodesFromEnd[0];
          expectNear("behind", end?.xM ?? Number.NaN, there.behindM, (1e-6 * topM) / slope);
          expectNear("along", end?.alongM ?? Number.NaN, topM + 2.5, (1e-6 * topM) / slope);
        },
      ),
      SEED,
    );
  });

  test("grows with the depth", () => {
    fc.assert(
      fc.property(anyFlow, between(4, 25), between(0.1, 5), (flow, depthM, more) => {
        const out = (at: number) => lineOutForDepth(rigged(0, 60), WATER, flow, { node: 3, depthM: at });
        const [near, far] = [out(depthM), out(depthM + more)];
        if (near.ok && far.ok) expect(far.lengthM).toBeGreaterThan(near.lengthM);
        else expect(far.ok).toBe(false);
      }),
      SEED,
    );
  });

  test("works for a line with nothing at its end, in both kinds of stream", () => {
    for (const flow of [
      uniformFlow(0.9),
      { type: "piecewise", depthsM: [0, 20], speedsMS: [1, 0.8] },
    ] as FlowProfile[]) {
      const line = { segments: lineOf(CABLE).segments, bodies: [] };
      const there = solveTowedLine(line, WATER, flow);
      if (!there.ok) throw new Error(there.why);
      const back = lineOutForDepth(line, WATER, flow, { node: 1, depthM: there.depthM });
      expectNear("length", back.ok ? back.lengthM : Number.NaN, 40, 1e-4);
    }
  });
});

describe("a depth out of reach", () => {
  const neutral = lineOf({ ...CABLE, weightNPerM: 0, bodyWeightN: 5 });
  test("says so, with the deepest that is not", () => {
    const deepest = solveTowedLine(
      lineOf({ ...CABLE, lengthM: 300, weightNPerM: 0, bodyWeightN: 5 }),
      WATER,
      uniformFlow(1.5),
    );
    if (!deepest.ok) throw new Error(deepest.why);
    const out = (depthM: number) =>
      lineOutForDepth(neutral, WATER, uniformFlow(1.5), { node: 1, depthM }, { xM: 0, zM: 0 }, 300);
    expect(out(deepest.depthM + 0.01)).toMatchObject({
      ok: false,
      why: expect.stringMatching(/^not reachable at this speed: the deepest with 300 m out is/),
    });
    const answer = out(deepest.depthM + 5);
    expectNear("deepest", "deepestM" in answer ? (answer.deepestM ?? 0) : 0, deepest.depthM, 1e-4);
    expect(out(deepest.depthM - 0.01).ok).toBe(true);
  });
  test("a target above what hangs below anyway, and what is no number, are refused in words", () => {
    const refused = (depthM: number, node = 3) => {
      const answer = lineOutForDepth(rigged(0, 45), WATER, uniformFlow(1), { node, depthM });
      return answer.ok ? "" : answer.why;
    };
    expect(refused(1)).toMatch(/goes deeper than that by itself/);
    expect(refused(Number.NaN)).toBe("the depth to reach is not a number");
    expect(refused(-1)).toMatch(/the depth to reach is -1 m/);
    expect(refused(10, 4)).toMatch(/node 4, and the line has nodes 1 to 3/);
  });
});
