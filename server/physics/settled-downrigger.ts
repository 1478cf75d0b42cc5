import { climbLure, type HungLure, unhungLure } from "./climb-rig.ts";
import type { Downrigger, RodOnCable, SolvedDownrigger } from "./downrigger.ts";
import { downriggerAnswer } from "./downrigger-answer.ts";
import { cableWith } from "./downrigger-cable.ts";
import { type Exactness, JOURNAL } from "./exactness.ts";
import { isSameFlow } from "./flow-profile.ts";
import { entriesIn, firstGuess, type HangingRig, hangingRig, hangOnce, placesIn } from "./hanging-rig.ts";
import { lureLineOf } from "./lure.ts";
import { type Refusal, refuse } from "./refusal.ts";
import type { Settled } from "./settle.ts";
import { settleFrom, settleHard, spanM } from "./settle-rig.ts";
import { type Firmness, firmness } from "./sheared-line.ts";
import type { TowedLine, TowPoint } from "./towed-line.ts";
import { type Water, waterAt } from "./water.ts";

export type { Exactness } from "./exactness.ts";

/** A solved downrigger with what a neighbouring one can start from. */
export interface SettledDownrigger {
  readonly ok: true;
  readonly answer: SolvedDownrigger;
  readonly rig: Downrigger;
  readonly lures: readonly HungLure[];
  readonly settled: Settled;
}

/**
 * Solves a rig that has been checked, from a solved neighbour when there is one: the lures it has in common
 * are taken over, and its rods' pulls are where the settling starts. A release above the water counts as at the
 * surface here, so that a band's short side still has an answer. In a sheared stream the lures' pulls follow
 * their releases' depths, so cable and lures are settled together. Where a neighbour gives the start the lures stay
 * hung at its depths: by a release some feet higher a lure's own drop changes by a hundredth.
 */
export function solveSettled(
  rig: Downrigger,
  solved?: SettledDownrigger,
  exactness: Exactness = JOURNAL,
): SettledDownrigger | Refusal {
  const water = waterAt(rig.waterTemperatureC, rig.salinityPsu);
  if (!water.ok) return water;
  const neighbour = solved?.rig.flow.type === rig.flow.type ? solved : undefined;
  const hung = hangLures(rig, water, neighbour, exactness.tolerance);
  if (!hung.ok) return hung;
  const hanging = hangingRig(rig, water, hung.lures, hung.lines, exactness.tolerance);
  const near = neighbour?.settled;
  const start = near?.point.length === entriesIn(hanging) ? near : firstGuess(hanging);
  const withinM = exactness.share * spanM(hanging);
  const quick = settleFrom(hanging, start, withinM);
  const found = quick.reached ? quick : settleHard(hanging, start, withinM);
  if (hanging.why !== undefined) return refuse(hanging.why);
  if (!found.reached) return refuse("the pull of the rods could not be settled");
  const isFirst = hanging.isSheared && neighbour === undefined;
  const { settled, firm } = isFirst
    ? deepestOf(hanging, found, withinM)
    : { settled: found, firm: undefined };
  const answer = downriggerAnswer(rig, hanging.cable, hanging.climbed, hung.lures, firm);
  return { ok: true, answer, rig, lures: hung.lures, settled: withoutLures(settled, hanging) };
}

const SURFACE: TowPoint = { xM: 0, zM: 0 };

function firmnessOf({ cable, lures, pulls, water, flow, climbed }: HangingRig): Firmness {
  const line = cableWith(cable, lures, pulls);
  const endZM = climbed.zM[cable.segments.length] ?? 0;
  return firmness(line, water, flow, SURFACE, endZM, climbed.missM);
}

/**
 * The deepest steady shape of a rig in a sheared stream, from one already found, and how firm it is. The pulls are
 * those of the shape found, so a deeper one is settled anew before it is judged.
 */
function deepestOf(
  hanging: HangingRig,
  found: Settled,
  withinM: number,
): { readonly settled: Settled; readonly firm: Firmness } {
  const firm = firmnessOf(hanging);
  const { climbed, cable } = hanging;
  const ballZM = (): number => climbed.zM[cable.segments.length] ?? 0;
  const foundM = ballZM();
  const deeperM = firm.otherEndsZM.findLast((endZM) => endZM > foundM);
  if (deeperM === undefined) return { settled: found, firm };
  const from = found.point.slice();
  from[placesIn(hanging)] = deeperM;
  const point = new Float64Array(from.length);
  const again = hangOnce(hanging, from, point) ? settleFrom(hanging, { point }, withinM) : undefined;
  if (again?.reached && ballZM() >= foundM) return { settled: again, firm: firmnessOf(hanging) };
  hangOnce(hanging, found.point, point);
  return { settled: found, firm: { ...firm, otherEndsZM: [] } };
}

/** What a neighbour starts from, which takes the lures as they hang here. */
function withoutLures(settled: Settled, hanging: HangingRig): Settled {
  const whole = settled.point.length;
  const n = whole - hanging.lureLines.length;
  if (n === whole) return settled;
  const inverse = new Float64Array(n * n);
  for (let i = 0; i < n; i++) inverse.set(settled.inverse.subarray(i * whole, i * whole + n), i * n);
  return { ...settled, point: settled.point.slice(0, n), inverse };
}

/** Lures as they hang, and the lines of those that are to be hung along with the cable. */
interface Lures {
  readonly ok: true;
  readonly lures: readonly HungLure[];
  readonly lines: readonly TowedLine[];
}

/** Hangs each lure that does not wait for its cable: in a uniform stream, or at the depth it had on a neighbour. */
export function hangLures(
  rig: Downrigger,
  water: Water,
  neighbour: SettledDownrigger | undefined,
  tolerance: number,
): Lures | Refusal {
  if (rig.flow.type !== "uniform" && neighbour === undefined)
    return {
      ok: true,
      lures: rig.rods.map(unhungLure),
      lines: rig.rods.map((rod) => lureLineOf(rod, water)),
    };
  const isSameWater = neighbour !== undefined && isInSameWater(rig, neighbour.rig);
  const lures: HungLure[] = [];
  for (const [i, rod] of rig.rods.entries()) {
    const near = neighbour?.lures[i];
    if (near !== undefined && isSameWater && isSameLine(rod, neighbour?.rig.rods[i])) {
      lures.push(near);
      continue;
    }
    const lure = unhungLure();
    const why = climbLure(lure, lureLineOf(rod, water), water, rig.flow, near?.endZM ?? 0, tolerance);
    if (why !== undefined) return refuse(why);
    lures.push(lure);
  }
  return { ok: true, lures, lines: [] };
}

function isInSameWater(one: Downrigger, other: Downrigger): boolean {
  return (
    isSameFlow(other.flow, one.flow) &&
    other.waterTemperatureC === one.waterTemperatureC &&
    other.salinityPsu === one.salinityPsu
  );
}

function isSameLine(one: RodOnCable, other: RodOnCable | undefined): boolean {
  return one.lureLine === other?.lureLine && one.lure === other.lure && one.setbackM === other.setbackM;
}
