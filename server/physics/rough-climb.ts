import { type Course, type Stream, streamAt } from "./course.ts";
import type { CurvePoint } from "./curve.ts";
import { normalDragCoefficient, sphereDragAreaM2 } from "./drag.ts";
import type { LineSegment, TowedLine } from "./towed-line.ts";
import type { Water } from "./water.ts";

/** A line climbed roughly: its points from the upper end down, and what pulls on it there, N: astern, to starboard, down. */
export interface RoughLine {
  readonly points: readonly CurvePoint[];
  readonly forceXN: number;
  readonly forceYN: number;
  readonly forceZN: number;
}

/** Steps: this share of the line at most, this at least, and between them as long as the line takes to turn so far. */
const LONGEST = 1 / 6;
const SHORTEST = 1 / 60;
const STEP_TURNS = 0.5;

const stream: Stream = { behindMS: 0, acrossMS: 0 };
/** What the water does to a meter of line. */
const push = { x: 0, y: 0, z: 0 };

/**
 * Climbs a line as `climbCurve` does, in few steps of second order. A single segment may end at a depth above
 * which it isn't followed. Undefined where it goes slack.
 */
export function roughClimb(
  start: CurvePoint,
  line: TowedLine,
  water: Water,
  course: Course,
  leastDepthM = Number.NEGATIVE_INFINITY,
): RoughLine | undefined {
  let { behindM: x, acrossM: y, depthM: z } = start;
  let [fx, fy, fz] = [0, 0, 0];
  let wholeM = 0;
  for (const segment of line.segments) wholeM += segment.lengthM;
  const points: CurvePoint[] = [start];
  for (let node = line.segments.length; node > 0; node--) {
    streamAt(stream, course, x, y, z);
    const speedMS = Math.sqrt(stream.behindMS ** 2 + stream.acrossMS ** 2);
    const pressurePa = 0.5 * water.densityKgM3 * speedMS * speedMS;
    for (const body of line.bodies) {
      if (body.node !== node || speedMS === 0) continue;
      const { sphere } = body;
      const sphereM2 =
        sphere === undefined
          ? 0
          : sphereDragAreaM2(sphere.diameterM, speedMS, water.kinematicViscosityM2S, sphere.multiplier);
      const alongN = (body.forceXN + pressurePa * (body.dragAreaM2 + sphereM2)) / speedMS;
      fx += alongN * stream.behindMS;
      fy += alongN * stream.acrossMS;
      fz += body.weightN + pressurePa * body.liftAreaM2;
    }
    const segment = line.segments[node - 1];
    if (segment === undefined || segment.lengthM === 0) continue;
    const { lengthM, diameterM, weightNPerM } = segment;
    const drag = dragOf(segment, water);
    const loadNPerM = 2 * pressurePa * diameterM + Math.abs(weightNPerM);
    for (let leftM = lengthM; leftM > 1e-9; ) {
      const sizeN = Math.sqrt(fx * fx + fy * fy + fz * fz);
      if (!(sizeN > 0)) return undefined;
      const turnM = loadNPerM === 0 ? wholeM : (STEP_TURNS * sizeN) / loadNPerM;
      const toEndM = fz > 0 ? ((z - leastDepthM) * sizeN) / fz : Number.POSITIVE_INFINITY;
      const stepM = Math.min(leftM, toEndM, LONGEST * wholeM, Math.max(turnM, SHORTEST * wholeM));
      const halfM = 0.5 * stepM;
      pushAt(drag, weightNPerM, course, x, y, z, fx / sizeN, fy / sizeN, fz / sizeN);
      const mx = fx + halfM * push.x;
      const my = fy + halfM * push.y;
      const mz = fz + halfM * push.z;
      const middleN = Math.sqrt(mx * mx + my * my + mz * mz);
      if (!(middleN > 0)) return undefined;
      const halfX = x - (halfM * fx) / sizeN;
      const halfY = y - (halfM * fy) / sizeN;
      const halfZ = z - (halfM * fz) / sizeN;
      pushAt(drag, weightNPerM, course, halfX, halfY, halfZ, mx / middleN, my / middleN, mz / middleN);
      x -= (stepM * mx) / middleN;
      y -= (stepM * my) / middleN;
      z -= (stepM * mz) / middleN;
      fx += stepM * push.x;
      fy += stepM * push.y;
      fz += stepM * push.z;
      leftM -= stepM;
      points.push({ behindM: x, acrossM: y, depthM: z });
      if (stepM === toEndM) break;
    }
  }
  return { points: points.reverse(), forceXN: fx, forceYN: fy, forceZN: fz };
}

/** What the drag of a meter of line hangs on. */
interface LineDrag {
  readonly law: LineSegment["normalDrag"];
  /** Reynolds number for each m/s. */
  readonly reynoldsPerMS: number;
  /** For each (m/s)2, N: across, times the coefficient; and along. */
  readonly across: number;
  readonly along: number;
}

function dragOf({ diameterM, normalDrag, tangentialCoefficient }: LineSegment, water: Water): LineDrag {
  const across = 0.5 * water.densityKgM3 * diameterM;
  const reynoldsPerMS = diameterM / water.kinematicViscosityM2S;
  return { law: normalDrag, reynoldsPerMS, across, along: across * Math.PI * tangentialCoefficient };
}

/** Writes into `push` what the water and its weight do to a meter of line that points along (tx, ty, tz). */
function pushAt(
  { law, reynoldsPerMS, across, along }: LineDrag,
  weightNPerM: number,
  course: Course,
  x: number,
  y: number,
  z: number,
  tx: number,
  ty: number,
  tz: number,
): void {
  streamAt(stream, course, x, y, z);
  const alongMS = stream.behindMS * tx + stream.acrossMS * ty;
  const nx = stream.behindMS - alongMS * tx;
  const ny = stream.acrossMS - alongMS * ty;
  const nz = -alongMS * tz;
  const acrossMS = Math.sqrt(nx * nx + ny * ny + nz * nz);
  const normal = across * normalDragCoefficient(law, acrossMS * reynoldsPerMS) * acrossMS;
  const rub = along * Math.abs(alongMS) * alongMS;
  push.x = normal * nx + rub * tx;
  push.y = normal * ny + rub * ty;
  push.z = normal * nz + rub * tz + weightNPerM;
}
