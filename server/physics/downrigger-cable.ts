import { DEFAULTS } from "./defaults.ts";
import type { Downrigger } from "./downrigger.ts";
import { journalDrag } from "./drag.ts";
import { weightInWaterNPerM } from "./line-materials.ts";
import type { Pull } from "./rod-line.ts";
import type { LineSegment, PointBody, SolvedLine, TowedLine } from "./towed-line.ts";
import { GRAVITY_M_S2, type Water } from "./water.ts";

/** A downrigger's cable cut at its probe and releases, with everything on it but the pulls of the rods. */
export interface Cable {
  readonly lengthM: number;
  readonly segments: readonly LineSegment[];
  /** The ball first, then one body for each rod in order: the pull of its lure. */
  readonly bodies: readonly PointBody[];
  /** The node of each rod's release, in order. */
  readonly releaseNodes: readonly number[];
  readonly probeNode: number;
}

/** What a lure's line pulls on its release, N: astern and down. */
type LurePull = Pick<SolvedLine, "topForceXN" | "topForceZN">;

/** Cuts the cable. Anything above the water counts as at the surface: node 0. */
export function buildCable(rig: Downrigger, lures: readonly LurePull[], water: Water): Cable {
  const lengthM = cableOutM(rig);
  const releases = rig.rods.map((rod) => Math.max(0, lengthM - rod.releaseAboveBallM));
  const probe = Math.max(0, lengthM - (rig.probeAboveBallM ?? 0));
  const cuts = [...new Set([...releases, probe, lengthM])].filter((along) => along > 0).sort((a, b) => a - b);
  if (cuts.length === 0) cuts.push(0);
  const nodeOf = (along: number) => cuts.indexOf(along) + 1;
  const bodies = [ballBody(rig, cuts.length, water)];
  const releaseNodes = releases.map(nodeOf);
  lures.forEach((lure, i) => {
    bodies.push(pullBody(releaseNodes[i] ?? 0, lure.topForceXN, lure.topForceZN));
  });
  return {
    lengthM,
    segments: cuts.map((along, i) => cableSegment(rig, along - (cuts[i - 1] ?? 0), water)),
    bodies: bodies,
    releaseNodes,
    probeNode: nodeOf(probe),
  };
}

/** Cable out after the counter's scale and offset, m; never below zero. */
export function cableOutM(rig: Pick<Downrigger, "outM" | "counterScale" | "counterOffsetM">): number {
  return Math.max(0, rig.counterScale * rig.outM + rig.counterOffsetM);
}

/** The cable as a towed line, with the pull of each rod on its release. */
export function cableWith(cable: Cable, pulls: readonly Pull[]): TowedLine {
  const bodies = cable.bodies.filter((body) => body.node > 0);
  pulls.forEach((pull, i) => {
    const node = cable.releaseNodes[i] ?? 0;
    if (node > 0) bodies.push(pullBody(node, pull.forceXN, pull.forceZN));
  });
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

function pullBody(node: number, forceXN: number, forceZN: number): PointBody {
  return { node, weightN: forceZN, forceXN, dragAreaM2: 0, liftAreaM2: 0 };
}
