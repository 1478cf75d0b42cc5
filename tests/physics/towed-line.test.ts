import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { constantDrag, reynoldsDrag } from "../../server/physics/drag.ts";
import { uniformFlow } from "../../server/physics/flow-profile.ts";
import {
  type LineSegment,
  solveTowedLine,
  type TowedLine,
  totalLengthM,
} from "../../server/physics/towed-line.ts";
import { type CableAndBody, expectNear, lineOf, solved, WATER } from "./line-maker.ts";
import { type Climb, climbBySecondIntegrator, withBody } from "./second-integrator.ts";

const SEED = { seed: 20310621, numRuns: 200 };

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const cable: fc.Arbitrary<CableAndBody> = fc.record({
  lengthM: between(1, 120),
  diameterM: between(3e-4, 2e-3),
  weightNPerM: between(0, 0.05),
  coefficient: between(0.8, 2.5),
  tangential: between(0, 0.05),
  bodyWeightN: between(5, 90),
  bodyDragM2: between(0, 0.01),
  speedMS: between(0.1, 2.5),
});

describe("one cable with a weight", () => {
  test("goes deeper with more cable, and never deeper than it is long", () => {
    fc.assert(
      fc.property(cable, between(0.5, 20), (one, more) => {
        const short = solved(lineOf(one), one.speedMS);
        const long = solved(lineOf({ ...one, lengthM: one.lengthM + more }), one.speedMS);
        expect(long.depthM).toBeGreaterThan(short.depthM);
        expect(short.depthM).toBeLessThanOrEqual(one.lengthM * (1 + 1e-9));
        expect(Math.hypot(short.depthM, short.behindM)).toBeLessThanOrEqual(one.lengthM * (1 + 1e-9));
      }),
      SEED,
    );
  });

  test("comes up with more speed, with a thicker cable, and with a lighter weight", () => {
    fc.assert(
      fc.property(cable, between(0.02, 1), (one, more) => {
        const depth = (other: CableAndBody) => solved(lineOf(other), other.speedMS).depthM;
        const here = depth(one);
        const rounding = 1e-8 * one.lengthM;
        expect(depth({ ...one, speedMS: one.speedMS + more })).toBeLessThan(here + rounding);
        expect(depth({ ...one, diameterM: one.diameterM * (1 + more) })).toBeLessThan(here + rounding);
        expect(depth({ ...one, bodyWeightN: one.bodyWeightN / (1 + more) })).toBeLessThan(here + rounding);
      }),
      SEED,
    );
  });

  test("mirrors when it is towed astern", () => {
    fc.assert(
      fc.property(cable, (one) => {
        const ahead = solved(lineOf(one), one.speedMS);
        const astern = solved(lineOf(one), -one.speedMS);
        expectNear("depth", astern.depthM, ahead.depthM, 1e-9 * one.lengthM);
        expectNear("behind", astern.behindM, -ahead.behindM, 1e-9 * one.lengthM);
      }),
      SEED,
    );
  });

  test("keeps its shape when every force is scaled", () => {
    fc.assert(
      fc.property(cable, between(0.2, 5), (one, k) => {
        const here = solved(lineOf(one), one.speedMS);
        const heavier = {
          ...one,
          weightNPerM: one.weightNPerM * k,
          coefficient: one.coefficient * k,
          tangential: one.tangential * k,
          bodyWeightN: one.bodyWeightN * k,
          bodyDragM2: one.bodyDragM2 * k,
        };
        const there = solved(lineOf(heavier), one.speedMS);
        expectNear("depth", there.depthM, here.depthM, 2e-8 * one.lengthM);
        expectNear("tension", there.topTensionN, k * here.topTensionN, 2e-7 * there.topTensionN);
      }),
      SEED,
    );
  });

  test("doubles when lengths double and loads per length halve", () => {
    fc.assert(
      fc.property(cable, (one) => {
        const here = solved(lineOf(one), one.speedMS);
        const twice = {
          ...one,
          lengthM: 2 * one.lengthM,
          diameterM: one.diameterM / 2,
          weightNPerM: one.weightNPerM / 2,
        };
        const there = solved(lineOf(twice), one.speedMS);
        expectNear("depth", there.depthM, 2 * here.depthM, 2e-8 * twice.lengthM);
        expectNear("behind", there.behindM, 2 * here.behindM, 2e-8 * twice.lengthM);
      }),
      SEED,
    );
  });

  test("depends on speed and density only through their pressure", () => {
    fc.assert(
      fc.property(cable, between(0.7, 2), (one, k) => {
        const here = solved(lineOf(one), one.speedMS);
        const water = { ...WATER, densityKgM3: WATER.densityKgM3 / (k * k) };
        const there = solveTowedLine(lineOf(one), water, uniformFlow(one.speedMS * k));
        expectNear("depth", there.ok ? there.depthM : Number.NaN, here.depthM, 2e-8 * one.lengthM);
      }),
      SEED,
    );
  });

  test("is the same line when it is cut in two", () => {
    fc.assert(
      fc.property(cable, between(0.01, 0.99), (one, share) => {
        const whole = solved(lineOf(one), one.speedMS);
        const { segments, bodies } = lineOf(one);
        const pieces = [share, 1 - share].flatMap((part) =>
          segments.map((segment) => ({ ...segment, lengthM: segment.lengthM * part })),
        );
        const cut = solved(
          { segments: pieces, bodies: bodies.map((body) => ({ ...body, node: 2 })) },
          one.speedMS,
        );
        expectNear("depth", cut.depthM, whole.depthM, 2e-8 * one.lengthM);
        expectNear("behind", cut.behindM, whole.behindM, 2e-8 * one.lengthM);
        expectNear("tension", cut.topTensionN, whole.topTensionN, 2e-7 * whole.topTensionN);
      }),
      SEED,
    );
  });
});

/** Some of every kind of line: floating, heavy, with drag laws that follow the speed, with lift and pulls. */
const segment: fc.Arbitrary<LineSegment> = fc.record({
  lengthM: between(0.2, 60),
  diameterM: between(2e-4, 2e-3),
  weightNPerM: between(-0.003, 0.05),
  normalDrag: fc.oneof(
    between(0.5, 2.5).map(constantDrag),
    fc
      .tuple(fc.constantFrom("cheng", "sucker-brauer", "choo-casarella-blended"), between(0.5, 2))
      .map(([law, multiplier]) => reynoldsDrag(law, multiplier)),
  ),
  tangentialCoefficient: between(0, 0.05),
});

const anyLine: fc.Arbitrary<TowedLine> = fc.array(segment, { minLength: 1, maxLength: 4 }).chain((segments) =>
  fc
    .record({
      weightN: between(0.05, 60),
      dragAreaM2: between(0, 0.01),
      liftAreaM2: between(0, 0.01),
      forceXN: between(0, 5),
    })
    .map((forces) => ({ segments, bodies: [{ node: segments.length, ...forces }] })),
);

describe("random lines against a second integrator in other variables", () => {
  test("agree in place and force", () => {
    let compared = 0;
    fc.assert(
      fc.property(anyLine, between(0.2, 2.5), (line, speedMS) => {
        const ours = solveTowedLine(line, WATER, uniformFlow(speedMS));
        if (!ours.ok) return;
        let climb: Climb = [0, 0, 0, 0];
        for (let node = line.segments.length; node > 0; node--) {
          for (const body of line.bodies) if (body.node === node) climb = withBody(climb, body, speedMS);
          const above = line.segments[node - 1];
          if (above !== undefined) climb = climbBySecondIntegrator(climb, above, speedMS);
        }
        const [x, z, forceX, forceZ] = climb;
        const lengthM = totalLengthM(line.segments);
        expectNear("depth", ours.depthM, -z, 5e-7 * lengthM);
        expectNear("behind", ours.behindM, -x, 5e-7 * lengthM);
        expectNear("astern force", ours.topForceXN, forceX, 1e-6 * ours.topTensionN);
        expectNear("down force", ours.topForceZN, forceZ, 1e-6 * ours.topTensionN);
        compared++;
      }),
      { seed: SEED.seed, numRuns: 120 },
    );
    expect(compared).toBeGreaterThan(100);
  });
});

describe("a branch", () => {
  test("pulls on its node as a body with its top force would, and keeps its place there", () => {
    const lure = lineOf({
      lengthM: 6,
      diameterM: 4e-4,
      weightNPerM: 2e-4,
      coefficient: 1.4,
      tangential: 0.01,
      bodyWeightN: 0.1,
      bodyDragM2: 5e-4,
      speedMS: 1,
    });
    const main = lineOf({
      lengthM: 30,
      diameterM: 9e-4,
      weightNPerM: 0.03,
      coefficient: 1.2,
      tangential: 0.01,
      bodyWeightN: 45,
      bodyDragM2: 3e-3,
      speedMS: 1,
    });
    const alone = solved(lure, 1);
    const branched = solved({ ...main, branches: [{ node: 1, line: lure }] }, 1);
    const pulled = solved(
      {
        ...main,
        bodies: [
          ...main.bodies,
          { node: 1, weightN: alone.topForceZN, forceXN: alone.topForceXN, dragAreaM2: 0, liftAreaM2: 0 },
        ],
      },
      1,
    );
    expect(branched.depthM).toBe(pulled.depthM);
    const clipped = branched.branches[0];
    expectNear("lure depth", clipped?.depthM ?? Number.NaN, branched.depthM + alone.depthM, 1e-12);
    expectNear("clip", clipped?.nodes[0]?.zM ?? Number.NaN, branched.depthM, 1e-12);
  });
});
