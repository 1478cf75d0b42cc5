import { DEFAULTS } from "./defaults.ts";
import type { Downrigger } from "./downrigger.ts";
import { journalDrag } from "./drag.ts";
import { weightInWaterNPerM } from "./line-materials.ts";
import type { Pull } from "./rod-line.ts";
import type { LineSegment, PointBody, TowedLine } from "./towed-line.ts";
import { GRAVITY_M_S2, type Water } from "./water.ts";

/** A downrigger's cable cut at its probe and releases, with its ball; what lures and rods pull comes on top. */
export interface Cable {
  readonly lengthM: number;
  readonly segments: readonly LineSegment[];
  readonly ball: PointBody;
  /** The node of each rod's release, in order. */
  readonly releaseNodes: readonly number[];
  readonly probeNode: number;
}

/** How a lure's line pulls on its release, N: astern and down. */
export interface LurePull {
  readonly topForceXN: number;
  readonly topForceZN: number;
}

/** Cuts the cable. Anything above the water counts as at the surface: node 0. */
export function buildCable(rig: Downrigger, water: Water): Cable {
  const lengthM = cableOutM(rig);
  const probeM = Math.max(0, lengthM - (rig.probeAboveBallM ?? 0));
  const cuts = lengthM > 0 ? [lengthM] : [];
  addCut(cuts, probeM);
  for (const rod of rig.rods) addCut(cuts, lengthM - rod.releaseAboveBallM);
  if (cuts.length === 0) cuts.push(0);
  const nodeOf = (alongM: number) => cuts.indexOf(Math.max(0, alongM)) + 1;
  const whole = cableSegment(rig, lengthM, water);
  return {
    lengthM,
    segments:
      cuts.length === 1
        ? [whole]
        : cuts.map((alongM, i) => ({ ...whole, lengthM: alongM - (cuts[i - 1] ?? 0) })),
    ball: ballBody(rig, cuts.length, water),
    releaseNodes: rig.rods.map((rod) => nodeOf(lengthM - rod.releaseAboveBallM)),
    probeNode: nodeOf(probeM),
  };
}

/** Cuts stay in order; there are a few of them. */
function addCut(cuts: number[], alongM: number): void {
  if (!(alongM > 0) || cuts.includes(alongM)) return;
  let at = cuts.length;
  while (at > 0 && (cuts[at - 1] ?? 0) > alongM) at--;
  cuts.splice(at, 0, alongM);
}

/** Cable out after the counter's scale and offset, m; never below zero. */
export function cableOutM(rig: Pick<Downrigger, "outM" | "counterScale" | "counterOffsetM">): number {
  return Math.max(0, rig.counterScale * rig.outM + rig.counterOffsetM);
}

/** The cable as a towed line, with the pull of each lure and each rod on its release. */
export function cableWith(cable: Cable, lures: readonly LurePull[], pulls: readonly Pull[]): TowedLine {
  const bodies = [cable.ball];
  const add = (i: number, forceXN: number, forceZN: number): void => {
    const node = cable.releaseNodes[i] ?? 0;
    if (node > 0) bodies.push({ node, weightN: forceZN, forceXN, dragAreaM2: 0, liftAreaM2: 0 });
  };
  for (const [i, lure] of lures.entries()) add(i, lure.topForceXN, lure.topForceZN);
  for (const [i, pull] of pulls.entries()) add(i, pull.forceXN, pull.forceZN);
  return { segments: cable.segments, bodies };
}

function cableSegment(rig: Downrigger, lengthM: number, water: Water): LineSegment {
  const { make, dragMultiplier } = rig.cable;
  return {
    lengthM,
    diameterM: make.diameterM,
    weightNPerM: weightInWaterNPerM(make, water.densityKgM3),
    normalDrag: journalDrag(dragMultiplier),
    tangentialCoefficient: DEFAULTS.tangentialCoefficient.value,
  };
}

function ballBody(rig: Downrigger, node: number, water: Water): PointBody {
  const { massKg, densityKgM3, dragMultiplier, dragAreaM2 } = rig.ball;
  const weightN = massKg * GRAVITY_M_S2 * (1 - water.densityKgM3 / densityKgM3);
  const body = { node, weightN, forceXN: 0, liftAreaM2: 0 };
  if (dragAreaM2 !== undefined) return { ...body, dragAreaM2 };
  const diameterM = Math.cbrt((6 * massKg) / (Math.PI * densityKgM3));
  return { ...body, dragAreaM2: 0, sphere: { diameterM, multiplier: dragMultiplier } };
}
