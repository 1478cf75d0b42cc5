/** Lines that were clear of the bottom when they went out, and no longer are where the bottom came up under them. */
import { hasWord } from "../model/quantities.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { isOutOfOrder, meantMs } from "../model/time-order.ts";
import type { CableSpread, RodOnSpread, Timeline } from "../model/timeline.ts";
import { ALL_RIGS, cableRigOf, propertiesOf, type Trip, type TripEvent } from "../model/trip.ts";
import { deepestInM } from "../physics/deepest-in-stream.ts";
import type { FlowProfile } from "../physics/flow-profile.ts";
import { bottomAt } from "./bottom.ts";
import { type DepthSources, depthSolver, type LineDepth, type RigAtLine } from "./line-depth.ts";
import { nearBottom } from "./near-bottom.ts";
import { once } from "./once.ts";
import { streamOf } from "./stream-used.ts";
import { tripSpeed } from "./trip-speed.ts";

/** A reading of the bottom, and the lines that it finds too near. */
export interface Shoal {
  readonly event: TripEvent;
  /** Depth of the water, m, and the sounder's reading. */
  readonly waterM: number;
  readonly shownM: number;
  readonly lines: readonly [ShoaledLine, ...ShoaledLine[]];
}

/** A rig over a shoal. */
interface ShoaledLine {
  /** The one with the ball, where it is the ball that is near. */
  readonly rig: string;
  readonly what: "ball" | "lure";
  /** The line that let it out. */
  readonly putOut: TripEvent;
  /** As deep as it hangs at the reading's minute, m, and no deeper than the bottom. */
  readonly depthM: number;
  readonly isStopped: boolean;
}

/** A counter may read that much short, and a lure may dive that much below its ball, m (judgement). */
const COUNTER_TIMES = 1.1;
const DIVES_M = 10;
/** Whoever reads the bottom coming up and moves the line within that time has seen to it (judgement). */
const SEEN_TO_MS = 5 * 60_000;
/** Nobody writes more lines in that time. */
const MOST_LINES = 100;
const SEES_TO = new Set(["set", "move", "again", "pull"]);

/**
 * Every reading of the bottom that finds lines too near; each rig once until it is set or moved. A rig that is moved or
 * pulled right after the reading is left out.
 */
export function shoalsOf(
  trip: Trip,
  timeline: Timeline,
  depths: readonly LineDepth[],
  sources: DepthSources,
): Shoal[] {
  if (propertiesOf(trip, "method").some((line) => hasWord(line, "deep"))) return [];
  const walk = new ShoalWalk(trip, timeline, depths, sources);
  return timeline.ordered.flatMap((event, index) => walk.take(event, index) ?? []);
}

/** A rig's line as it is out. */
interface Out {
  readonly putOut: TripEvent;
  /** How it hung when it was let out. */
  readonly hung: LineDepth;
  /** The least water it has been over since, m. */
  shallowestM: number;
  isTold: boolean;
}

class ShoalWalk {
  readonly #trip: Trip;
  readonly #timeline: Timeline;
  readonly #sources: DepthSources;
  readonly #marginM: number;
  readonly #depths: ReadonlyMap<TripEvent, LineDepth>;
  readonly #out = new Map<string, Out>();
  /** Downriggers whose ball was told; it hangs there for every rod on it. */
  readonly #toldBalls = new Set<string>();
  #solve: ((rig: RigAtLine) => LineDepth) | undefined;
  #speedAt: ReturnType<typeof tripSpeed> | undefined;

  constructor(trip: Trip, timeline: Timeline, depths: readonly LineDepth[], sources: DepthSources) {
    this.#trip = trip;
    this.#timeline = timeline;
    this.#sources = sources;
    this.#marginM = thresholdOf(trip.gear, THRESHOLDS.touchingBottom);
    this.#depths = new Map(depths.map((depth) => [depth.event, depth]));
  }

  /** The event that is `index` in the order of time. */
  take(event: TripEvent, index: number): Shoal | undefined {
    const depth = this.#depths.get(event);
    if (depth !== undefined) this.#putOut(depth);
    return event.line.verb === "sonar" ? this.#sound(event, index) : undefined;
  }

  /** What is said of a line as it goes out is not said again. */
  #putOut(depth: LineDepth): void {
    const { rig, event: putOut, bottom, cableRig } = depth;
    const near = nearBottom(depth, this.#marginM);
    this.#out.set(rig, {
      putOut,
      hung: depth,
      shallowestM: bottom?.waterM ?? Number.POSITIVE_INFINITY,
      isTold: near !== undefined,
    });
    if (rig !== cableRig?.name) return;
    if (near === "ball") this.#toldBalls.add(rig);
    else this.#toldBalls.delete(rig);
  }

  #sound(event: TripEvent, index: number): Shoal | undefined {
    const timeMs = meantMs(this.#trip, event);
    const bottom = timeMs === null ? undefined : bottomAt(this.#trip, timeMs, this.#sources.bottomHeldMs);
    const wet = this.#timeline.wetAfter.get(event.lineIndex);
    if (timeMs === null || bottom?.event !== event || wet === undefined) return undefined;
    const nearM = bottom.waterM - this.#marginM;
    const flow = once(() => this.#flowAt(timeMs));
    const [first, ...others] = [...wet].flatMap(([rig, rod]) => {
      const out = this.#out.get(rig);
      if (out === undefined || out.isTold || bottom.waterM >= out.shallowestM) return [];
      out.shallowestM = bottom.waterM;
      const rods = rodsOnCable(this.#trip, rig, wet);
      const isAsked = rod.isClipped && !rod.setting.onBottom && !isOutOfOrder(this.#trip, rig);
      if (!isAsked || mostReachM(rod, rods) < nearM) return [];
      if (!this.#hasPlug(rod) && deepestNowM(out.hung, rod, flow) < nearM) return [];
      return this.#look(out, { event, rig, setting: rod.setting, rods }, index) ?? [];
    });
    const { waterM, shownM } = bottom;
    return first === undefined ? undefined : { event, waterM, shownM, lines: [first, ...others] };
  }

  #hasPlug({ setting }: RodOnSpread): boolean {
    return this.#trip.gear.lures.get(setting.lure ?? "")?.kind === "plug";
  }

  #flowAt(timeMs: number): FlowProfile | undefined {
    this.#speedAt ??= tripSpeed(this.#trip, this.#sources.ages);
    const speed = this.#speedAt(timeMs);
    return speed && streamOf(speed).flow;
  }

  /** A rig at the reading's minute. */
  #look(out: Out, at: RigAtLine, index: number): ShoaledLine | undefined {
    this.#solve ??= depthSolver(this.#trip, this.#timeline, this.#sources);
    const depth = this.#solve(at);
    const cable = depth.cableRig?.name;
    const isBallTold = cable !== undefined && this.#toldBalls.has(cable);
    const what = nearBottom(isBallTold ? { ...depth, ball: null } : depth, this.#marginM);
    const place = what === undefined ? null : depth[what];
    if (what === undefined || place === null) return undefined;
    const isBall = what === "ball" && cable !== undefined;
    if (this.#isSeenTo(isBall ? cable : at.rig, at.event, index)) return undefined;
    if (isBall) this.#toldBalls.add(cable);
    out.isTold = true;
    const rig = isBall ? cable : at.rig;
    const putOut = this.#out.get(rig)?.putOut ?? out.putOut;
    return { rig, what, putOut, depthM: place.depthM, isStopped: place.onBottom };
  }

  #isSeenTo(rig: string, reading: TripEvent, index: number): boolean {
    const untilMs = (meantMs(this.#trip, reading) ?? 0) + SEEN_TO_MS;
    const { ordered } = this.#timeline;
    for (const event of ordered.slice(index + 1, index + 1 + MOST_LINES)) {
      if ((meantMs(this.#trip, event) ?? untilMs) > untilMs) return false;
      if (SEES_TO.has(event.line.verb) && (event.rig === rig || event.rig === ALL_RIGS)) return true;
    }
    return false;
  }
}

/** No deeper than that hangs anything of a rig, m; cheaper than solving it. */
function mostReachM(rod: RodOnSpread, rods: CableSpread | undefined): number {
  const lengths = [rod, ...(rods?.values() ?? [])].map(({ setting }) => setting.outM ?? 0);
  return COUNTER_TIMES * Math.max(...lengths) + DIVES_M;
}

/** The same of a line that is on no downrigger and has no diver, by how deep it hung in the stream it was let out in. */
function deepestNowM(
  { cableRig, setting, speed, lure, weight, weightIs }: LineDepth,
  rod: RodOnSpread,
  flow: () => FlowProfile | undefined,
): number {
  const isAlike = cableRig === undefined && weightIs !== "diver" && setting === rod.setting;
  if (!isAlike || speed === undefined || lure === null || lure.onBottom || weight?.onBottom === true)
    return Number.POSITIVE_INFINITY;
  const now = flow();
  if (now === undefined) return Number.POSITIVE_INFINITY;
  return deepestInM(Math.max(lure.depthM, weight?.depthM ?? 0), streamOf(speed).flow, now);
}

/** The rods on a rig's cable; the one that carries the ball is among them, whether it fishes or not. */
function rodsOnCable({ gear }: Trip, rig: string, wet: CableSpread): CableSpread | undefined {
  const cable = cableRigOf(gear, rig)?.name;
  if (cable === undefined) return undefined;
  const isOn = ([name, rod]: readonly [string, RodOnSpread]): boolean =>
    name === cable || (rod.isClipped && cableRigOf(gear, name)?.name === cable);
  return new Map([...wet].filter(isOn));
}
