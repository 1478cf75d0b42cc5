/** A towed line with a known answer, in SI units, before it is handed to one solver or another. */
export interface SolverCase {
  name: string;
  /** Segments from the top down. */
  segments: readonly CaseSegment[];
  /** What hangs on the lower end: weight in the water (N) and drag area (m2). */
  endWeightN: number;
  endDragAreaM2: number;
  /** Speed of the water at the surface and at the given depth, m/s, linear between. */
  speedMS: number;
  speedBelowMS: number;
  belowM: number;
  /** Depth of the lower end, m. */
  depthM: number;
  /** Our goal, µs a solve. */
  goalUs: number;
}

/** A stretch of one kind of line. */
export interface CaseSegment {
  lengthM: number;
  diameterM: number;
  weightNPerM: number;
}

export const normalCoefficient = 1.2;
export const tangentialCoefficient = 0.01;
export const water = { densityKgM3: 999.7, kinematicViscosityM2S: 1.307e-6 } as const;

const cable = { lengthM: 45.72, diameterM: 0.0009, weightNPerM: 0.0335945346357 };

/**
 * Three of the independent reference cases of tests/reference/towed-line-cases.json, by their names there:
 * uni-steel-L45.72-U1.1176-B5.44, lead-5-U0.894-b15 and shear-lin-1.
 */
export const solverCases: readonly SolverCase[] = [
  {
    name: "one uniform cable with its ball",
    segments: [cable],
    endWeightN: 48.645162636,
    endDragAreaM2: 0.00348213727265,
    speedMS: 1.1176,
    speedBelowMS: 1.1176,
    belowM: 45,
    depthM: 42.7040111807,
    goalUs: 5,
  },
  {
    name: "leadcore in three segments",
    segments: [
      { lengthM: 15, diameterM: 0.0004, weightNPerM: 0.000172897299735 },
      { lengthM: 45.72, diameterM: 0.00085, weightNPerM: 0.0172387647742 },
      { lengthM: 9.144, diameterM: 0.00036, weightNPerM: 0.000778891860414 },
    ],
    endWeightN: 0.1,
    endDragAreaM2: 0.0004,
    speedMS: 0.894,
    speedBelowMS: 0.894,
    belowM: 45,
    depthM: 13.5562025614,
    goalUs: 30,
  },
  {
    name: "the cable in linear shear",
    segments: [cable],
    endWeightN: 48.645162636,
    endDragAreaM2: 0.00348213727265,
    speedMS: 1.4,
    speedBelowMS: 0.8,
    belowM: 45,
    depthM: 43.4620054981,
    goalUs: 50,
  },
];

/** Whether the speed is the same at every depth. */
export function isUniform(one: SolverCase): boolean {
  return one.speedMS === one.speedBelowMS;
}

/** Length of the whole line, m; accuracies are relative to it. */
export function lengthOf(one: SolverCase): number {
  return one.segments.reduce((sum, segment) => sum + segment.lengthM, 0);
}
