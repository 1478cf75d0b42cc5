import { angleDeg } from "./climb-nodes.ts";
import { type ClimbedCable, type HungLure, lureTensionN, topTensionN } from "./climb-rig.ts";
import type { Downrigger, Place, RodOnCable, SolvedDownrigger, SolvedRod } from "./downrigger.ts";
import type { Cable } from "./downrigger-cable.ts";
import type { Firmness } from "./sheared-line.ts";

/** Reads the places of ball, probe, releases and lures off the solved cable and the solved lure lines. */
export function downriggerAnswer(
  rig: Downrigger,
  cable: Cable,
  line: ClimbedCable,
  lures: readonly HungLure[],
  firm: Partial<Firmness> = {},
): SolvedDownrigger {
  const rods = rig.rods.map((rod, i) => solvedRod(rod, placeAt(line, cable.releaseNodes[i] ?? 0), lures[i]));
  const ball = placeAt(line, cable.segments.length);
  const hasProbe = rig.probeAboveBallM !== undefined && cable.probeNode > 0;
  return {
    ok: true,
    cableOutM: cable.lengthM,
    ball,
    ...(hasProbe ? { probe: placeAt(line, cable.probeNode) } : {}),
    rods,
    topAngleDeg: angleDeg(line.state),
    topTensionN: topTensionN(line),
    surfaced: isSurfaced(cable, line, ball, rods, lures),
    ...(firm.conditioning === undefined ? {} : { conditioning: firm.conditioning }),
    ...(firm.otherEndsZM === undefined || firm.otherEndsZM.length === 0
      ? {}
      : { otherBallDepthsM: firm.otherEndsZM }),
  };
}

function solvedRod(rod: RodOnCable, release: Place, lure: HungLure | undefined): SolvedRod {
  return {
    id: rod.id,
    release,
    lure: {
      depthM: release.depthM + (lure?.depthM ?? 0),
      behindM: release.behindM + (lure?.behindM ?? 0),
    },
    lureTensionN: lure === undefined ? 0 : lureTensionN(lure),
  };
}

function placeAt({ xM, zM }: ClimbedCable, node: number): Place {
  return { depthM: zM[node] ?? 0, behindM: xM[node] ?? 0 };
}

/** Less than this above the surface, m, is rounding. */
const SURFACE_SLACK_M = 1e-6;

function isSurfaced(
  cable: Cable,
  line: ClimbedCable,
  ball: Place,
  rods: readonly SolvedRod[],
  lures: readonly HungLure[],
): boolean {
  if (line.leastDepthM < -SURFACE_SLACK_M) return true;
  if (cable.lengthM > 0 && ball.depthM <= 0) return true;
  return rods.some((rod, i) => {
    const highestM = rod.release.depthM + (lures[i]?.leastDepthM ?? 0);
    return highestM < -SURFACE_SLACK_M || (cable.lengthM > 0 && rod.lure.depthM <= 0);
  });
}
