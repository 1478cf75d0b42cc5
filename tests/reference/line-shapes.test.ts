import { describe } from "vitest";
import { constantDrag } from "../../server/physics/drag.ts";
import { uniformFlow } from "../../server/physics/flow-profile.ts";
import { type SolvedLine, solveTowedLine } from "../../server/physics/towed-line.ts";
import { checkBands, checkRows } from "./reference-rows.ts";

interface Line {
  readonly lengthM: number;
  readonly weightNPerM: number;
  readonly coefficient: number;
  readonly diameterM: number;
  readonly speedMS: number;
  readonly endWeightN: number;
  readonly endDragAreaM2: number;
  readonly endForceXN: number;
  readonly densityKgM3: number;
}

const RESTING: Line = {
  lengthM: 1,
  weightNPerM: 0,
  coefficient: 0,
  diameterM: 0.001,
  speedMS: 0,
  endWeightN: 0,
  endDragAreaM2: 0,
  endForceXN: 0,
  densityKgM3: 1000,
};

function solved(line: Line): SolvedLine {
  const answer = solveTowedLine(
    {
      segments: [
        {
          lengthM: line.lengthM,
          diameterM: line.diameterM,
          weightNPerM: line.weightNPerM,
          normalDrag: constantDrag(line.coefficient),
          tangentialCoefficient: 0,
        },
      ],
      bodies: [
        {
          node: 1,
          weightN: line.endWeightN,
          dragAreaM2: line.endDragAreaM2,
          liftAreaM2: 0,
          forceXN: line.endForceXN,
        },
      ],
    },
    { densityKgM3: line.densityKgM3, kinematicViscosityM2S: 1.3e-6 },
    uniformFlow(line.speedMS),
  );
  if (!answer.ok) throw new Error(answer.why);
  return answer;
}

/** R, drag across the line at right angles, is 1/2 rho Cd d U2: with 1000, 1 mm and 1 m/s, half the coefficient. */
const weightless: Line = { ...RESTING, lengthM: 50, coefficient: 4, speedMS: 1, endWeightN: 100 };
const CLOSED =
  "closed form, classical theory (Pode 1951, Berteaux 1976: titles memory); checked with SciPy, run";

describe("a weightless line with no drag along it: T 100 N, R 2 N/m, 50 m", () => {
  checkRows(
    [{ name: "depth, m", input: weightless, expected: 44.06867935098, tolerance: 5e-7, source: CLOSED }],
    (l) => solved(l).depthM,
  );
  checkRows(
    [{ name: "behind, m", input: weightless, expected: 20.71067811865, tolerance: 5e-7, source: CLOSED }],
    (l) => solved(l).behindM,
  );
  checkRows(
    [{ name: "angle, deg", input: weightless, expected: 45, tolerance: 1e-6, source: CLOSED }],
    (l) => solved(l).topAngleDeg,
  );
});

const heavy: Line = { ...RESTING, lengthM: 60, weightNPerM: 0.5, endWeightN: 50, endForceXN: 20 };

describe("a heavy line in still water pulled aside: H 20 N, V 50 N, w 0.5 N/m, 60 m", () => {
  checkRows(
    [{ name: "depth, m", input: heavy, expected: 57.22092888202, tolerance: 6e-7, source: CLOSED }],
    (l) => solved(l).depthM,
  );
  checkRows(
    [{ name: "behind, m", input: heavy, expected: 17.8992560356, tolerance: 6e-7, source: CLOSED }],
    (l) => solved(l).behindM,
  );
  checkRows(
    [{ name: "tension, N", input: heavy, expected: 82.46211251235, tolerance: 1e-6, source: CLOSED }],
    (l) => solved(l).topTensionN,
  );
});

describe("the critical angle of a free line, degrees from the horizontal", () => {
  checkRows(
    [
      [1, 51.82729237],
      [1 / 4, 28.02017612],
      [1 / 20, 12.75775213],
    ].map(([ratio = 0, expected = 0]) => ({
      name: `w/R = ${ratio}`,
      input: { ...RESTING, lengthM: 30, coefficient: 2, speedMS: 1, weightNPerM: ratio },
      expected,
      tolerance: 1e-6,
      source: CLOSED,
    })),
    (line) => 90 - solved(line).topAngleDeg,
  );
});

/** A sphere of 0.10 m, 4.5 kg, Cd 0.47, on a weightless 0.5 mm line with Cd 1.2 at 1.2 m/s. */
const sphere: Line = {
  ...RESTING,
  diameterM: 0.0005,
  coefficient: 1.2,
  speedMS: 1.2,
  endWeightN: 38.99517507,
  endForceXN: 2.65778738,
};

describe("a towed sphere", () => {
  const at = (lengthM: number) => ({ ...sphere, lengthM });
  checkRows(
    [
      { name: "30 m: depth, m", input: at(30), expected: 29.10490463, tolerance: 3e-7, source: CLOSED },
      { name: "60 m: depth, m", input: at(60), expected: 55.19297146, tolerance: 6e-7, source: CLOSED },
    ],
    (line) => solved(line).depthM,
  );
  checkRows(
    [
      { name: "30 m: angle, deg", input: at(30), expected: 21.788387, tolerance: 1e-5, source: CLOSED },
      { name: "60 m: angle, deg", input: at(60), expected: 36.178599, tolerance: 1e-5, source: CLOSED },
    ],
    (line) => solved(line).topAngleDeg,
  );
});

/**
 * Catenaries hung between two points, turned into ours: the lower end pulls with the horizontal force H and the
 * vertical force there, and the line's own weight does the rest.
 */
const CATENARY = "a moored catenary, public forum worked example; seen";

describe("catenary worked examples: from one end's forces to the other end's place", () => {
  // x 400, z 200, L 500, w 200: H 43694.580989, V -22365.599350 and -77634.400650 N.
  const first: Line = {
    ...RESTING,
    lengthM: 500,
    weightNPerM: 200,
    endForceXN: 43694.580989,
    endWeightN: -22365.59935,
  };
  checkRows(
    [{ name: "x 400 m", input: first, expected: 400, tolerance: 1e-4, source: CATENARY }],
    (l) => solved(l).behindM,
  );
  checkRows(
    [{ name: "z 200 m", input: first, expected: 200, tolerance: 1e-4, source: CATENARY }],
    (l) => solved(l).depthM,
  );
  checkRows(
    [{ name: "upper force, N", input: first, expected: 77634.40065, tolerance: 1e-3, source: CATENARY }],
    (l) => solved(l).topForceZN,
  );
  // 140 m of 3 kg/m between towers 120 m apart: half of it, from the lowest point, c = H/w = 61.445730 m.
  const half: Line = { ...RESTING, lengthM: 70, weightNPerM: 3 * 9.81, endForceXN: 3 * 9.81 * 61.44573 };
  const COURSE = "Cables: Catenaries, example 1; seen; run";
  checkRows(
    [{ name: "half span, m", input: half, expected: 60, tolerance: 1e-4, source: COURSE }],
    (l) => solved(l).behindM,
  );
  checkRows(
    [{ name: "sag, m", input: half, expected: 31.697051, tolerance: 1e-4, source: COURSE }],
    (l) => solved(l).depthM,
  );
  checkRows(
    [{ name: "largest tension, N", input: half, expected: 2741.19, tolerance: 0.01, source: COURSE }],
    (l) => solved(l).topTensionN,
  );
});

/** A wire with no weight of its own and a heavy body without drag, at an angle from the vertical at the surface. */
function atTopAngle(angleDeg: number): SolvedLine {
  const tan = Math.tan((angleDeg * Math.PI) / 180);
  return solved({ ...RESTING, lengthM: 10, coefficient: 2, speedMS: 1, endWeightN: 10 / tan });
}

/**
 * Loss in percent of length when the drag on each foot of depth stays that of an upright wire: an upper bound,
 * since a leaning wire feels less.
 */
function lossBound(angleDeg: number): number {
  const angle = (angleDeg * Math.PI) / 180;
  const tan = Math.tan(angle);
  return 100 * (1 - 2 / (1 / Math.cos(angle) + Math.asinh(tan) / tan));
}

describe("depth from a wire's angle at the surface", () => {
  checkBands(
    [
      [4, 0.06],
      [10, 0.5],
      [16, 1.28],
      [20, 2.04],
      [24, 2.96],
      [30, 4.72],
      [36, 6.98],
    ].map(([angle = 0, percent = 0]) => ({
      name: `${angle} degrees, loss in percent: between the table and the bound`,
      input: angle,
      low: percent,
      high: lossBound(angle),
      source: "wet-line table, Rantz 1982 (USGS WSP 2175), Corbett 1943, ISO 748; memory",
    })),
    (angle) => 100 * (1 - atTopAngle(angle).depthM / 10),
  );
  // Practice takes the wire as straight; a bowed wire with the same angle at the top lies deeper than that.
  checkBands(
    [
      {
        name: "300 m at 45 degrees fishes about 210 m or more",
        input: { out: 300, angle: 45 },
        low: 210,
        high: 300,
        source: "CalCOFI bongo tow, NOAA SWFSC; seen",
      },
      {
        name: "70 m at 15 degrees or less reaches 67.6 m",
        input: { out: 70, angle: 15 },
        low: 67.6,
        high: 70,
        source: "CalCOFI vertical tow, NOAA SWFSC; limit seen, product arithmetic",
      },
    ],
    ({ out, angle }) => (out / 10) * atTopAngle(angle).depthM,
  );
});
