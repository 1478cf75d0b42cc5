/** Long lines: how they follow from their inputs, their limits, a second integrator, and what is refused. */
import { describe, expect, test } from "vitest";
import { uniformFlow } from "../../server/physics/flow-profile.ts";
import { weightInWaterNPerM } from "../../server/physics/line-materials.ts";
import { lineInWaterM, solveLongLine, towedLineOf } from "../../server/physics/long-line.ts";
import { lureForces } from "../../server/physics/lure.ts";
import { GRAVITY_M_S2 } from "../../server/physics/water.ts";
import { expectNear, WATER } from "./line-maker.ts";
import { banded, DIVER, lineInUse, longLine, lureFt } from "./long-line-maker.ts";
import { FOOT_M, MPH_MS } from "./rig-maker.ts";
import { type Climb, climbBySecondIntegrator, withBody } from "./second-integrator.ts";

const LEAD = lineInUse("leadcore", 0.85);
const COPPER = lineInUse("copper", 0.95);
const MONO = lineInUse("mono", 0.36);
const WIRE = lineInUse("steel", 0.53);

const LINES = [
  ["5 colors", longLine(LEAD, 150, 2)],
  ["200 ft of copper", longLine(COPPER, 200, 2.2)],
  ["a diver", longLine(WIRE, 150, 2.4, { joint: DIVER })],
  ["a sinker on nylon", longLine(MONO, 100, 2, { joint: { weightN: 0.7, dragAreaM2: 3e-4, liftAreaM2: 0 } })],
] as const;

describe.each(LINES)("%s", (_name, line) => {
  test("goes deeper with more out, and shallower the faster it is towed", () => {
    const now = lureFt(line);
    expect(lureFt({ ...line, outM: line.outM + 10 })).toBeGreaterThan(now);
    expect(lureFt({ ...line, counterScale: 1.05 })).toBeGreaterThan(now);
    const faster = { ...line, flow: uniformFlow(3 * MPH_MS) };
    if (line.joint === DIVER) expectNear("a diver", lureFt(faster), now, 3);
    else expect(lureFt(faster)).toBeLessThan(now);
  });

  test("goes shallower the rougher the line, deeper the heavier it is", () => {
    const now = lureFt(line);
    expect(lureFt({ ...line, main: { ...line.main, dragMultiplier: 1.6 } })).toBeLessThan(now);
    const make = { ...line.main.make, massKgM: line.main.make.massKgM * 1.2 };
    expect(lureFt({ ...line, main: { ...line.main, make } })).toBeGreaterThan(now);
  });

  test("has a band that holds its depth, wider where the speed is known less", () => {
    const { lure, joint } = banded(line);
    for (const place of [lure, joint]) {
      expect(place.lowM).toBeLessThan(place.depthM);
      expect(place.highM).toBeGreaterThan(place.depthM);
    }
    expect(lure.behindM).toBeGreaterThan(0);
    expect(lure.behindM).toBeLessThan(line.outM + 10);
  });

  test("has slopes that agree with solving again", () => {
    const { lure } = banded(line);
    const more = banded({ ...line, outM: line.outM + 1 }).lure.depthM - lure.depthM;
    expectNear("per meter out", lure.depthPerOut, more, 0.02 * Math.abs(more));
  });
});

describe("limits", () => {
  test("a long heavy line lies at its critical angle, whatever hangs on its end", () => {
    const speedMS = 2 * MPH_MS;
    const { lure } = banded(longLine(COPPER, 3000, 2, { below: [] }));
    const slope = Math.asin(lure.depthPerOut);
    // Closed form: the water's push across the line balances its weight across it (constant coefficient assumed).
    const weight = weightInWaterNPerM(COPPER.make, WATER.densityKgM3);
    const reynolds = (speedMS * Math.sin(slope) * COPPER.make.diameterM) / WATER.kinematicViscosityM2S;
    const coefficient = 1.2 * (1.1 + 4 / Math.sqrt(reynolds));
    const push =
      0.5 * WATER.densityKgM3 * coefficient * COPPER.make.diameterM * (speedMS * Math.sin(slope)) ** 2;
    expectNear("push against weight", push / (weight * Math.cos(slope)), 1, 0.01);
  });

  test("a line that weighs nothing and drags nothing points where its diver pulls", () => {
    const thin = { make: { diameterM: 5e-5, massKgM: 1e-6, displacedM2: 0 }, dragMultiplier: 0 };
    const line = longLine(thin, 100, 2, {
      joint: DIVER,
      below: [],
      lure: { weightN: 0, dragAreaM2: 0, liftAreaM2: 0 },
    });
    const solved = solveLongLine(line);
    if (!solved.ok) throw new Error(solved.why);
    const { liftAreaM2, dragAreaM2 } = DIVER;
    const share = liftAreaM2 / Math.hypot(liftAreaM2, dragAreaM2);
    expectNear("depth", solved.joint.depthM, 100 * FOOT_M * share, 0.05);
  });

  test("beyond what the rig holds, more line is backing and hangs higher than core would", () => {
    const backed = longLine(LEAD, 200, 2, { mainAtMostM: 150 * FOOT_M, backing: lineInUse("braid", 0.3) });
    const { mainM, backingM } = lineInWaterM(backed);
    expectNear("core", mainM, 150 * FOOT_M, 1e-9);
    expectNear("backing", backingM, 50 * FOOT_M, 1e-9);
    expect(lureFt(backed)).toBeGreaterThan(lureFt(longLine(LEAD, 150, 2)));
    expect(lureFt(backed)).toBeLessThan(lureFt(longLine(LEAD, 200, 2)));
  });

  test("a flasher on the leader lifts a line, a lure that dives takes it down", () => {
    const [piece] = longLine(LEAD, 150, 2).below;
    if (piece === undefined) throw new Error("no leader");
    const flasher = { weightN: 0, liftAreaM2: 0, dragAreaM2: 6e-3 };
    const now = lureFt(longLine(LEAD, 150, 2));
    expect(lureFt(longLine(LEAD, 150, 2, { below: [{ ...piece, end: flasher }, piece] }))).toBeLessThan(now);
    expect(lureFt(longLine(LEAD, 150, 2, { lure: lureForces("plug") }))).toBeGreaterThan(now);
  });
});

test.each(LINES)("a second integrator puts %s at the same depth", (_name, line) => {
  const { flow } = line;
  if (flow.type !== "uniform") throw new Error("uniform only");
  const towed = towedLineOf(line, WATER);
  let state: Climb = [0, 0, 0, 0];
  for (let node = towed.segments.length; node > 0; node--) {
    for (const body of towed.bodies) if (body.node === node) state = withBody(state, body, flow.speedMS);
    const segment = towed.segments[node - 1];
    if (segment !== undefined && segment.lengthM > 0)
      state = climbBySecondIntegrator(state, segment, flow.speedMS);
  }
  const solved = solveLongLine(line);
  if (!solved.ok) throw new Error(solved.why);
  // The water differs in its last digits: 999.70 kg/m3 and 1.3075e-6 m2/s at 10 C.
  expectNear("depth", solved.lure.depthM, -state[1], 2e-3);
  expectNear("behind", solved.lure.behindM, -state[0], 2e-3);
});

test("an in-line weight of lead weighs what it weighs under water", () => {
  const heavy = longLine(MONO, 100, 2, {
    joint: { weightN: 0.1 * GRAVITY_M_S2, dragAreaM2: 3e-4, liftAreaM2: 0 },
  });
  expect(lureFt(heavy)).toBeGreaterThan(lureFt(longLine(MONO, 100, 2)));
});

describe("refused, with a plain reason", () => {
  test.each([
    ["no speed", { flow: uniformFlow(0) }, /hardly moves/u],
    ["a speed astern", { flow: uniformFlow(-1) }, /the speed is -1 m\/s/u],
    ["a speed that is none", { flow: uniformFlow(Number.NaN) }, /the speed is not a number/u],
    ["nothing out", { outM: 0 }, /no line is out/u],
    ["an infinite length", { outM: Number.POSITIVE_INFINITY }, /the line out is not a number/u],
    ["an absurd length", { outM: 1e5 }, /the line out is 100000 m/u],
    ["a negative length", { outM: -3 }, /the line out is -3 m/u],
    ["more than it holds, and no backing", { mainAtMostM: 10 }, /more is out than the rig holds/u],
    ["a line as thick as an arm", { main: { ...LEAD, make: { ...LEAD.make, diameterM: 0.1 } } }, /diameter/u],
    [
      "a lure of lead bricks",
      { lure: { weightN: 1e4, dragAreaM2: 0, liftAreaM2: 0 } },
      /weight of the lure/u,
    ],
    ["boiling water", { waterTemperatureC: 99 }, /the water temperature/u],
  ])("%s", (_name, change, why) => {
    const answer = solveLongLine({ ...longLine(LEAD, 150, 2), ...change });
    expect(answer.ok).toBe(false);
    if (!answer.ok) expect(answer.why).toMatch(why);
  });
});

test("a lure that floats is at the surface, and the answer says so", () => {
  const solved = solveLongLine(
    longLine(MONO, 100, 1, { below: [], lure: { weightN: -0.5, dragAreaM2: 1e-3, liftAreaM2: 0 } }),
  );
  if (!solved.ok) throw new Error(solved.why);
  expect(solved.surfaced).toBe(true);
});

test("in strong shear all the shapes of a weighted line are told, and how shaky the depth is", () => {
  const inLayer = (midM: number) =>
    solveLongLine(
      longLine(lineInUse("mono", 0.5), 197, 3, {
        below: [],
        lure: { weightN: 0.01, dragAreaM2: 1e-4, liftAreaM2: 0 },
        joint: { weightN: 3, liftAreaM2: 0, dragAreaM2: 0.002 },
        flow: { type: "piecewise", depthsM: [midM - 1, midM + 1], speedsMS: [1.5, 0.1] },
      }),
    );
  const several = inLayer(12);
  if (!several.ok) throw new Error(several.why);
  expect(several.otherDepthsM).toHaveLength(2);
  expect(Math.max(...several.otherDepthsM)).toBeLessThan(several.joint.depthM);
  expect(several.conditioning).toBeGreaterThan(3);
  const one = inLayer(30);
  expect(one.ok && one.otherDepthsM).toEqual([]);
});
