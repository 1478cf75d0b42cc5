import { whyNoDownrigger } from "./check-downrigger.ts";
import { DEFAULTS } from "./defaults.ts";
import { buildCable, type Cable, cableWith } from "./downrigger-cable.ts";
import { uniformFlow } from "./flow-profile.ts";
import { type LineInUse, type LureForces, solveLureLine } from "./lure.ts";
import { type Refusal, refuse } from "./refusal.ts";
import { type Pull, type RodLine, rodPull } from "./rod-line.ts";
import { type Settled, settle } from "./settle.ts";
import { SOLVER_TOLERANCE, type SolvedLine, solveChecked, type TowPoint } from "./towed-line.ts";
import { type Water, waterAt } from "./water.ts";

/** The ball at the end of the cable. */
export interface Ball {
  /** Mass as weighed in air, kg. */
  readonly massKg: number;
  /** Density of its material, kg/m3; more than water's. */
  readonly densityKgM3: number;
  /** Times the drag of a smooth sphere of that mass and density. */
  readonly dragMultiplier: number;
  /** A stated drag area, m2, in place of the sphere's. */
  readonly dragAreaM2?: number;
}

/** One rod clipped to the cable: its release, its lure, and the line from the rod's tip. */
export interface RodOnCable {
  readonly id: string;
  /** Height of the release above the ball, along the cable, m. */
  readonly releaseAboveBallM: number;
  /** The lure's distance behind its release: the length of its line from there, m. */
  readonly setbackM: number;
  readonly lureLine: LineInUse;
  readonly lure: LureForces;
  /** Left out where no rod pulls on the release. */
  readonly rodLine?: RodLine;
}

/** Everything that sets the shape of one downrigger's cable and lure lines, in SI. */
export interface Downrigger {
  /** The counter's reading, m. Cable out is scale times reading plus offset. */
  readonly outM: number;
  readonly counterScale: number;
  readonly counterOffsetM: number;
  /** Speed through the water, m/s, the same at every depth. */
  readonly speedMS: number;
  readonly waterTemperatureC: number;
  readonly salinityPsu: number;
  readonly cable: LineInUse;
  readonly ball: Ball;
  /** Height of the probe above the ball, along the cable, m; left out where there is none. */
  readonly probeAboveBallM?: number;
  /** In any order, each with its own release; none for a bare ball. */
  readonly rods: readonly RodOnCable[];
}

/** A place below and behind the point where the cable enters the water, m. */
export interface Place {
  readonly depthM: number;
  readonly behindM: number;
}

/** Where one rod's release and lure are. */
export interface SolvedRod {
  readonly id: string;
  readonly release: Place;
  readonly lure: Place;
  /** How hard the lure pulls on the release, N. */
  readonly lureTensionN: number;
}

/** A solved downrigger. */
export interface SolvedDownrigger {
  readonly ok: true;
  /** Cable out after the counter's scale and offset, m. */
  readonly cableOutM: number;
  readonly ball: Place;
  /** Left out where there is no probe or it is still above the water. */
  readonly probe?: Place;
  /** In the order given. */
  readonly rods: readonly SolvedRod[];
  /** Angle of the cable from the vertical where it enters the water, positive astern. */
  readonly topAngleDeg: number;
  readonly topTensionN: number;
  /** The model puts the ball, a lure or part of a line at or above the surface, where it no longer holds. */
  readonly surfaced: boolean;
}

/** A downrigger with only what the gear book must say; the rest takes the table of defaults. */
export type DownriggerInput = Pick<Downrigger, "outM" | "speedMS"> & {
  readonly cable: Pick<LineInUse, "make"> & Partial<LineInUse>;
  readonly ball: Pick<Ball, "massKg"> & Partial<Ball>;
  readonly rods: readonly RodOnCable[];
} & Partial<Omit<Downrigger, "outM" | "speedMS" | "cable" | "ball" | "rods">>;

/** Fills in a downrigger's defaults. A probe is not one of them: say where it rides, or there is none. */
export function completeDownrigger(input: DownriggerInput): Downrigger {
  return {
    counterScale: DEFAULTS.counterScale.value,
    counterOffsetM: DEFAULTS.counterOffsetM.value,
    waterTemperatureC: DEFAULTS.waterTemperatureC.value,
    salinityPsu: DEFAULTS.salinityPsu.value,
    ...input,
    cable: { dragMultiplier: DEFAULTS.cableDragMultiplier.value, ...input.cable },
    ball: {
      densityKgM3: DEFAULTS.ballDensityKgM3.value,
      dragMultiplier: DEFAULTS.ballDragMultiplier.value,
      ...input.ball,
    },
  };
}

/** The default line from a rod to its release; `tipTensionN` is the pull of the bent rod. */
export function defaultRodLine(tipTensionN: number = DEFAULTS.rodPullN.value): RodLine {
  return {
    tipTensionN,
    tipHeightM: DEFAULTS.rodTipHeightM.value,
    tipBehindM: DEFAULTS.rodTipBehindM.value,
    diameterM: DEFAULTS.rodLineDiameterM.value,
    dragMultiplier: DEFAULTS.lineDragMultiplier.value,
  };
}

/**
 * Where everything on a downrigger is, in a uniform speed. Refuses, with a plain reason, what is not a finite
 * number, what is out of range, and a release that is still above the water.
 */
export function solveDownrigger(rig: Downrigger): SolvedDownrigger | Refusal {
  const why = whyNoDownrigger(rig);
  if (why !== undefined) return refuse(why);
  const solved = solveSettled(rig);
  return solved.ok ? solved.answer : solved;
}

/** A solved downrigger with what a neighbouring one can start from. */
export interface SettledDownrigger {
  readonly ok: true;
  readonly answer: SolvedDownrigger;
  readonly rig: Downrigger;
  readonly lures: readonly SolvedLine[];
  readonly settled: Settled;
}

/** How exactly to solve: each step of a line, and the releases' places as a share of the cable out. */
export interface Exactness {
  readonly tolerance: number;
  readonly share: number;
}

const EXACT: Exactness = { tolerance: SOLVER_TOLERANCE, share: 1e-9 };

/**
 * The same for a rig that has been checked, from a solved neighbour when there is one: the lures it has in common
 * are taken over, and its rods' pulls are where the settling starts. A release above the water counts as at the
 * surface here, so that a band's short side still has an answer.
 */
export function solveSettled(
  rig: Downrigger,
  neighbour?: SettledDownrigger,
  exactness: Exactness = EXACT,
): SettledDownrigger | Refusal {
  const water = waterAt(rig.waterTemperatureC, rig.salinityPsu);
  if (!water.ok) return water;
  const lures: SolvedLine[] = [];
  for (const [i, rod] of rig.rods.entries()) {
    const lure =
      lureInCommon(rig, rod, i, neighbour) ?? solveLureLine(rod, rig.speedMS, water, exactness.tolerance);
    if (!lure.ok) return lure;
    lures.push(lure);
  }
  const cable = buildCable(rig, lures, water);
  const settled = settlePulls(rig, cable, water, neighbour?.settled, exactness);
  if (!settled.ok) return settled;
  return {
    ok: true,
    answer: answerOf(rig, cable, settled.line, lures),
    rig,
    lures,
    settled: settled.settled,
  };
}

/** The neighbour's solution for a lure line that hangs in the same water at the same speed. */
function lureInCommon(
  rig: Downrigger,
  rod: RodOnCable,
  index: number,
  neighbour: SettledDownrigger | undefined,
): SolvedLine | undefined {
  const other = neighbour?.rig;
  const same = other?.rods[index];
  if (other === undefined || same === undefined) return undefined;
  const sameWater =
    other.speedMS === rig.speedMS &&
    other.waterTemperatureC === rig.waterTemperatureC &&
    other.salinityPsu === rig.salinityPsu;
  const sameLine = same.lureLine === rod.lureLine && same.lure === rod.lure && same.setbackM === rod.setbackM;
  return sameWater && sameLine ? neighbour?.lures[index] : undefined;
}

interface SettledCable {
  readonly ok: true;
  readonly line: SolvedLine;
  readonly settled: Settled;
}

/** Solves the cable, going round until the releases are where the rods' pulls, which depend on it, put them. */
function settlePulls(
  rig: Downrigger,
  cable: Cable,
  water: Water,
  neighbour: Settled | undefined,
  exactness: Exactness,
): SettledCable | Refusal {
  const flow = uniformFlow(rig.speedMS);
  const pulls: Pull[] = rig.rods.map(() => ({ forceXN: 0, forceZN: 0 }));
  let last: SolvedLine | Refusal = refuse("the cable was never solved");
  const solveInto = (out: Float64Array): boolean => {
    last = solveChecked(cableWith(cable, pulls), water, flow, SURFACE, exactness.tolerance);
    if (last.ok) readReleases(cable, last, out);
    return last.ok;
  };
  const pulling = rig.rods.some((rod) => (rod.rodLine?.tipTensionN ?? 0) > 0);
  const entries = pulling ? 2 * rig.rods.length : 0;
  const start = neighbour?.point.length === entries ? neighbour : { point: new Float64Array(entries) };
  if (start !== neighbour && pulling && !solveInto(start.point)) return last;
  const scaleM = Math.max(cable.lengthM, 1);
  const settled = settle(
    (from, to) => {
      pullAll(pulls, rig, from, water);
      return solveInto(to);
    },
    start,
    exactness.share * scaleM,
    0.5 * scaleM,
  );
  if (!last.ok) return last;
  return settled.reached
    ? { ok: true, line: last, settled }
    : refuse("the pull of the rods could not be settled");
}

const SURFACE: TowPoint = { xM: 0, zM: 0 };

/** Works out each rod's pull with the releases at the places given, x and z in turn. */
function pullAll(pulls: readonly Pull[], rig: Downrigger, places: Float64Array, water: Water): void {
  for (const [i, rod] of rig.rods.entries()) {
    const pull = pulls[i];
    if (pull === undefined || rod.rodLine === undefined || places.length === 0) continue;
    const depthM = Math.max(0, places[2 * i + 1] ?? 0);
    rodPull(pull, rod.rodLine, places[2 * i] ?? 0, depthM, rig.speedMS, water);
  }
}

/** Writes each release's place astern and depth, in turn. */
function readReleases(cable: Cable, line: SolvedLine, out: Float64Array): void {
  for (let i = 0; 2 * i < out.length; i++) {
    const node = line.nodes[cable.releaseNodes[i] ?? 0];
    out[2 * i] = node?.xM ?? 0;
    out[2 * i + 1] = node?.zM ?? 0;
  }
}

function answerOf(
  rig: Downrigger,
  cable: Cable,
  line: SolvedLine,
  lures: readonly SolvedLine[],
): SolvedDownrigger {
  const rods = rig.rods.map((rod, i) => solvedRod(rod, placeAt(line, cable.releaseNodes[i] ?? 0), lures[i]));
  const ball = { depthM: line.depthM, behindM: line.behindM };
  const hasProbe = rig.probeAboveBallM !== undefined && cable.probeNode > 0;
  return {
    ok: true,
    cableOutM: cable.lengthM,
    ball,
    ...(hasProbe ? { probe: placeAt(line, cable.probeNode) } : {}),
    rods,
    topAngleDeg: line.topAngleDeg,
    topTensionN: line.topTensionN,
    surfaced: isSurfaced(cable, line, rods, lures),
  };
}

function solvedRod(rod: RodOnCable, release: Place, lure: SolvedLine | undefined): SolvedRod {
  return {
    id: rod.id,
    release,
    lure: {
      depthM: release.depthM + (lure?.depthM ?? 0),
      behindM: release.behindM + (lure?.behindM ?? 0),
    },
    lureTensionN: lure?.topTensionN ?? 0,
  };
}

function placeAt(line: SolvedLine, node: number): Place {
  const at = line.nodes[node];
  return { depthM: at?.zM ?? 0, behindM: at?.xM ?? 0 };
}

/** Less than this above the surface, m, is rounding. */
const SURFACE_SLACK_M = 1e-6;

function isSurfaced(
  cable: Cable,
  line: SolvedLine,
  rods: readonly SolvedRod[],
  lures: readonly SolvedLine[],
): boolean {
  if (line.leastDepthM < -SURFACE_SLACK_M) return true;
  if (cable.lengthM > 0 && line.depthM <= 0) return true;
  return rods.some((rod, i) => {
    const highestM = rod.release.depthM + (lures[i]?.leastDepthM ?? 0);
    return highestM < -SURFACE_SLACK_M || (cable.lengthM > 0 && rod.lure.depthM <= 0);
  });
}
