import { describe, expect, test } from "vitest";
import { type FlowProfile, uniformFlow } from "../../server/physics/flow-profile.ts";
import { type PointBody, solveTowedLine, type TowedLine } from "../../server/physics/towed-line.ts";
import type { Water } from "../../server/physics/water.ts";
import { lineOf, WATER } from "./line-maker.ts";

const CABLE = {
  lengthM: 40,
  diameterM: 9e-4,
  weightNPerM: 0.03,
  coefficient: 1.2,
  tangential: 0.01,
  bodyWeightN: 40,
  bodyDragM2: 3e-3,
  speedMS: 1,
};

function whyNot(line: TowedLine, flow: FlowProfile = uniformFlow(1), water: Water = WATER, zM = 0): string {
  const answer = solveTowedLine(line, water, flow, { xM: 0, zM });
  return answer.ok ? "" : answer.why;
}

const body = (change: Partial<PointBody>): TowedLine => {
  const line = lineOf(CABLE);
  return { ...line, bodies: line.bodies.map((one) => ({ ...one, ...change })) };
};

describe("numbers that are not numbers are refused, never answered with NaN", () => {
  for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
    test.each(Object.keys(CABLE).filter((key) => key !== "speedMS"))(`${bad} for %s`, (key) => {
      expect(whyNot(lineOf({ ...CABLE, [key]: bad }))).toMatch(/is not a number$/);
    });
    test(`${bad} for speed, water, top and pulls`, () => {
      expect(whyNot(lineOf(CABLE), uniformFlow(bad))).toBe("the speed is not a number");
      expect(whyNot(lineOf(CABLE), uniformFlow(1), { ...WATER, densityKgM3: bad })).toMatch(
        /density is not a number/,
      );
      expect(whyNot(lineOf(CABLE), uniformFlow(1), WATER, bad)).toMatch(/depth is not a number/);
      expect(whyNot(body({ liftAreaM2: bad }))).toMatch(/lift area .* is not a number/);
      expect(whyNot(body({ forceXN: bad }))).toMatch(/pull .* is not a number/);
      expect(whyNot(body({ sphere: { diameterM: bad, multiplier: 1 } }))).toMatch(
        /diameter .* is not a number/,
      );
    });
  }
});

describe("what is out of range or has no single answer is refused by name", () => {
  test.each<[string, TowedLine, RegExp]>([
    ["a negative length", lineOf({ ...CABLE, lengthM: -1 }), /the length of segment 1 is -1 m/],
    ["no diameter", lineOf({ ...CABLE, diameterM: 0 }), /the diameter of segment 1 is 0 m/],
    ["no segment", { segments: [], bodies: [] }, /no segment/],
    [
      "too many",
      { segments: Array(201).fill(lineOf(CABLE).segments[0]), bodies: [] },
      /201 segments, more than 200/,
    ],
    ["a body nowhere", body({ node: 2 }), /at node 2, and the line has nodes 1 to 1/],
    ["a body between nodes", body({ node: 0.5 }), /at node 0.5/],
    [
      "nothing to keep it taut",
      { segments: lineOf({ ...CABLE, weightNPerM: 0, tangential: 0 }).segments, bodies: [] },
      /nothing keeps the line taut/,
    ],
  ])("%s", (_name, line, why) => {
    expect(whyNot(line)).toMatch(why);
  });
  test("a floating line that takes up its own weight in still water goes slack", () => {
    expect(whyNot(lineOf({ ...CABLE, weightNPerM: -0.1, bodyWeightN: 1 }), uniformFlow(0))).toMatch(/slack/);
  });
  const layer = { type: "tanh", upperMS: 1, lowerMS: 0.5, middleM: 20, halfWidthM: 2 } as const;
  const pieces = (depthsM: number[], speedsMS: number[]): FlowProfile => ({
    type: "piecewise",
    depthsM,
    speedsMS,
  });
  test.each<[string, FlowProfile, RegExp]>([
    ["no depths", pieces([], []), /no depth/],
    ["more depths than speeds", pieces([0, 10], [1]), /2 depths and 1 speeds/],
    ["depths out of order", pieces([0, 20, 10], [1, 1, 1]), /goes back from 20 m to 10 m; sort it by depth/],
    ["a depth stated twice", pieces([0, 20, 20], [1, 1, 0.5]), /states 20 m twice, so the speed jumps/],
    ["a jump", pieces([0, 20, 20.001], [1, 1, 0.5]), /jumps between 20 m and 20.001 m/],
    ["a depth of no number", pieces([0, Number.NaN], [1, 1]), /a depth of the speed profile is not a number/],
    ["a speed of no number", pieces([0, 10], [1, Number.NaN]), /the speed at 10 m is not a number/],
    ["an endless speed", pieces([0, 10], [1, 1e9]), /the speed at 10 m is 1000000000 m\/s/],
    ["a layer without width", { ...layer, halfWidthM: 0 }, /half width is 0 m/],
    ["a layer at no depth", { ...layer, middleM: Number.NaN }, /the layer's depth is not a number/],
    ["a layer of no speed", { ...layer, upperMS: Number.NaN }, /speed above the layer is not a number/],
  ])("a profile with %s", (_name, flow, why) => {
    expect(whyNot(lineOf(CABLE), flow)).toMatch(why);
  });
  test("a layer so thin that it is nearly a jump is still answered, in finite numbers", () => {
    for (const flow of [{ ...layer, halfWidthM: 0.01 }, pieces([20, 20.01], [1, 0.2])])
      for (const bodyWeightN of [1, 3, 10, 40]) {
        const answer = solveTowedLine(lineOf({ ...CABLE, bodyWeightN }), WATER, flow);
        expect(answer.ok && Number.isFinite(answer.depthM)).toBe(true);
      }
  });
});

describe("at the edges of what is answered", () => {
  test("no line out, still water, and a line that floats up", () => {
    const answer = (line: TowedLine, speedMS: number) => {
      const one = solveTowedLine(line, WATER, uniformFlow(speedMS));
      if (!one.ok) throw new Error(one.why);
      return one;
    };
    expect(answer(lineOf({ ...CABLE, lengthM: 0 }), 1)).toMatchObject({ depthM: 0, behindM: 0 });
    const still = answer(lineOf(CABLE), 0);
    expect(still).toMatchObject({ behindM: 0, topAngleDeg: 0 });
    expect(still.depthM).toBeCloseTo(40, 9);
    const up = answer(lineOf({ ...CABLE, bodyWeightN: -40, weightNPerM: 0 }), 1);
    expect(up.depthM).toBeLessThan(0);
    expect(up.leastDepthM).toBe(up.depthM);
  });
});
