import { describe } from "vitest";
import { type Line, RESTING, solved } from "./bare-line.ts";
import { checkRows } from "./reference-rows.ts";

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
  // x 89.9, z 59.2, L 130, w 881.05: H 31373.229006, V -26650.341270 and -87886.158730 N, stretching by EA 7.51e8 N.
  const second: Line = {
    ...RESTING,
    lengthM: 130,
    weightNPerM: 881.05,
    endForceXN: 31373.229006,
    endWeightN: -26650.34127,
  };
  const STRETCHED = `${CATENARY}; its line stretches by 1e-4 at most, 0.01 m, ours not at all`;
  checkRows(
    [{ name: "x 89.9 m", input: second, expected: 89.9, tolerance: 0.01, source: STRETCHED }],
    (l) => solved(l).behindM,
  );
  checkRows(
    [{ name: "z 59.2 m", input: second, expected: 59.2, tolerance: 0.01, source: STRETCHED }],
    (l) => solved(l).depthM,
  );
  checkRows(
    [{ name: "upper force, N", input: second, expected: 87886.15873, tolerance: 1e-3, source: STRETCHED }],
    (l) => solved(l).topForceZN,
  );
  // Through (0, 0) and (10, 6) from the lowest point, C = H/w = 9.18894140 m; w is 1 N/m.
  const LOW_M = 9.1889414;
  const forum: Line = {
    ...RESTING,
    lengthM: LOW_M * Math.sinh(10 / LOW_M),
    weightNPerM: 1,
    endForceXN: LOW_M,
  };
  const FORUM = "6 = C cosh(10/C) - C, public mathematics forum; seen; run";
  checkRows(
    [{ name: "half span, m", input: forum, expected: 10, tolerance: 1e-6, source: FORUM }],
    (l) => solved(l).behindM,
  );
  checkRows(
    [{ name: "sag, m", input: forum, expected: 6, tolerance: 1e-6, source: FORUM }],
    (l) => solved(l).depthM,
  );
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
