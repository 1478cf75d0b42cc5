import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { constantDrag, reynoldsDrag } from "../../server/physics/drag.ts";
import type { FlowProfile } from "../../server/physics/flow-profile.ts";
import { solveFromEnd } from "../../server/physics/sheared-line.ts";
import {
  type LineSegment,
  type SolvedLine,
  solveTowedLine,
  type TowedLine,
  totalLengthM,
} from "../../server/physics/towed-line.ts";
import { gentleFlow, strongLayer } from "./flow-maker.ts";
import { expectNear, lineOf, solved, WATER } from "./line-maker.ts";
import { type Climb, climbInFlow, speedIn, withBody } from "./second-integrator.ts";

const SEED = 20310621;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const bare = { diameterM: 9e-4, weightNPerM: 0.0336, coefficient: 1.3, tangential: 0.01, speedMS: 1 };
const SURFACE = { xM: 0, zM: 0 };

function inFlow(line: TowedLine, flow: FlowProfile, zM = 0): SolvedLine {
  const answer = solveTowedLine(line, WATER, flow, { xM: 0, zM });
  if (!answer.ok) throw new Error(answer.why);
  return answer;
}

const segment: fc.Arbitrary<LineSegment> = fc.record({
  lengthM: between(1, 50),
  diameterM: between(3e-4, 1.2e-3),
  weightNPerM: between(0, 0.05),
  normalDrag: fc.oneof(
    between(0.8, 2).map(constantDrag),
    fc
      .tuple(fc.constantFrom("cheng", "choo-casarella-blended"), between(0.8, 1.5))
      .map(([law, multiplier]) => reynoldsDrag(law, multiplier)),
  ),
  tangentialCoefficient: between(0, 0.03),
});

const anyLine: fc.Arbitrary<TowedLine> = fc.array(segment, { minLength: 1, maxLength: 3 }).chain((segments) =>
  fc
    .record({
      weightN: between(2, 70),
      dragAreaM2: between(0, 0.006),
      liftAreaM2: between(0, 0.004),
      forceXN: between(0, 2),
    })
    .map((forces) => ({ segments, bodies: [{ node: segments.length, ...forces }] })),
);

describe("random lines in sheared streams against a second integrator in other variables", () => {
  test("climbed from the depth answered, the top comes out where it is, with the same force", () => {
    let compared = 0;
    fc.assert(
      fc.property(anyLine, fc.oneof(gentleFlow, strongLayer), between(0, 5), (line, flow, topZM) => {
        const ours = solveTowedLine(line, WATER, flow, { xM: 0, zM: topZM });
        if (!ours.ok) return;
        let climb: Climb = [0, ours.depthM, 0, 0];
        for (let node = line.segments.length; node > 0; node--) {
          for (const body of line.bodies)
            if (body.node === node) climb = withBody(climb, body, speedIn(flow, climb[1]));
          const above = line.segments[node - 1];
          if (above !== undefined) climb = climbInFlow(climb, above, flow);
        }
        const [x, z, forceX, forceZ] = climb;
        const lengthM = totalLengthM(line.segments);
        expectNear("top", z, topZM, 1e-6 * lengthM);
        expectNear("behind", ours.behindM, -x, 1e-6 * lengthM);
        expectNear("astern force", ours.topForceXN, forceX, 2e-6 * ours.topTensionN);
        expectNear("down force", ours.topForceZN, forceZ, 2e-6 * ours.topTensionN);
        compared++;
      }),
      { seed: SEED, numRuns: 80 },
    );
    expect(compared).toBeGreaterThan(70);
  });
});

/** Where g changes sign on an even grid over all depths that the end can have. */
function signChanges(line: TowedLine, flow: FlowProfile): number[] {
  const lengthM = totalLengthM(line.segments);
  const changes: number[] = [];
  let before: number | undefined;
  for (let i = -200; i <= 200; i++) {
    const endZM = (i / 200) * lengthM;
    const answer = solveFromEnd(line, WATER, flow, SURFACE, endZM, 1e-5);
    if (!answer.ok) continue;
    const missM = endZM - answer.depthM;
    if (before !== undefined && before < 0 !== missM < 0) changes.push(endZM);
    before = missM;
  }
  return changes;
}

/** A light body on a long thin line whose end hangs in a thin strong layer: there several shapes are usual. */
const shaky = fc
  .record({
    bodyWeightN: between(2.9, 3.2),
    bodyDragM2: between(0.0018, 0.0022),
    middleM: between(14.6, 15.2),
  })
  .map(({ middleM, ...body }): [TowedLine, FlowProfile] => [
    lineOf({ ...bare, diameterM: 5e-4, weightNPerM: 0, coefficient: 1.2, lengthM: 60, ...body }),
    { type: "tanh", upperMS: 1.5, lowerMS: 0.1, middleM, halfWidthM: 1 },
  ]);

const firm = fc
  .record({ lengthM: between(20, 80), bodyWeightN: between(3, 50), bodyDragM2: between(0, 0.004) })
  .chain((cable) =>
    fc
      .oneof(strongLayer, gentleFlow)
      .map((flow): [TowedLine, FlowProfile] => [lineOf({ ...bare, ...cable }), flow]),
  );

describe("every steady shape is found", () => {
  test("wherever an even scan of all depths sees one", () => {
    let several = 0;
    fc.assert(
      fc.property(fc.oneof(firm, shaky), ([line, flow]) => {
        const { alternatives = [], depthM } = inFlow(line, flow);
        const found = [...alternatives.map((one) => one.depthM), depthM];
        const seen = signChanges(line, flow);
        const lengthM = totalLengthM(line.segments);
        if (seen.length > 1) several++;
        expect(found.length).toBeGreaterThanOrEqual(seen.length);
        expect(found.length % 2).toBe(1);
        for (const at of seen)
          expect(Math.min(...found.map((one) => Math.abs(one - at)))).toBeLessThan(lengthM / 150);
        for (const at of found) expectNear("root", solveFrom(line, flow, at), at, 2e-8 * lengthM);
      }),
      { seed: SEED, numRuns: 30 },
    );
    expect(several).toBeGreaterThan(2);
  });
});

function solveFrom(line: TowedLine, flow: FlowProfile, endZM: number): number {
  const answer = solveFromEnd(line, WATER, flow, SURFACE, endZM, 1e-9);
  return answer.ok ? answer.depthM : Number.NaN;
}

describe("a sheared stream", () => {
  const line = lineOf({ ...bare, lengthM: 45, bodyWeightN: 48, bodyDragM2: 3.5e-3 });
  test("with one speed at all depths is the uniform one", () => {
    const uniform = solved(line, 1.1);
    for (const flow of [
      { type: "piecewise", depthsM: [0, 10, 30], speedsMS: [1.1, 1.1, 1.1] },
      { type: "piecewise", depthsM: [12], speedsMS: [1.1] },
      { type: "tanh", upperMS: 1.1, lowerMS: 1.1, middleM: 20, halfWidthM: 2 },
    ] as const) {
      const same = inFlow(line, flow);
      expectNear("depth", same.depthM, uniform.depthM, 1e-6);
      expectNear("behind", same.behindM, uniform.behindM, 1e-6);
      expectNear("conditioning", same.conditioning ?? 0, 1, 1e-3);
    }
  });
  test("does not care where its depths are cut", () => {
    const flow = { type: "piecewise", depthsM: [0, 40], speedsMS: [1.4, 0.6] } as const;
    const cut = { type: "piecewise", depthsM: [0, 10, 25, 40], speedsMS: [1.4, 1.2, 0.9, 0.6] } as const;
    expectNear("depth", inFlow(line, cut).depthM, inFlow(line, flow).depthM, 1e-6);
  });
  test("lies between the two uniform ones, and mirrors when towed astern", () => {
    const flow = { type: "tanh", upperMS: 1.4, lowerMS: 0.7, middleM: 18, halfWidthM: 2 } as const;
    const { depthM, behindM } = inFlow(line, flow);
    expect(depthM).toBeGreaterThan(solved(line, 1.4).depthM);
    expect(depthM).toBeLessThan(solved(line, 0.7).depthM);
    const astern = inFlow(line, { ...flow, upperMS: -1.4, lowerMS: -0.7 });
    expectNear("depth", astern.depthM, depthM, 1e-6);
    expectNear("behind", astern.behindM, -behindM, 1e-6);
  });
  test("moves with the top when the whole stream is moved down", () => {
    const at = (downM: number) =>
      inFlow(line, { type: "tanh", upperMS: 1.4, lowerMS: 0.7, middleM: 18 + downM, halfWidthM: 2 }, downM);
    expectNear("depth", at(7).depthM - 7, at(0).depthM, 1e-6);
  });
  test("has a free end, a branch at its node's depth, and water that runs both ways", () => {
    const free = { segments: line.segments, bodies: [] };
    const flow = { type: "piecewise", depthsM: [0, 30], speedsMS: [1.2, -0.3] } as const;
    expect(Number.isFinite(inFlow(free, flow).depthM)).toBe(true);
    const lure = lineOf({ ...bare, lengthM: 8, weightNPerM: 2e-4, bodyWeightN: 0.2, bodyDragM2: 4e-4 });
    const both = inFlow({ ...line, branches: [{ node: 1, line: lure }] }, flow);
    const branch = both.branches[0];
    expectNear("clip", branch?.nodes[0]?.zM ?? Number.NaN, both.depthM, 1e-6);
    expectNear("clip", branch?.nodes[0]?.xM ?? Number.NaN, both.behindM, 1e-6);
    const alone = inFlow(lure, flow, both.depthM);
    expectNear("lure", branch?.depthM ?? Number.NaN, alone.depthM, 1e-6);
  });
  test("tells a shaky depth from a firm one", () => {
    const firm = { type: "piecewise", depthsM: [0, 40], speedsMS: [1.2, 1.0] } as const;
    expect(inFlow(line, firm).conditioning).toBeLessThan(1.5);
    const light = lineOf({
      ...bare,
      diameterM: 5e-4,
      weightNPerM: 0,
      coefficient: 1.2,
      lengthM: 60,
      bodyWeightN: 3,
      bodyDragM2: 2e-3,
    });
    const layer = { type: "tanh", upperMS: 1.5, lowerMS: 0.1, middleM: 15, halfWidthM: 1 } as const;
    expect(inFlow(light, layer).conditioning).toBeGreaterThan(5);
  });
});
