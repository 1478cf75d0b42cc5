import type { Downrigger, Place, RodOnCable, SolvedDownrigger, SolvedRod } from "./downrigger.ts";
import type { Cable } from "./downrigger-cable.ts";
import type { Firmness } from "./sheared-line.ts";
import type { SolvedLine } from "./towed-line.ts";

/** Reads the places of ball, probe, releases and lures off the solved cable and the solved lure lines. */
export function downriggerAnswer(
  rig: Downrigger,
  cable: Cable,
  line: SolvedLine,
  lures: readonly SolvedLine[],
  firm: Partial<Firmness> = {},
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
    ...(firm.conditioning === undefined ? {} : { conditioning: firm.conditioning }),
    ...(firm.otherEndsZM === undefined || firm.otherEndsZM.length === 0
      ? {}
      : { otherBallDepthsM: firm.otherEndsZM }),
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
