/** How exactly the journal's depths are solved, and what that takes: held against the same solved far closer. */
import { execFileSync } from "node:child_process";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { solveDownrigger } from "../../server/physics/downrigger.ts";
import { journalDrag } from "../../server/physics/drag.ts";
import { JOURNAL } from "../../server/physics/exactness.ts";
import { uniformFlow } from "../../server/physics/flow-profile.ts";
import { type LineMaterial, weightInWaterNPerM } from "../../server/physics/line-materials.ts";
import { solveSettled } from "../../server/physics/settled-downrigger.ts";
import { solveTowedLine, type TowedLine, totalLengthM } from "../../server/physics/towed-line.ts";
import { gentleFlow } from "./flow-maker.ts";
import { expectNear, WATER } from "./line-maker.ts";
import { make, rig, rod } from "./rig-maker.ts";

const SEED = 20310621;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const stream = fc.oneof(between(0.7, 1.6).map(uniformFlow), gentleFlow);

function segment(material: LineMaterial, diameterMm: number, lengthM: number) {
  return {
    lengthM,
    diameterM: diameterMm / 1000,
    weightNPerM: weightInWaterNPerM(make(material, diameterMm), WATER.densityKgM3),
    normalDrag: journalDrag(1.2),
    tangentialCoefficient: 0.01,
  };
}

const spoon = (node: number) => ({ node, weightN: 0.1, dragAreaM2: 4e-4, liftAreaM2: 0, forceXN: 0 });
const ball = { node: 1, weightN: 48, dragAreaM2: 3.5e-3, liftAreaM2: 0, forceXN: 0 };

const LINES: readonly [string, number, (lengthM: number) => TowedLine][] = [
  ["a cable with its ball", 1e-5, (m) => ({ segments: [segment("steel", 0.9, m)], bodies: [ball] })],
  [
    "leadcore on its backing",
    2e-5,
    (m) => ({ segments: [segment("leadcore", 0.85, m), segment("mono", 0.36, 9)], bodies: [spoon(2)] }),
  ],
  [
    "a lure behind its release",
    5e-5,
    (m) => ({ segments: [segment("mono", 0.4, 0.15 * m)], bodies: [spoon(1)] }),
  ],
];

describe("at the journal's tolerance a depth is within, of the line's length,", () => {
  test.each(LINES)("%s: %d", (_name, share, lineOf) => {
    fc.assert(
      fc.property(between(10, 120), stream, (lengthM, flow) => {
        const line = lineOf(lengthM);
        const [shown, exact] = [JOURNAL.tolerance, 1e-10].map((tolerance) =>
          solveTowedLine(line, WATER, flow, { xM: 0, zM: 0 }, tolerance),
        );
        if (!shown?.ok || !exact?.ok) throw new Error("no answer");
        const allowedM = share * totalLengthM(line.segments) * Math.max(1, exact.conditioning ?? 1);
        expectNear("depth", shown.depthM, exact.depthM, allowedM);
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  test("everything on a downrigger, rods pulling: 2e-5 of the cable", () => {
    const rods = [rod("P1", 0, 20), rod("P1U", 20, 25, "plug")];
    fc.assert(
      fc.property(between(60, 250), stream, (outFt, flow) => {
        const one = rig(outFt, 2, rods, { flow, probeAboveBallM: 0.4 });
        const shown = solveSettled(one);
        const exact = solveSettled(one, undefined, { tolerance: 1e-9, share: 1e-8 });
        if (!shown.ok || !exact.ok) throw new Error("no answer");
        const allowedM = 2e-5 * one.outM * Math.max(1, exact.answer.conditioning ?? 1);
        expectNear("ball", shown.answer.ball.depthM, exact.answer.ball.depthM, allowedM);
        for (const [i, { lure }] of exact.answer.rods.entries())
          expectNear("lure", shown.answer.rods[i]?.lure.depthM ?? Number.NaN, lure.depthM, 2 * allowedM);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });
});

describe("what a rig takes to solve", () => {
  test.each([
    // rods, rounds at most on any of many rigs
    [0, 6],
    [1, 7],
    [2, 11],
    [3, 15],
  ])("%d rods settle in %d rounds", (count, most) => {
    const rods = [rod("A", 0, 20), rod("B", 20, 25, "plug"), rod("C", 40, 10)].slice(0, count);
    fc.assert(
      fc.property(between(60, 250), stream, (outFt, flow) => {
        const solved = solveSettled(rig(outFt, 2, rods, { flow }));
        if (!solved.ok) throw new Error(solved.why);
        expect(solved.settled.rounds).toBeGreaterThan(0);
        expect(solved.settled.rounds).toBeLessThanOrEqual(most);
      }),
      { seed: SEED, numRuns: 80 },
    );
  });

  test("the same rig hangs the same whatever was solved before it", () => {
    const one = rig(150, 2.5, [rod("P1", 0, 20)]);
    const alone = solveDownrigger(one);
    solveDownrigger(rig(90, 2, [rod("A", 0, 20), rod("B", 20, 25), rod("C", 40, 10)]));
    expect(solveDownrigger(one)).toEqual(alone);
  });

  test("a step of the climb puts nothing on the heap", () => {
    const script = new URL("./heap-of-a-climb.ts", import.meta.url);
    const flags = [
      "--expose-gc",
      "--max-semi-space-size=64",
      "--min-semi-space-size=64",
      "--disable-warning=ExperimentalWarning",
    ];
    const printed = execFileSync(process.execPath, [...flags, script.pathname], { encoding: "utf8" });
    const [loose, close, moreSteps] = printed.trim().split(" ").map(Number);
    expect(moreSteps).toBeGreaterThan(10);
    // One number on the heap takes 16 bytes; a step of 18 sums would have put many there.
    expect(((close ?? Number.NaN) - (loose ?? Number.NaN)) / (moreSteps ?? 1)).toBeLessThan(16);
  });
});
