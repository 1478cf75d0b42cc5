import { whyNoLongLine } from "./check-long-line.ts";
import { DEFAULTS } from "./defaults.ts";
import type { Place } from "./downrigger.ts";
import { journalDrag } from "./drag.ts";
import { JOURNAL } from "./exactness.ts";
import { type FlowProfile, underwaterFlow } from "./flow-profile.ts";
import { weightInWaterNPerM } from "./line-materials.ts";
import type { LineInUse, LureForces } from "./lure.ts";
import { type Refusal, refuse } from "./refusal.ts";
import { solveShearedNear } from "./sheared-line.ts";
import {
  type LineSegment,
  type PointBody,
  type SolvedLine,
  solveChecked,
  solveTowedLine,
  type TowedLine,
} from "./towed-line.ts";
import { type Water, waterAt } from "./water.ts";

/** A piece of line below the main one, with what is fixed to its lower end: a leader, a leader with a flasher. */
export interface PieceBelow {
  readonly lengthM: number;
  readonly line: LineInUse;
  readonly end?: LureForces;
}

/**
 * Any line that hangs from a rod tip or a planer board rather than on a downrigger's release: leadcore, copper,
 * weighted wire, a flat line, a diver. From the top: backing, main line, what hangs on the joint, pieces below it,
 * lure. The tow point is at the water line: line in the air between rod tip and water is not counted, which a
 * counter zeroed with the end of the main line at the surface does by itself; the tilt of 2 m of air at 20 degrees
 * leaves 0.1 m of line (derived).
 */
export interface LongLine {
  /** What the counter, or the count of colors, says is out above the joint, m. */
  readonly outM: number;
  readonly counterScale: number;
  readonly counterOffsetM: number;
  readonly flow: FlowProfile;
  readonly waterTemperatureC: number;
  readonly salinityPsu: number;
  /** The lowest part of what is out: the core, the copper, the wire, or all of it. */
  readonly main: LineInUse;
  /** The most main line there is, m; what is out beyond it is backing. Left out where it never ends. */
  readonly mainAtMostM?: number;
  readonly backing?: LineInUse;
  /** On the joint at the main line's lower end: a diver or an in-line weight. */
  readonly joint?: LureForces;
  /** From the joint down; none where the lure is tied to it. */
  readonly below: readonly PieceBelow[];
  readonly lure: LureForces;
}

/** A solved long line, counted from its tow point at the water line. */
export interface SolvedLongLine {
  readonly ok: true;
  /** Main line and backing in the water, m. */
  readonly mainM: number;
  readonly backingM: number;
  /** The main line's lower end, where a diver or an in-line weight is. */
  readonly joint: Place;
  readonly lure: Place;
  readonly topAngleDeg: number;
  readonly topTensionN: number;
  /** The model puts the joint, the lure or part of the line at or above the surface, where it no longer holds. */
  readonly surfaced: boolean;
  /** In a sheared stream, how many times over an error shows in the depth. */
  readonly conditioning?: number;
  /** Other depths, m, at which the joint (the lure, where nothing hangs on it) could hang as well; the deepest is given. */
  readonly otherDepthsM: readonly number[];
}

/** Backing and main line in the water, m, for a reading of the counter. */
export function lineInWaterM(line: LongLine): { readonly mainM: number; readonly backingM: number } {
  const outM = Math.max(0, line.counterScale * line.outM + line.counterOffsetM);
  const mainM = Math.min(outM, line.mainAtMostM ?? outM);
  return { mainM, backingM: outM - mainM };
}

/**
 * Where everything on a long line is. Refuses, with a plain reason, what is not a finite number, what is out of
 * range, a speed too low to tow at, and a line that nothing keeps taut.
 */
export function solveLongLine(line: LongLine, tolerance = JOURNAL.tolerance): SolvedLongLine | Refusal {
  const why = whyNoLongLine(line);
  return why === undefined ? solveCheckedLongLine(line, tolerance) : refuse(why);
}

/** The same for a line that has been checked; a band's sides may leave what is asked of a captain. */
export function solveCheckedLongLine(line: LongLine, tolerance: number): SolvedLongLine | Refusal {
  const water = waterAt(line.waterTemperatureC, line.salinityPsu);
  if (!water.ok) return water;
  const solved = solveTowedLine(towedLineOf(line, water), water, line.flow, SURFACE, tolerance);
  return solved.ok ? answerOf(line, solved) : solved;
}

/** The same beside a solved neighbour with its lure at a depth, m, without a look for other shapes. */
export function solveLongLineNear(
  line: LongLine,
  lureDepthM: number,
  tolerance: number,
): SolvedLongLine | Refusal {
  const water = waterAt(line.waterTemperatureC, line.salinityPsu);
  if (!water.ok) return water;
  const towed = towedLineOf(line, water);
  const flow = underwaterFlow(line.flow);
  const solved =
    flow.type === "uniform"
      ? solveChecked(towed, water, flow, SURFACE, tolerance)
      : solveShearedNear(towed, water, flow, SURFACE, lureDepthM, tolerance);
  return solved.ok ? answerOf(line, solved) : solved;
}

const SURFACE = { xM: 0, zM: 0 };

/** The node of the joint: backing is the first segment, the main line the second. */
export const JOINT_NODE = 2;

/** The line as the general solver takes it. */
export function towedLineOf(line: LongLine, water: Water): TowedLine {
  const { mainM, backingM } = lineInWaterM(line);
  const segments = [
    segmentOf(backingM, line.backing ?? line.main, water),
    segmentOf(mainM, line.main, water),
    ...line.below.map((piece) => segmentOf(piece.lengthM, piece.line, water)),
  ];
  const bodies = [bodyAt(segments.length, line.lure)];
  if (line.joint !== undefined) bodies.push(bodyAt(JOINT_NODE, line.joint));
  line.below.forEach((piece, i) => {
    if (piece.end !== undefined) bodies.push(bodyAt(JOINT_NODE + 1 + i, piece.end));
  });
  return { segments, bodies };
}

function segmentOf(lengthM: number, { make, dragMultiplier }: LineInUse, water: Water): LineSegment {
  return {
    lengthM,
    diameterM: make.diameterM,
    weightNPerM: weightInWaterNPerM(make, water.densityKgM3),
    normalDrag: journalDrag(dragMultiplier),
    tangentialCoefficient: DEFAULTS.tangentialCoefficient.value,
  };
}

function bodyAt(node: number, { weightN, dragAreaM2, liftAreaM2 }: LureForces): PointBody {
  return { node, weightN, dragAreaM2, liftAreaM2, forceXN: 0 };
}

/** A line this little above the surface, m, only skims it: a floating backing does. */
const SURFACE_SLACK_M = 0.05;

function answerOf(line: LongLine, solved: SolvedLine): SolvedLongLine {
  const joint = solved.nodes[JOINT_NODE];
  const mainDepthM = (one: SolvedLine): number =>
    (line.joint === undefined ? undefined : one.nodes[JOINT_NODE]?.zM) ?? one.depthM;
  return {
    ok: true,
    ...lineInWaterM(line),
    joint: { depthM: joint?.zM ?? 0, behindM: joint?.xM ?? 0 },
    lure: { depthM: solved.depthM, behindM: solved.behindM },
    topAngleDeg: solved.topAngleDeg,
    topTensionN: solved.topTensionN,
    surfaced: solved.depthM <= 0 || (joint?.zM ?? 0) <= 0 || solved.leastDepthM < -SURFACE_SLACK_M,
    ...(solved.conditioning === undefined ? {} : { conditioning: solved.conditioning }),
    otherDepthsM: (solved.alternatives ?? []).map(mainDepthM),
  };
}
