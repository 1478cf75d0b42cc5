import { DEFAULTS } from "./defaults.ts";
import type { Place, RodOnCable } from "./downrigger.ts";
import { journalDrag } from "./drag.ts";
import { uniformFlow } from "./flow-profile.ts";
import type { LureForces } from "./lure.ts";
import { solveLureLine } from "./lure.ts";
import { type Refusal, refuse, whyNotInRange } from "./refusal.ts";
import { type Pull, type RodLine, rodPull } from "./rod-line.ts";
import { type SolvedLine, type SolvedNode, solveTowedLine } from "./towed-line.ts";
import { GRAVITY_M_S2, type Water } from "./water.ts";

/** A slider: a second lure on a short leader, on the line between a rod and its release. */
export interface Slider {
  readonly lure: LureForces;
  readonly leaderM: number;
  /** Pinned so far above the release along the line, m; left out where it runs free. */
  readonly fixedM?: number;
}

/** Depths that a slider's lure may be at, m, and where it most likely is. */
export interface SliderDepth {
  readonly ok: true;
  readonly depthM: number;
  readonly lowM: number;
  readonly highM: number;
  readonly behindM: number;
  readonly isFree: boolean;
}

/** The rod's line from its release up to the water line, as it hangs in a uniform speed. */
interface RodLineShape {
  /** From the release up; x and z counted as for the ball. */
  readonly nodes: readonly SolvedNode[];
}

/** Pieces that the line is cut into, and how much longer than the straight way it may be. */
const PIECES = 48;
const LONGEST = 2;

/**
 * Where a slider's lure is. A pinned one is so much line above the release. A free one slides until the water's
 * pull on it and its weight stand square to the line, which is a little below the belly's aftmost point; friction
 * holds it anywhere near. Its lure's weight and drag are guesses, so the answer is a range and poorly known.
 * Source: derived; friction from memory..
 */
export function solveSlider(
  slider: Slider,
  rod: RodOnCable,
  release: Place,
  speedMS: number,
  water: Water,
): SliderDepth | Refusal {
  if (rod.rodLine === undefined) return refuse("no rod's line runs to the release");
  if (release.depthM <= 0) return refuse("the release is not under the water");
  const shape = rodLineShape(rod.rodLine, release, speedMS, water);
  if (!shape.ok) return shape;
  const drop = solveLureLine(
    { setbackM: slider.leaderM, lureLine: rod.lureLine, lure: slider.lure },
    speedMS,
    water,
  );
  if (!drop.ok) return drop;
  return slider.fixedM === undefined
    ? freeDepth(shape, slider.lure, drop, speedMS, water)
    : pinnedDepth(shape, slider.fixedM, drop);
}

/** The line is climbed from the release, where its force is known, in equal pieces until it is out of the water. */
function rodLineShape(
  rodLine: RodLine,
  release: Place,
  speedMS: number,
  water: Water,
): ({ readonly ok: true } & RodLineShape) | Refusal {
  const pull: Pull = { forceXN: 0, forceZN: 0 };
  rodPull(pull, rodLine, release.behindM, release.depthM, speedMS, water);
  if (pull.forceXN === 0 && pull.forceZN === 0) return refuse("the rod doesn't pull on its release");
  const straightM = Math.hypot(release.behindM - rodLine.tipBehindM, release.depthM);
  const segment = {
    lengthM: (LONGEST * straightM) / PIECES,
    diameterM: rodLine.diameterM,
    weightNPerM: 0,
    normalDrag: journalDrag(rodLine.dragMultiplier),
    tangentialCoefficient: DEFAULTS.tangentialCoefficient.value,
  };
  const line = {
    segments: Array.from({ length: PIECES }, () => segment),
    bodies: [{ node: PIECES, weightN: -pull.forceZN, forceXN: -pull.forceXN, dragAreaM2: 0, liftAreaM2: 0 }],
  };
  const solved = solveTowedLine(line, water, uniformFlow(speedMS));
  if (!solved.ok) return solved;
  const shiftXM = release.behindM - solved.behindM;
  const shiftZM = release.depthM - solved.depthM;
  const moved = solved.nodes.map((node) => ({ ...node, xM: node.xM + shiftXM, zM: node.zM + shiftZM }));
  const upward = moved.reverse();
  const out = upward.findIndex((node) => node.zM < 0);
  return { ok: true, nodes: out < 0 ? upward : upward.slice(0, out) };
}

/** How far a pinned slider may be from where it was pinned: the stop slips, the line's belly is a guess (judgement). */
const PINNED_SHARE = 0.2;

function pinnedDepth(shape: RodLineShape, fixedM: number, drop: SolvedLine): SliderDepth | Refusal {
  const why = whyNotInRange("the slider's height above its release", fixedM, 0, 2000, "m");
  if (why !== undefined) return refuse(why);
  const at = placeAlong(shape, fixedM);
  if (at === undefined)
    return refuse("the slider is pinned farther above its release than there is line in the water");
  const release = placeAlong(shape, 0) ?? at;
  const depthM = at.depthM + drop.depthM;
  const loose = PINNED_SHARE * Math.abs(release.depthM - at.depthM);
  const reach = 0.5 * Math.abs(drop.depthM);
  return {
    ok: true,
    depthM,
    lowM: Math.max(0, depthM - Math.hypot(loose, reach)),
    highM: depthM + Math.hypot(loose, reach),
    behindM: at.behindM + drop.behindM,
    isFree: false,
  };
}

/** A place so much line above the release, m; `undefined` past the water line. */
function placeAlong({ nodes }: RodLineShape, aboveM: number): Place | undefined {
  const bottom = nodes[0]?.alongM ?? 0;
  for (let i = 1; i < nodes.length; i++) {
    const [lower, upper] = [nodes[i - 1], nodes[i]];
    if (lower === undefined || upper === undefined || bottom - upper.alongM < aboveM) continue;
    const share = (aboveM - (bottom - lower.alongM)) / (lower.alongM - upper.alongM);
    return {
      depthM: lower.zM + share * (upper.zM - lower.zM),
      behindM: lower.xM + share * (upper.xM - lower.xM),
    };
  }
  return undefined;
}

/** A lure's weight and drag may each be off by half, so their ratio by this much to either side. */
const RATIO_OFF = 3;

function freeDepth(
  shape: RodLineShape,
  lure: LureForces,
  drop: SolvedLine,
  speedMS: number,
  water: Water,
): SliderDepth | Refusal {
  const pressurePa = 0.5 * water.densityKgM3 * speedMS * speedMS;
  const downN = lure.weightN + pressurePa * lure.liftAreaM2;
  const asternN = Math.max(pressurePa * lure.dragAreaM2, 1e-4 * GRAVITY_M_S2);
  const ratio = downN / asternN;
  const friction = (DEFAULTS.sliderFrictionDeg.value * Math.PI) / 180;
  const angles = [ratio / RATIO_OFF, ratio * RATIO_OFF].map((r) => -Math.atan(r));
  const rests = (angle: number): boolean =>
    angle >= Math.min(...angles) - friction && angle <= Math.max(...angles) + friction;
  const resting = piecesOf(shape).filter((piece) => rests(piece.angle));
  const best = nearestPiece(shape, -Math.atan(ratio));
  if (best === undefined) return refuse("too little of the rod's line is in the water for a slider");
  const depths = [best, ...resting].map((piece) => piece.depthM + drop.depthM);
  return {
    ok: true,
    depthM: best.depthM + drop.depthM,
    lowM: Math.max(0, Math.min(...depths)),
    highM: Math.max(...depths),
    behindM: best.behindM + drop.behindM,
    isFree: true,
  };
}

interface Piece extends Place {
  /** From the vertical, positive where the line runs astern going down. */
  readonly angle: number;
}

function piecesOf({ nodes }: RodLineShape): Piece[] {
  return nodes.slice(1).map((upper, i) => {
    const lower = nodes[i] ?? upper;
    return {
      angle: Math.atan2(lower.xM - upper.xM, lower.zM - upper.zM),
      depthM: 0.5 * (lower.zM + upper.zM),
      behindM: 0.5 * (lower.xM + upper.xM),
    };
  });
}

/** The piece whose slope is nearest to that of balance: one end of the line where it would slide that far. */
function nearestPiece(shape: RodLineShape, angle: number): Piece | undefined {
  let best: Piece | undefined;
  for (const piece of piecesOf(shape))
    if (best === undefined || Math.abs(piece.angle - angle) < Math.abs(best.angle - angle)) best = piece;
  return best;
}
