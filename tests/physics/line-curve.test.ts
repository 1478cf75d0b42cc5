import { describe, expect, test } from "vitest";
import type { Course } from "../../server/physics/course.ts";
import { streamAt } from "../../server/physics/course.ts";
import type { Curve } from "../../server/physics/curve.ts";
import { solveDownrigger } from "../../server/physics/downrigger.ts";
import { constantDrag } from "../../server/physics/drag.ts";
import { type FlowProfile, uniformFlow } from "../../server/physics/flow-profile.ts";
import { lineCurve } from "../../server/physics/line-curve.ts";
import { type LongLine, solveLongLine } from "../../server/physics/long-line.ts";
import { downriggerCurves, longLineCurves } from "../../server/physics/rig-curves.ts";
import type { TowedLine } from "../../server/physics/towed-line.ts";
import { waterAt } from "../../server/physics/water.ts";
import { DIVER, lineInUse, longLine } from "./long-line-maker.ts";
import { MPH_MS, make, rig, rod } from "./rig-maker.ts";

const TOP = { behindM: 0, acrossM: 0, depthM: 0 };
const RADIUS_M = 60;

function freshWater() {
  const water = waterAt(10, 0);
  if (!water.ok) throw new Error(water.why);
  return water;
}

function lastOf(curve: Curve | undefined) {
  const last = curve?.at(-1);
  if (last === undefined) throw new Error("no curve");
  return last;
}

/** A line without weight, its drag across it and at its end only. */
function bareLine(lengthM: number, normal: number, endAreaM2: number): TowedLine {
  const segment = {
    lengthM,
    diameterM: 1e-3,
    weightNPerM: 0,
    normalDrag: constantDrag(normal),
    tangentialCoefficient: 0,
  };
  const body = { node: 1, weightN: 0, dragAreaM2: endAreaM2, liftAreaM2: 0, forceXN: 0 };
  return { segments: [segment], bodies: [body] };
}

const SHEARED: FlowProfile = { type: "piecewise", depthsM: [0, 10, 15], speedsMS: [1.2, 1.2, 0.9] };

describe("towed straight, as the solver in one plane has it", () => {
  test.each([uniformFlow(2.4 * MPH_MS), SHEARED])("a downrigger with two rods: %#", (flow) => {
    const downrigger = rig(90, 2.4, [rod("C1", 0, 20), rod("C1U", 20, 60)], { flow });
    const solved = solveDownrigger(downrigger);
    const parts = downriggerCurves(downrigger, undefined, TOP);
    if (!solved.ok || parts === undefined) throw new Error("not solved");
    const ends = parts.map(({ kind, rod: id, curve }) => ({ kind, id, ...lastOf(curve) }));
    expect(ends[0]?.depthM).toBeCloseTo(solved.ball.depthM, 1);
    expect(ends[0]?.behindM).toBeCloseTo(solved.ball.behindM, 1);
    for (const { id, lure, release } of solved.rods) {
      const drawn = ends.find((end) => end.id === id && end.kind === "lure line");
      expect(Math.abs((drawn?.depthM ?? 0) - lure.depthM)).toBeLessThan(0.05);
      expect(Math.abs((drawn?.behindM ?? 0) - lure.behindM)).toBeLessThan(0.05);
      const held = ends.find((end) => end.id === id && end.kind === "rod line");
      expect(Math.abs((held?.depthM ?? 0) - release.depthM)).toBeLessThan(0.05);
    }
    expect(parts.every((part) => part.curve.every((point) => point.acrossM === 0))).toBe(true);
  });

  test("a rod's line starts at its tip and is bowed astern", () => {
    const parts = downriggerCurves(rig(90, 2.4, [rod("C1", 0, 20)]), undefined, TOP);
    const line = parts?.find((part) => part.kind === "rod line")?.curve ?? [];
    expect(line[0]).toEqual({ behindM: 0, acrossM: 0, depthM: -2 });
    const end = lastOf(line);
    const half = line.find((point) => point.depthM > 0.5 * end.depthM);
    expect(half?.behindM).toBeGreaterThan(0.5 * end.behindM);
  });

  test.each<[string, LongLine]>([
    ["leadcore", longLine(lineInUse("leadcore", 0.85), 150, 2.4)],
    ["copper", longLine(lineInUse("copper", 0.95), 200, 2.4)],
    ["a flat line", longLine(lineInUse("mono", 0.36), 140, 2.4, { below: [] })],
    ["a diver in shear", longLine(lineInUse("steel", 0.53), 140, 2.4, { joint: DIVER, flow: SHEARED })],
  ])("%s", (_, line) => {
    const solved = solveLongLine(line);
    const end = lastOf(longLineCurves(line, undefined, TOP)?.[0]?.curve);
    if (!solved.ok) throw new Error(solved.why);
    expect(Math.abs(end.depthM - solved.lure.depthM)).toBeLessThan(0.05);
    expect(Math.abs(end.behindM - solved.lure.behindM)).toBeLessThan(0.05);
  });
});

describe("in a steady turn", () => {
  const course: Course = { flow: uniformFlow(1), turnRadiusM: RADIUS_M };

  test("the water runs slower inside and comes round with the circle", () => {
    const stream = { behindMS: 0, acrossMS: 0 };
    streamAt(stream, course, 0, 6, 0);
    expect(stream).toEqual({ behindMS: 0.9, acrossMS: 0 });
    streamAt(stream, { ...course, turnRadiusM: -RADIUS_M }, 6, 6, 0);
    expect(stream).toEqual({ behindMS: 1.1, acrossMS: -0.1 });
  });

  // A body on a line that the water doesn't push: its line is a tangent to its own circle.
  test.each([5, 20, 40])("a dragless line of %d m points along its end's circle", (lengthM) => {
    const line = bareLine(lengthM, 0, 1e-3);
    const end = lastOf(lineCurve(line, freshWater(), course, TOP, { behindM: lengthM, dropM: 0 }));
    const radiusM = Math.hypot(end.behindM, RADIUS_M - end.acrossM);
    expect(radiusM).toBeCloseTo(Math.sqrt(RADIUS_M ** 2 - lengthM ** 2), 1);
    expect(Math.hypot(end.behindM, end.acrossM)).toBeCloseTo(lengthM, 2);
  });

  test("a line that the water holds follows the boat's own path", () => {
    const lengthM = 20;
    const line = bareLine(lengthM, 50, 2e-5);
    const end = lastOf(lineCurve(line, freshWater(), course, TOP, { behindM: lengthM, dropM: 0 }));
    expect(Math.abs(end.behindM - RADIUS_M * Math.sin(lengthM / RADIUS_M))).toBeLessThan(0.2);
    expect(Math.abs(end.acrossM - RADIUS_M * (1 - Math.cos(lengthM / RADIUS_M)))).toBeLessThan(0.7);
  });

  test("a wide turn is no turn, and port is the mirror of starboard", () => {
    const downrigger = rig(90, 2.4, [rod("C1", 0, 20)]);
    const ends = (radiusM: number | undefined) =>
      downriggerCurves(downrigger, radiusM, TOP)?.map((part) => lastOf(part.curve)) ?? [];
    const [straight, wide] = [ends(undefined), ends(1e5)];
    straight.forEach((end, i) => {
      expect(Math.abs(end.depthM - (wide[i]?.depthM ?? 0))).toBeLessThan(0.03);
      expect(Math.abs(wide[i]?.acrossM ?? 0)).toBeLessThan(0.05);
    });
    const [port, starboard] = [ends(-RADIUS_M), ends(RADIUS_M)];
    port.forEach((end, i) => {
      expect(end.acrossM).toBeCloseTo(-(starboard[i]?.acrossM ?? 0), 6);
      expect(end.depthM).toBeCloseTo(starboard[i]?.depthM ?? 0, 6);
    });
  });

  test("inside a line hangs deeper, outside higher", () => {
    const line = longLine({ make: make("leadcore", 0.85), dragMultiplier: 1.2 }, 90, 2.4);
    const depthM = (acrossM: number) =>
      lastOf(longLineCurves(line, 100, { ...TOP, acrossM })?.[0]?.curve).depthM;
    expect(depthM(20)).toBeGreaterThan(depthM(0));
    expect(depthM(0)).toBeGreaterThan(depthM(-20));
  });

  test("a line nearly as long as the turn is tight has no steady place", () => {
    expect(longLineCurves(longLine(lineInUse("copper", 0.95), 300, 2.4), RADIUS_M, TOP)).toBeUndefined();
  });

  test("stands where its tow point is", () => {
    const top = { behindM: 0, acrossM: -2.7, depthM: 0 };
    const parts = downriggerCurves(rig(90, 2.4), RADIUS_M, top);
    const first = parts?.[0]?.curve[0];
    expect(Math.abs((first?.acrossM ?? 0) + 2.7)).toBeLessThan(0.03);
  });
});
