import { describe } from "vitest";
import { completeDownrigger, defaultRodLine, solveDownrigger } from "../../server/physics/downrigger.ts";
import { journalDrag } from "../../server/physics/drag.ts";
import { uniformFlow } from "../../server/physics/flow-profile.ts";
import { type LineMaterial, lineMake, weightInWaterNPerM } from "../../server/physics/line-materials.ts";
import { lureForces } from "../../server/physics/lure.ts";
import { type LineSegment, solveTowedLine } from "../../server/physics/towed-line.ts";
import { waterAt } from "../../server/physics/water.ts";
import { checkBands } from "./reference-rows.ts";

const PRACTICE = "common practice";
const FOOT_M = 0.3048;
const MPH_MS = 0.44704;
const answered = waterAt(10);
if (!answered.ok) throw new Error(answered.why);
const water = answered;

function segment(
  material: LineMaterial,
  diameterMm: number,
  lengthFt: number,
  multiplier: number,
): LineSegment {
  const make = lineMake(material, diameterMm / 1000);
  if (!make.ok) throw new Error(make.why);
  return {
    lengthM: lengthFt * FOOT_M,
    diameterM: make.diameterM,
    weightNPerM: weightInWaterNPerM(make, water.densityKgM3),
    normalDrag: journalDrag(multiplier),
    tangentialCoefficient: 0.01,
  };
}

interface Cable {
  readonly material: LineMaterial;
  readonly diameterMm: number;
  readonly multiplier: number;
  readonly hasRod: boolean;
}

/** Feet lost by a 12 lb ball on 150 ft of cable at 2.5 mph. */
function lossFt({ material, diameterMm, multiplier, hasRod }: Cable): number {
  const make = lineMake(material, diameterMm / 1000);
  const mono = lineMake("mono", 0.4e-3);
  if (!make.ok || !mono.ok) throw new Error("a line was refused");
  const rod = {
    id: "R",
    releaseAboveBallM: 0,
    setbackM: 20 * FOOT_M,
    lureLine: { make: mono, dragMultiplier: 1.2 },
    lure: lureForces("spoon"),
    rodLine: defaultRodLine(),
  };
  const solved = solveDownrigger(
    completeDownrigger({
      outM: 150 * FOOT_M,
      speedMS: 2.5 * MPH_MS,
      cable: { make, dragMultiplier: multiplier },
      ball: { massKg: 12 * 0.45359237 },
      rods: hasRod ? [rod] : [],
    }),
  );
  if (!solved.ok) throw new Error(solved.why);
  return 150 - solved.ball.depthM / FOOT_M;
}

const steel: Cable = { material: "steel", diameterMm: 0.9, multiplier: 1, hasRod: false };

describe("150 ft of cable and a 12 lb ball at 2.5 mph lose roughly 5 to 15 ft", () => {
  checkBands(
    [
      { name: "0.9 mm steel, smooth", input: steel, low: 5, high: 15, source: PRACTICE },
      {
        name: "0.9 mm steel, default drag",
        input: { ...steel, multiplier: 1.2 },
        low: 5,
        high: 15,
        source: PRACTICE,
      },
      {
        name: "0.6 mm braid, default drag",
        input: { ...steel, material: "braid", diameterMm: 0.6, multiplier: 1.2 },
        low: 5,
        high: 15,
        source: PRACTICE,
      },
      {
        name: "with a rod pulling, more than the rule: 17 to 25 ft",
        input: { ...steel, multiplier: 1.2, hasRod: true },
        low: 17,
        high: 25,
        source: "our model; the rule is for a bare ball",
      },
    ],
    lossFt,
  );
});

/** How many feet deeper a thin cable's ball runs than a thick one's. */
describe("braid and wire of one strength blow back differently: diameter decides", () => {
  checkBands(
    [
      {
        name: "0.5 mm braid against 1.0 mm braid, ft",
        input: ["braid", 0.5, "braid", 1] as const,
        low: 5,
        high: 12,
        source: "common practice; design figures 12.7 and 4.7 ft, run",
      },
      {
        name: "0.8 mm braid against 0.8 mm steel, ft",
        input: ["braid", 0.8, "steel", 0.8] as const,
        low: -1,
        high: 1,
        source: "common practice; design figures 9.3 and 9.0 ft, run",
      },
    ],
    ([thin, thinMm, thick, thickMm]) =>
      lossFt({ ...steel, material: thick, diameterMm: thickMm }) -
      lossFt({ ...steel, material: thin, diameterMm: thinMm }),
  );
});

interface Sunk {
  readonly heavy: LineSegment;
  readonly backingFt: number;
}

/** Depth in feet of a spoon on a heavy line with a 30 ft leader and some backing in the water, at 2 mph. */
function spoonFt({ heavy, backingFt }: Sunk, multiplier: number): number {
  const backing = backingFt === 0 ? [] : [segment("mono", 0.4, backingFt, multiplier)];
  const segments = [...backing, heavy, segment("fluorocarbon", 0.36, 30, multiplier)];
  const bodies = [{ node: segments.length, forceXN: 0, ...lureForces("spoon") }];
  const solved = solveTowedLine({ segments, bodies }, water, uniformFlow(2 * MPH_MS));
  if (!solved.ok) throw new Error(solved.why);
  return solved.depthM / FOOT_M;
}

describe("leadcore sinks about 5 ft for each color near 2 mph", () => {
  checkBands(
    [3, 5, 7, 10].flatMap((colors) =>
      [1, 1.3].map((multiplier) => ({
        name: `${colors} colors, drag x ${multiplier}, ft a color`,
        input: { colors, multiplier },
        low: 4.5,
        high: 9,
        source:
          "common practice; design figures 4.9 to 7.1, the leader's own sinking shared out over few colors",
      })),
    ),
    ({ colors, multiplier }) =>
      spoonFt({ heavy: segment("leadcore", 0.85, 30 * colors, multiplier), backingFt: 0 }, multiplier) /
      colors,
  );
  checkBands(
    [
      {
        name: "backing in the water adds up to 15 ft, which the rule ignores",
        input: 150,
        low: 5,
        high: 15,
        source: "design figure 10 to 13 ft, run",
      },
    ],
    (backingFt) => {
      const heavy = segment("leadcore", 0.85, 150, 1);
      return spoonFt({ heavy, backingFt }, 1) - spoonFt({ heavy, backingFt: 0 }, 1);
    },
  );
});

describe("copper goes about 1 ft down for each 4 to 5 ft out near 2 mph", () => {
  checkBands(
    [
      {
        name: "0.75 mm, ft out for each ft down",
        input: { diameterMm: 0.75, multiplier: 1 },
        low: 3.4,
        high: 5,
        source: PRACTICE,
      },
      {
        name: "0.75 mm, drag x 1.3",
        input: { diameterMm: 0.75, multiplier: 1.3 },
        low: 3.8,
        high: 5,
        source: PRACTICE,
      },
    ],
    ({ diameterMm, multiplier }) =>
      200 / spoonFt({ heavy: segment("copper", diameterMm, 200, multiplier), backingFt: 0 }, multiplier),
  );
});
