import { DOWNRIGGER_LIMITS, whyNoDownrigger } from "./check-downrigger.ts";
import { type Downrigger, type SolvedDownrigger, solveDownrigger } from "./downrigger.ts";
import { buildCable, type Cable, cableWith } from "./downrigger-cable.ts";
import { JOURNAL } from "./exactness.ts";
import { type LineOut, lineOutChecked, type OutOfReach } from "./line-out.ts";
import { lureReleaseDepthM, solveLureLineIn } from "./lure.ts";
import { refuse, whyNotInRange } from "./refusal.ts";
import type { Pull } from "./rod-line.ts";
import { rodPullIn } from "./rod-line-shear.ts";
import { type Settled, settle } from "./settle.ts";
import type { SolvedLine } from "./towed-line.ts";
import { type Water, waterAt } from "./water.ts";

/** What to set the counter to. */
interface CounterOut {
  readonly ok: true;
  /** The reading to set, m. */
  readonly outM: number;
  readonly cableOutM: number;
  /** Everything on the rig with that much out. In a stream with several shapes it may hang deeper than asked. */
  readonly solved: SolvedDownrigger;
}

/** Rounds of hanging the lures on releases that move as the cable is lengthened; two or three in shear. */
const MOST_HANGINGS = 8;
/** A release this near, as a share of the depth, to where its lure was hung for leaves the lure as it is. */
const NEAR_SHARE = 1e-4;

/**
 * The counter's reading that brings `target` to a depth (m): "ball", or the id of the rod whose lure is meant; with the rods' pulls and the
 * counter's scale and offset reckoned in. The rig's own `outM` is not looked at. Refuses what `solveDownrigger`
 * refuses, and a depth out of reach with `mostOutM` on the counter, with the deepest that is not.
 */
export function outForDepth(
  rig: Downrigger,
  target: string,
  depthM: number,
  mostOutM: number = DOWNRIGGER_LIMITS.lengthM,
): CounterOut | OutOfReach {
  const found = counterForDepth(rig, target, depthM, mostOutM);
  if (!found.ok) return withDeepest({ ...rig, outM: mostOutM }, indexOf(rig, target), found);
  const { outM, cableOutM } = found;
  const solved = solveDownrigger({ ...rig, outM });
  return solved.ok ? { ok: true, outM, cableOutM, solved } : solved;
}

/** The reading alone, and what the next depth of the same rig may start from. */
export interface CounterReadingOut {
  readonly ok: true;
  readonly outM: number;
  readonly cableOutM: number;
  readonly settled: Settled;
}

const indexOf = ({ rods }: Downrigger, target: string): number =>
  target === "ball" ? -1 : rods.findIndex((rod) => rod.id === target);

/**
 * The same without the rig as it then hangs, and without the deepest where the depth is out of reach. `from` is what a
 * near depth of the same rig was settled at: the rods' pulls start there.
 */
export function counterForDepth(
  rig: Downrigger,
  target: string,
  depthM: number,
  mostOutM: number = DOWNRIGGER_LIMITS.lengthM,
  from?: Settled,
): CounterReadingOut | OutOfReach {
  const longest = { ...rig, outM: mostOutM };
  const index = indexOf(rig, target);
  const why =
    whyNotInRange("the depth to reach", depthM, 0, DOWNRIGGER_LIMITS.lengthM, "m") ??
    whyNoDownrigger(longest) ??
    (target !== "ball" && index < 0 ? `no rod ${target} is on this cable` : undefined);
  if (why !== undefined) return refuse(why);
  const water = waterAt(rig.waterTemperatureC, rig.salinityPsu);
  if (!water.ok) return water;
  const out = cableFor(longest, index, depthM, water, from);
  if (!out.ok) return out;
  const outM = (out.lengthM - rig.counterOffsetM) / rig.counterScale;
  if (outM < 0) return refuse("it is deeper than that with the counter at zero");
  if (outM > mostOutM) return refuse("not reachable at this speed");
  return { ok: true, outM, cableOutM: out.lengthM, settled: out.settled };
}

/** A refusal with how deep the target comes with everything out. */
function withDeepest(longest: Downrigger, index: number, refusal: OutOfReach): OutOfReach {
  if (!refusal.why.startsWith("not reachable")) return refusal;
  const solved = solveDownrigger(longest);
  const place = solved.ok ? (index < 0 ? solved.ball : solved.rods[index]?.lure) : undefined;
  if (place === undefined) return refuse("not reachable at this speed");
  const deepest = `the deepest with ${longest.outM} m out is ${place.depthM.toFixed(1)} m`;
  return { ...refuse(`not reachable at this speed: ${deepest}`), deepestM: place.depthM };
}

interface CableLength {
  readonly ok: true;
  readonly lengthM: number;
  readonly settled: Settled;
}

/** The length of cable, lures hung on their releases and rods pulling on them where they come to be. */
function cableFor(
  rig: Downrigger,
  index: number,
  depthM: number,
  water: Water,
  from: Settled | undefined,
): CableLength | OutOfReach {
  const wanted = rig.rods[index];
  const targetM = wanted === undefined ? depthM : lureReleaseDepthM(wanted, rig.flow, depthM, water);
  if (typeof targetM !== "number") return targetM;
  // A first guess of the releases' depths; after that they are where the last round put them.
  let depthsM: readonly number[] = rig.rods.map((rod) =>
    Math.max(0, targetM + (wanted?.releaseAboveBallM ?? 0) - rod.releaseAboveBallM),
  );
  let start = from?.point.length === 2 * rig.rods.length ? from : undefined;
  for (let hanging = 1; ; hanging++) {
    const lures: SolvedLine[] = [];
    for (const [i, rod] of rig.rods.entries()) {
      const lure = solveLureLineIn(rod, rig.flow, depthsM[i] ?? 0, water, JOURNAL.tolerance);
      if (!lure.ok) return lure;
      lures.push(lure);
    }
    const cable = buildCable(withoutProbe(rig), water);
    const node = wanted === undefined ? cable.segments.length : (cable.releaseNodes[index] ?? 0);
    const settled = settleOut(rig, cable, lures, { node, depthM: targetM }, water, start);
    if (!settled.ok) return settled;
    start = settled.settled;
    const now = settled.depthsM;
    const moved = now.reduce((most, at, i) => Math.max(most, Math.abs(at - (depthsM[i] ?? 0))), 0);
    if (rig.flow.type === "uniform" || moved <= NEAR_SHARE * Math.max(1, depthM) || hanging >= MOST_HANGINGS)
      return settled;
    depthsM = now;
  }
}

/** The probe has no weight of its own, and may be above the water while the ball is let down. */
function withoutProbe(rig: Downrigger): Downrigger {
  const { probeAboveBallM: _, ...rest } = rig;
  return rest;
}

interface SettledOut extends CableLength {
  readonly depthsM: readonly number[];
}

/** Lets out cable until target and rods' pulls, which depend on where the releases are, agree. */
function settleOut(
  rig: Downrigger,
  cable: Cable,
  lures: readonly SolvedLine[],
  target: { readonly node: number; readonly depthM: number },
  water: Water,
  from: Settled | undefined,
): SettledOut | OutOfReach {
  const pulls: Pull[] = rig.rods.map(() => ({ forceXN: 0, forceZN: 0 }));
  let out: LineOut | OutOfReach = refuse("the cable was never solved");
  const solveInto = (to: Float64Array): boolean => {
    out = lineOutChecked(
      cableWith(cable, lures, pulls),
      water,
      rig.flow,
      target,
      SURFACE,
      cable.lengthM,
      JOURNAL.tolerance,
    );
    if (out.ok) readReleases(cable, out, to);
    return out.ok;
  };
  const start = from ?? { point: new Float64Array(2 * rig.rods.length) };
  if (from === undefined && !solveInto(start.point)) return out;
  const scaleM = Math.max(target.depthM, 1);
  const settled = settle(
    (places, to) => {
      for (const [i, rod] of rig.rods.entries()) {
        const pull = pulls[i];
        if (pull === undefined || rod.rodLine === undefined) continue;
        const depthM = Math.max(0, places[2 * i + 1] ?? 0);
        rodPullIn(pull, rod.rodLine, places[2 * i] ?? 0, depthM, rig.flow, water);
      }
      return solveInto(to);
    },
    start,
    JOURNAL.share * scaleM,
    0.5 * scaleM,
  );
  if (!out.ok) return out;
  if (!settled.reached) return refuse("the pull of the rods could not be settled");
  const { point } = settled;
  const depthsM = rig.rods.map((_, i) => point[2 * i + 1] ?? 0);
  return { ok: true, lengthM: topNodeAlong(out), settled, depthsM };
}

const SURFACE = { xM: 0, zM: 0 };

/** The whole cable: metres from the top to the lower end. */
function topNodeAlong(out: LineOut): number {
  return out.nodesFromEnd[0]?.alongM ?? out.lengthM;
}

function readReleases(cable: Cable, out: LineOut, to: Float64Array): void {
  const last = out.nodesFromEnd.length;
  for (let i = 0; 2 * i < to.length; i++) {
    const node = out.nodesFromEnd[last - (cable.releaseNodes[i] ?? 0)];
    to[2 * i] = node?.xM ?? 0;
    to[2 * i + 1] = node?.zM ?? 0;
  }
}
