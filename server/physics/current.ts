/**
 * The water's own movement from two velocities: ground velocity = velocity through the water + current. Directions in
 * degrees clockwise from north, speeds in m/s. Set is the direction toward which the current flows, drift its speed
 * (American Practical Navigator, ch. 23).
 */

const RAD = Math.PI / 180;

/** A velocity over the ground or of the water: components to the north and to the east, m/s. */
export interface Velocity {
  readonly northMS: number;
  readonly eastMS: number;
}

/** A velocity from its direction and speed. */
export function velocityOf(directionDeg: number, speedMS: number): Velocity {
  return { northMS: speedMS * Math.cos(directionDeg * RAD), eastMS: speedMS * Math.sin(directionDeg * RAD) };
}

/** The speed of a velocity, m/s. */
export const speedOf = ({ northMS, eastMS }: Velocity): number => Math.hypot(northMS, eastMS);

/** The direction of a velocity, 0 to 360. */
export function directionOf({ northMS, eastMS }: Velocity): number {
  return (Math.atan2(eastMS, northMS) / RAD + 360) % 360;
}

/** The difference of two velocities. */
export function minus(a: Velocity, b: Velocity): Velocity {
  return { northMS: a.northMS - b.northMS, eastMS: a.eastMS - b.eastMS };
}

/** The current from one look at both velocities, where the heading is known. */
export function currentOf(ground: Velocity, throughWater: Velocity): Velocity {
  return minus(ground, throughWater);
}

/** The smallest angle between two directions, 0 to 180. */
export function angleBetween(oneDeg: number, otherDeg: number): number {
  return Math.abs(((((oneDeg - otherDeg) % 360) + 540) % 360) - 180);
}

/** One look: where the boat went over the ground, and how fast through the water, its heading unknown. */
export interface Look {
  readonly ground: Velocity;
  readonly waterSpeedMS: number;
  /** Spread of the two speeds taken together, m/s. */
  readonly sdMS: number;
}

/** A current with the covariance of its components, m/s and (m/s)2. */
export interface CurrentEstimate extends Velocity {
  readonly varianceNorth: number;
  readonly varianceEast: number;
  readonly covariance: number;
}

const ROUNDS = 30;
/** Courses that differ by less, from each other or from the other's reverse, tell one direction only (judgement). */
const LEAST_TURN_DEG = 30;

/**
 * The current that fits two or more looks best: the current C for which |ground - C| comes nearest to the speed through
 * the water in all of them (weighted least squares, Gauss-Newton from still water, so the smaller of two currents
 * that fit alike). Undefined when all courses lie within 30 degrees of one line, there or back, or when nothing settles.
 */
export function fitCurrent(looks: readonly Look[]): CurrentEstimate | undefined {
  if (!hasTurned(looks)) return undefined;
  let current: Velocity = { northMS: 0, eastMS: 0 };
  for (let round = 0; round < ROUNDS; round++) {
    const normal = normalEquations(looks, current);
    const step = solve(normal);
    if (step === undefined) return undefined;
    current = { northMS: current.northMS + step.northMS, eastMS: current.eastMS + step.eastMS };
    if (speedOf(step) < 1e-12) return withCovariance(current, normal);
  }
  const normal = normalEquations(looks, current);
  const last = solve(normal);
  return last !== undefined && speedOf(last) < 1e-3 ? withCovariance(current, normal) : undefined;
}

/** One standard deviation of the current along a direction, m/s. */
export function sdAlong(current: CurrentEstimate, directionDeg: number): number {
  const [c, s] = [Math.cos(directionDeg * RAD), Math.sin(directionDeg * RAD)];
  const { varianceNorth, varianceEast, covariance } = current;
  return Math.sqrt(c * c * varianceNorth + s * s * varianceEast + 2 * c * s * covariance);
}

/** The greatest standard deviation in any direction, m/s. */
export function widestSd({ varianceNorth, varianceEast, covariance }: CurrentEstimate): number {
  const mean = (varianceNorth + varianceEast) / 2;
  return Math.sqrt(mean + Math.hypot((varianceNorth - varianceEast) / 2, covariance));
}

function hasTurned(looks: readonly Look[]): boolean {
  const courses = looks.map((look) => directionOf(look.ground));
  const isAcross = (angleDeg: number): boolean =>
    angleDeg >= LEAST_TURN_DEG && angleDeg <= 180 - LEAST_TURN_DEG;
  return courses.some((one) => courses.some((other) => isAcross(angleBetween(one, other))));
}

interface Normal {
  readonly nn: number;
  readonly ne: number;
  readonly ee: number;
  readonly bn: number;
  readonly be: number;
}

function normalEquations(looks: readonly Look[], current: Velocity): Normal {
  let [nn, ne, ee, bn, be] = [0, 0, 0, 0, 0];
  for (const { ground, waterSpeedMS, sdMS } of looks) {
    const through = minus(ground, current);
    const speed = speedOf(through);
    if (speed === 0) continue;
    const [n, e] = [-through.northMS / speed, -through.eastMS / speed];
    const weight = 1 / (sdMS * sdMS);
    const missing = waterSpeedMS - speed;
    nn += weight * n * n;
    ne += weight * n * e;
    ee += weight * e * e;
    bn += weight * n * missing;
    be += weight * e * missing;
  }
  return { nn, ne, ee, bn, be };
}

/** Undefined where the looks can't tell the two components apart. */
function solve({ nn, ne, ee, bn, be }: Normal): Velocity | undefined {
  const determinant = nn * ee - ne * ne;
  if (!(determinant > 1e-9 * nn * ee)) return undefined;
  return { northMS: (ee * bn - ne * be) / determinant, eastMS: (nn * be - ne * bn) / determinant };
}

function withCovariance(current: Velocity, { nn, ne, ee }: Normal): CurrentEstimate {
  const determinant = nn * ee - ne * ne;
  return {
    ...current,
    varianceNorth: ee / determinant,
    varianceEast: nn / determinant,
    covariance: -ne / determinant,
  };
}
