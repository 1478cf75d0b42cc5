import type { Exactness } from "./exactness.ts";
import { underwaterFlow } from "./flow-profile.ts";
import { JOINT_NODE, type LongLine, lineInWaterM, solveLongLineNear, towedLineOf } from "./long-line.ts";
import { solveFromEnd } from "./sheared-line.ts";
import { type Water, waterAt } from "./water.ts";

/** The depths of a long line's joint and lure, m. */
export interface LineDepths {
  readonly jointM: number;
  readonly lureM: number;
}

/** Where a line beside a solved one hangs; `guessM` is how deep its lure may be, if not as deep as the solved one. */
export type SolveLineNear = (line: LongLine, exactness: Exactness, guessM?: number) => LineDepths | undefined;

/** The lure is taken to hang by this share of the line elsewhere to see what answers. */
const MOVED_SHARE = 5e-3;
/**
 * What may be left to be told by how the solved line answers, and how far it may be told from, as shares of the line: a
 * neighbour answers otherwise by some fifth, and by some hundredths of how far it is off.
 */
const LEFT_SHARE = 1e-4;
const STEP_SHARE = 5e-3;
/** A line that answers by more than this share of a miss answers otherwise as soon as it is moved. */
const MOST_ANSWER = 0.25;
const MOST_CLIMBS = 3;

/**
 * Solves lines that differ a little from a solved one by a climb or two each: in a uniform stream one is enough; in shear
 * how far it ends from the depth it was begun at is little, and how the solved line answers to such a miss, which is looked
 * up once, tells the rest. A line for which that doesn't hold is solved by itself.
 */
export function lineNeighboursOf(centre: LongLine, depths: LineDepths): SolveLineNear {
  const water = waterAt(centre.waterTemperatureC, centre.salinityPsu);
  let answers: LineDepths | undefined;
  return (line, { tolerance }, guessM = depths.lureM) => {
    if (!water.ok) return undefined;
    const { mainM, backingM } = lineInWaterM(line);
    const lengthM = mainM + backingM;
    answers ??= answersOf(centre, depths, water, tolerance);
    if (Math.abs(answers.lureM) > MOST_ANSWER) return settledNear(line, depths.lureM, tolerance);
    let atM = guessM;
    for (let climb = 0; climb < MOST_CLIMBS; climb++) {
      const hung = climbed(line, water, atM, tolerance);
      if (hung === undefined) break;
      const stepM = line.flow.type === "uniform" ? 0 : (hung.lureM - atM) / (1 - answers.lureM);
      const [jointM, lureM] = [stepM * answers.jointM, stepM * answers.lureM];
      if (Math.abs(stepM) <= STEP_SHARE * lengthM && Math.abs(lureM) <= LEFT_SHARE * lengthM)
        return { jointM: hung.jointM + jointM, lureM: hung.lureM + lureM };
      atM += stepM;
    }
    return settledNear(line, depths.lureM, tolerance);
  };
}

/** How much each depth changes for each m that the lure is taken to hang deeper; nothing in a uniform stream. */
function answersOf(line: LongLine, depths: LineDepths, water: Water, tolerance: number): LineDepths {
  if (line.flow.type === "uniform") return { jointM: 0, lureM: 0 };
  const { mainM, backingM } = lineInWaterM(line);
  const moveM = MOVED_SHARE * (mainM + backingM);
  const moved = climbed(line, water, depths.lureM + moveM, tolerance);
  if (moved === undefined) return { jointM: 1, lureM: 1 };
  return { jointM: (moved.jointM - depths.jointM) / moveM, lureM: (moved.lureM - depths.lureM) / moveM };
}

/** One climb from a depth of the lure, moved so that its top is at the surface. */
function climbed(line: LongLine, water: Water, lureM: number, tolerance: number): LineDepths | undefined {
  const top = { xM: 0, zM: 0 };
  const hung = solveFromEnd(
    towedLineOf(line, water),
    water,
    underwaterFlow(line.flow),
    top,
    lureM,
    tolerance,
  );
  return hung.ok ? { jointM: hung.nodes[JOINT_NODE]?.zM ?? 0, lureM: hung.depthM } : undefined;
}

function settledNear(line: LongLine, lureM: number, tolerance: number): LineDepths | undefined {
  const solved = solveLongLineNear(line, lureM, tolerance);
  return solved.ok ? { jointM: solved.joint.depthM, lureM: solved.lure.depthM } : undefined;
}
