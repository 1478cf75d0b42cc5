import { type ClimbedCable, climbCable, climbLure, type HungLure, scratchFor } from "./climb-rig.ts";
import type { Downrigger } from "./downrigger.ts";
import { buildCable, type Cable } from "./downrigger-cable.ts";
import { type FlowProfile, speedAtDepthMS, underwaterFlow } from "./flow-profile.ts";
import type { Pull } from "./rod-line.ts";
import { rodPullIn } from "./rod-line-shear.ts";
import { minusShareOfIdentity } from "./settle.ts";
import { steepnessPerM } from "./shear-strength.ts";
import { mayHangOtherwise } from "./sheared-line.ts";
import { solveChecked, type TowedLine } from "./towed-line.ts";
import type { Water } from "./water.ts";

/**
 * A downrigger while it is sought how it hangs. What is not known, in this order, is its `point`: where rods pull, each
 * release's place astern and down; in a sheared stream the ball's depth, then the depth of each lure that is not taken
 * to hang as it does on a neighbour.
 */
export interface HangingRig {
  readonly rig: Downrigger;
  readonly water: Water;
  readonly flow: FlowProfile;
  readonly cable: Cable;
  readonly climbed: ClimbedCable;
  readonly lures: readonly HungLure[];
  /** The lines of the lures to be hung along with the cable; none where they hang already. */
  readonly lureLines: readonly TowedLine[];
  readonly pulls: readonly Pull[];
  readonly isPulled: boolean;
  readonly isSheared: boolean;
  /** The most that the speed changes by for each m of depth, as a share of the slowest. */
  readonly steepness: number;
  readonly tolerance: number;
  /** Why the last climb had no answer. */
  why: string | undefined;
}

/** A rig whose lures are hung, or will be along with its cable. */
export function hangingRig(
  rig: Downrigger,
  water: Water,
  lures: readonly HungLure[],
  lureLines: readonly TowedLine[],
  tolerance: number,
): HangingRig {
  const cable = buildCable(rig, water);
  return {
    rig,
    water,
    flow: underwaterFlow(rig.flow),
    cable,
    climbed: scratchFor(cable),
    lures,
    lureLines,
    pulls: rig.rods.map(() => ({ forceXN: 0, forceZN: 0 })),
    isPulled: rig.rods.some((rod) => (rod.rodLine?.tipTensionN ?? 0) > 0),
    isSheared: rig.flow.type !== "uniform",
    steepness: lureLines.length === 0 ? 0 : steepnessPerM(rig.flow),
    tolerance,
    why: undefined,
  };
}

/** How many entries of the point are releases' places; the ball's depth comes next. */
export function placesIn({ isPulled, rig }: HangingRig): number {
  return isPulled ? 2 * rig.rods.length : 0;
}

/** Entries of the point. */
export function entriesIn(hanging: HangingRig): number {
  return placesIn(hanging) + (hanging.isSheared ? 1 + hanging.lureLines.length : 0);
}

/** A lure that hangs on where its drop changes by no more than this share of the cable; and by less than it moved. */
const STILL_SHARE = 1e-5;
const MOST_ANSWER = 0.25;

/**
 * Whether a lure moved so little since it was hung that it hangs on. Its drop answers to the speed with at most the
 * square, so to a depth with at most twice the share that the speed changes by.
 */
function isStillHung(
  { cable, steepness }: HangingRig,
  lure: HungLure,
  line: TowedLine,
  endZM: number,
): boolean {
  const answer = 2 * steepness * (line.segments[0]?.lengthM ?? 0);
  return answer < MOST_ANSWER && answer * Math.abs(endZM - lure.endZM) <= STILL_SHARE * cable.lengthM;
}

/** Pulls, hangs and climbs once from `point`, and writes where all then is into `to`; false without an answer. */
export function hangOnce(hanging: HangingRig, point: Float64Array, to: Float64Array): boolean {
  const { water, flow, cable, climbed, lures, lureLines, pulls, isSheared, tolerance } = hanging;
  const places = placesIn(hanging);
  const firstLure = places + 1;
  if (places > 0) pullRods(hanging, point);
  hanging.why = undefined;
  for (let i = 0; i < lureLines.length; i++) {
    const [lure, line] = [lures[i], lureLines[i]];
    const endZM = point[firstLure + i] ?? 0;
    if (lure === undefined || line === undefined || isStillHung(hanging, lure, line, endZM)) continue;
    hanging.why ??= climbLure(lure, line, water, flow, endZM, tolerance);
  }
  const ballZM = isSheared ? (point[places] ?? 0) : 0;
  hanging.why ??= climbCable(climbed, cable, lures, pulls, water, flow, ballZM, tolerance);
  if (hanging.why !== undefined) return false;
  for (let i = 0; 2 * i < places; i++) {
    const node = cable.releaseNodes[i] ?? 0;
    to[2 * i] = climbed.xM[node] ?? 0;
    to[2 * i + 1] = climbed.zM[node] ?? 0;
  }
  if (!isSheared) return true;
  to[places] = climbed.zM[cable.segments.length] ?? 0;
  for (let i = 0; i < lureLines.length; i++)
    to[firstLure + i] = (climbed.zM[cable.releaseNodes[i] ?? 0] ?? 0) + (lures[i]?.depthM ?? 0);
  return true;
}

/** Each rod's pull with the releases at the places given. */
function pullRods({ rig, pulls, water, flow }: HangingRig, point: Float64Array): void {
  for (let i = 0; i < pulls.length; i++) {
    const pull = pulls[i];
    const rodLine = rig.rods[i]?.rodLine;
    if (pull === undefined || rodLine === undefined) continue;
    rodPullIn(pull, rodLine, point[2 * i] ?? 0, Math.max(0, point[2 * i + 1] ?? 0), flow, water);
  }
}

/** A lure's line drops by about this share of its length behind a release; to start from. */
const LURE_DROP_SHARE = 0.15;

/** A depth of a lure to start from; where it could hang in several ways, the deepest below a release so deep. */
function lureGuessM({ water, flow, tolerance }: HangingRig, line: TowedLine, releaseZM: number): number {
  if (mayHangOtherwise(line, water, flow)) {
    const solved = solveChecked(line, water, flow, { xM: 0, zM: releaseZM }, tolerance);
    if (solved.ok) return solved.depthM;
  }
  return releaseZM + LURE_DROP_SHARE * (line.segments[0]?.lengthM ?? 0);
}

/** Where to start without a neighbour: a straight cable that leans as its ball, its lures and half its drag make it. */
export function firstGuess(hanging: HangingRig): { point: Float64Array; inverse: Float64Array } {
  const { rig, water, cable, lureLines, isSheared } = hanging;
  const speedMS = speedAtDepthMS(rig.flow, 0.5 * cable.lengthM);
  const pressurePa = 0.5 * water.densityKgM3 * speedMS * Math.abs(speedMS);
  const { ball } = cable;
  const segment = cable.segments[0];
  const sphereM2 = ball.sphere === undefined ? 0 : 0.4 * ball.sphere.multiplier * ball.sphere.diameterM ** 2;
  const cableM2 = cable.lengthM * (segment?.diameterM ?? 0) * CABLE_DRAG * rig.cable.dragMultiplier;
  let asternN = pressurePa * (ball.dragAreaM2 + sphereM2 + 0.5 * cableM2);
  let rodsN = 0;
  for (const { lure, rodLine } of rig.rods) {
    asternN += pressurePa * lure.dragAreaM2;
    rodsN += rodLine?.tipTensionN ?? 0;
  }
  const downN = ball.weightN + 0.5 * cable.lengthM * (segment?.weightNPerM ?? 0);
  const cosine =
    Math.max(0.2, 1 - rodsN / downN) / Math.hypot(Math.max(0.2, 1 - rodsN / downN), asternN / downN);
  const sine = Math.sqrt(1 - cosine * cosine) * (asternN < 0 ? -1 : 1);
  const places = placesIn(hanging);
  const point = new Float64Array(entriesIn(hanging));
  for (let i = 0; i < rig.rods.length; i++) {
    const alongM = Math.max(0, cable.lengthM - (rig.rods[i]?.releaseAboveBallM ?? 0));
    if (2 * i < places) {
      point[2 * i] = sine * alongM;
      point[2 * i + 1] = cosine * alongM;
    }
    const lureLine = lureLines[i];
    if (lureLine !== undefined) point[places + 1 + i] = lureGuessM(hanging, lureLine, cosine * alongM);
  }
  if (isSheared) point[places] = cosine * cable.lengthM;
  // A release moves by about a tenth of what the place it was taken to be at is off.
  return { point, inverse: minusShareOfIdentity(point.length, 1) };
}

/** Drag across a cable at trolling speed. */
const CABLE_DRAG = 1.3;
