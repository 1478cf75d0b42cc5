import { type Course, type Stream, streamAt } from "./course.ts";
import { normalDragCoefficient, sphereDragAreaM2 } from "./drag.ts";
import type { LineSegment, PointBody, TowedLine } from "./towed-line.ts";
import type { Water } from "./water.ts";

/** A point of a climb: where it is, m (astern, to starboard, down), and the pull of all below it, N. */
export interface CurveState {
  xM: number;
  yM: number;
  zM: number;
  forceXN: number;
  forceYN: number;
  forceZN: number;
}

/** A line is drawn in this many pieces, more where it bends near its end. */
const PIECES = 24;
/** The shortest step, as a share of the line. */
const SHORTEST = 1 / 600;
/** The longest step, in lengths over which the line near a light end turns into the stream. */
const STEP_TURNS = 0.6;

const stream: Stream = { behindMS: 0, acrossMS: 0 };

/**
 * Climbs a line in three dimensions from its lower end at `start` (whose forces are set to none), and answers its points
 * from the lower end up; `undefined` where it goes slack. It draws lines to a few centimeters, for the distances
 * between them; depths come from the solver in one plane, which it agrees with going straight (a test compares).
 * Fourth-order Runge-Kutta, upward for the same reason as there.
 */
export function climbCurve(
  start: { readonly xM: number; readonly yM: number; readonly zM: number },
  line: TowedLine,
  water: Water,
  course: Course,
): CurveState[] | undefined {
  const state: CurveState = { ...start, forceXN: 0, forceYN: 0, forceZN: 0 };
  const lengthM = line.segments.reduce((sum, segment) => sum + segment.lengthM, 0);
  const points = [{ ...state }];
  for (let node = line.segments.length; node > 0; node--) {
    for (const body of line.bodies) if (body.node === node) addBody(state, body, water, course);
    const segment = line.segments[node - 1];
    if (segment === undefined || segment.lengthM === 0) continue;
    if (!climbSegment(state, segment, lengthM, water, course, points)) return undefined;
  }
  return points;
}

/** What hangs on a node pulls along the stream and down. */
function addBody(state: CurveState, body: PointBody, water: Water, course: Course): void {
  streamAt(stream, course, state.xM, state.yM, state.zM);
  const { behindMS, acrossMS } = stream;
  const speedMS = Math.hypot(behindMS, acrossMS);
  if (speedMS === 0) return;
  const { sphere } = body;
  const sphereM2 =
    sphere === undefined
      ? 0
      : sphereDragAreaM2(sphere.diameterM, speedMS, water.kinematicViscosityM2S, sphere.multiplier);
  const pressurePa = 0.5 * water.densityKgM3 * speedMS * speedMS;
  const alongN = body.forceXN + pressurePa * (body.dragAreaM2 + sphereM2);
  state.forceXN += (alongN * behindMS) / speedMS;
  state.forceYN += (alongN * acrossMS) / speedMS;
  state.forceZN += body.weightN + pressurePa * body.liftAreaM2;
}

function climbSegment(
  state: CurveState,
  segment: LineSegment,
  wholeM: number,
  water: Water,
  course: Course,
  points: CurveState[],
): boolean {
  const longestM = wholeM / PIECES;
  let leftM = segment.lengthM;
  let sinceM = 0;
  while (leftM > 0) {
    const stepM = Math.min(
      leftM,
      longestM,
      Math.max(turnM(state, segment, water, course), wholeM * SHORTEST),
    );
    if (!step(state, segment, stepM, water, course)) return false;
    leftM = stepM === leftM ? 0 : leftM - stepM;
    sinceM += stepM;
    if (leftM > 0 && sinceM < 0.5 * longestM) continue;
    points.push({ ...state });
    sinceM = 0;
  }
  return true;
}

/** How long a step may be where the pull is small against the water's push. */
function turnM(
  state: CurveState,
  { diameterM, weightNPerM }: LineSegment,
  water: Water,
  course: Course,
): number {
  streamAt(stream, course, state.xM, state.yM, state.zM);
  const square = stream.behindMS * stream.behindMS + stream.acrossMS * stream.acrossMS;
  const loadNPerM = water.densityKgM3 * diameterM * square + Math.abs(weightNPerM);
  const pullN = Math.hypot(state.forceXN, state.forceYN, state.forceZN);
  return loadNPerM === 0 ? Number.POSITIVE_INFINITY : (STEP_TURNS * pullN) / loadNPerM;
}

/** Changes of place and pull for each m of line, going up. */
type Rate = [number, number, number, number, number, number];

const rates: readonly [Rate, Rate, Rate, Rate] = [
  [0, 0, 0, 0, 0, 0],
  [0, 0, 0, 0, 0, 0],
  [0, 0, 0, 0, 0, 0],
  [0, 0, 0, 0, 0, 0],
];
const trial: CurveState = { xM: 0, yM: 0, zM: 0, forceXN: 0, forceYN: 0, forceZN: 0 };

function step(state: CurveState, segment: LineSegment, stepM: number, water: Water, course: Course): boolean {
  const [first, second, third, fourth] = rates;
  if (!rateAt(first, state, segment, water, course)) return false;
  moved(trial, state, first, 0.5 * stepM);
  if (!rateAt(second, trial, segment, water, course)) return false;
  moved(trial, state, second, 0.5 * stepM);
  if (!rateAt(third, trial, segment, water, course)) return false;
  moved(trial, state, third, stepM);
  if (!rateAt(fourth, trial, segment, water, course)) return false;
  for (let i = 0; i < 6; i++)
    first[i] = ((first[i] ?? 0) + 2 * (second[i] ?? 0) + 2 * (third[i] ?? 0) + (fourth[i] ?? 0)) / 6;
  moved(state, state, first, stepM);
  return true;
}

function moved(into: CurveState, from: CurveState, rate: Rate, byM: number): void {
  into.xM = from.xM + byM * rate[0];
  into.yM = from.yM + byM * rate[1];
  into.zM = from.zM + byM * rate[2];
  into.forceXN = from.forceXN + byM * rate[3];
  into.forceYN = from.forceYN + byM * rate[4];
  into.forceZN = from.forceZN + byM * rate[5];
}

/** The line points along its pull; the water pushes across it, rubs along it, and it weighs. */
function rateAt(into: Rate, at: CurveState, segment: LineSegment, water: Water, course: Course): boolean {
  const pullN = Math.sqrt(at.forceXN ** 2 + at.forceYN ** 2 + at.forceZN ** 2);
  if (!(pullN > 0)) return false;
  const tx = at.forceXN / pullN;
  const ty = at.forceYN / pullN;
  const tz = at.forceZN / pullN;
  streamAt(stream, course, at.xM, at.yM, at.zM);
  const alongMS = stream.behindMS * tx + stream.acrossMS * ty;
  const nx = stream.behindMS - alongMS * tx;
  const ny = stream.acrossMS - alongMS * ty;
  const nz = -alongMS * tz;
  const acrossMS = Math.sqrt(nx * nx + ny * ny + nz * nz);
  const { diameterM } = segment;
  const reynolds = (acrossMS * diameterM) / water.kinematicViscosityM2S;
  const dynamic = 0.5 * water.densityKgM3 * diameterM;
  const normal = dynamic * normalDragCoefficient(segment.normalDrag, reynolds) * acrossMS;
  const along = dynamic * Math.PI * segment.tangentialCoefficient * Math.abs(alongMS) * alongMS;
  into[0] = -tx;
  into[1] = -ty;
  into[2] = -tz;
  into[3] = normal * nx + along * tx;
  into[4] = normal * ny + along * ty;
  into[5] = normal * nz + along * tz + segment.weightNPerM;
  return true;
}
