import type { Downrigger, RodOnCable, SolvedDownrigger } from "./downrigger.ts";
import { downriggerAnswer } from "./downrigger-answer.ts";
import { buildCable, type Cable, cableWith } from "./downrigger-cable.ts";
import { uniformFlow } from "./flow-profile.ts";
import { solveLureLine } from "./lure.ts";
import { type Refusal, refuse } from "./refusal.ts";
import { type Pull, rodPull } from "./rod-line.ts";
import { type Settled, settle } from "./settle.ts";
import { SOLVER_TOLERANCE, type SolvedLine, solveChecked, type TowPoint } from "./towed-line.ts";
import { type Water, waterAt } from "./water.ts";

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

const EXACT: Exactness = { tolerance: SOLVER_TOLERANCE, share: 1e-7 };

/**
 * Solves a rig that has been checked, from a solved neighbour when there is one: the lures it has in common
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
    answer: downriggerAnswer(rig, cable, settled.line, lures),
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
