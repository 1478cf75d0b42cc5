/** Runs through a trip's events, and keeps what each rig does and how it is set after each of them. */

import { lastOrNew, spreadKept, wetKept } from "./kept-spreads.ts";
import { matchName } from "./match-name.ts";
import { findItem, hasWord, measureOf } from "./quantities.ts";
import { NO_SETTING, nextSetting, type Setting } from "./setting.ts";
import { inTimeOrder, placedMs } from "./time-order.ts";
import type {
  Anomaly,
  AssumedPull,
  CableSpread,
  RigState,
  RodOnSpread,
  StateChange,
  Stretch,
  Timeline,
} from "./timeline.ts";
import { cableRigOf, stackedOn, type Trip, type TripEvent, UNKNOWN_RIG } from "./trip.ts";

interface RigRun {
  state: RigState;
  setting: Setting;
  sinceMs: number | null;
  /** When its lure came out of the water, while the rod waits to go back; null with a fish on. */
  dryMs: number | null;
  /** The line that put it in the water. */
  since: TripEvent | undefined;
  /** The line that put it in its state. */
  because: TripEvent | undefined;
}

const STARTS = new Set(["set", "again"]);
const SPREAD_LINES = new Set(["set", "move", "again", "turn", "sonar"]);
const ENDS_FISHING = new Set(["strike", "catch", "lost", "broke"]);
/** Without a clock these are some time in the trip and change nothing. */
const BITES = new Set(["strike", "miss", "catch", "lost", "broke", "probe", "touch", "tangle"]);
const NEEDS_RIG_WET = new Set([
  "move",
  "change",
  "check",
  "pull",
  "strike",
  "miss",
  "catch",
  "lost",
  "tangle",
  "broke",
  "probe",
  "touch",
]);

/** Runs through a trip's events. */
export function buildTimeline(trip: Trip): Timeline {
  const run = new TimelineRun(trip);
  for (const event of run.ordered) run.take(event);
  return run.finish();
}

class TimelineRun {
  readonly #trip: Trip;
  readonly ordered: readonly TripEvent[];
  readonly #rigs = new Map<string, RigRun>();
  readonly #stretches: Stretch[] = [];
  readonly #anomalies: Anomaly[] = [];
  readonly #changes: StateChange[] = [];
  readonly #settingAfter = new Map<number, Setting>();
  readonly #spreadAfter = new Map<number, CableSpread>();
  readonly #wetAfter = new Map<number, CableSpread>();
  /** The latest spreads, given again while they are as they were: most lines change nothing of them. */
  #lastWet: CableSpread | undefined;
  readonly #lastSpreads = new Map<string, CableSpread>();
  readonly #return: TripEvent | undefined;
  readonly #endMs: number | null;
  #assumedPulls: AssumedPull[] | undefined;

  constructor(trip: Trip) {
    this.#trip = trip;
    this.ordered = inTimeOrder(trip);
    this.#return = this.ordered.findLast((event) => event.line.verb === "return" && event.instant !== null);
    const last = this.#return ?? this.ordered.findLast((event) => event.instant !== null);
    this.#endMs = last === undefined ? null : placedMs(trip, last);
  }

  take(event: TripEvent): void {
    const { verb } = event.line;
    if (event === this.#return) this.#assumedPulls = this.#stillIn();
    else if (verb === "pull" && event.rig === "all") this.#pullAll(event);
    else if (event.rig !== undefined && event.rig !== UNKNOWN_RIG) this.#takeRig(event, event.rig);
    if (SPREAD_LINES.has(verb)) this.#wetAfter.set(event.lineIndex, wetKept.sameOrNew(event, this.#wet()));
  }

  #wet(): CableSpread {
    const wet = new Map<string, RodOnSpread>();
    for (const [rig, run] of this.#rigs) if (run.state !== "up") wet.set(rig, rodOf(run));
    this.#lastWet = lastOrNew(this.#lastWet, wet);
    return this.#lastWet;
  }

  #takeRig(event: TripEvent, rig: string): void {
    const { verb } = event.line;
    if (event.instant === null && BITES.has(verb)) return;
    const run = this.#runOf(rig);
    const timeMs = placedMs(this.#trip, event);
    this.#doubt(event, run);
    if (STARTS.has(verb)) this.#start(event, run, timeMs);
    else if (verb === "move" || verb === "change" || verb === "check") this.#adjust(event, run, timeMs);
    else if (verb === "pull") this.#pull(rig, timeMs, event);
    else if (verb === "tangle") this.#tangle(event, timeMs);
    else if (ENDS_FISHING.has(verb)) this.#interrupt(rig, timeMs, event);
    this.#remember(event);
  }

  finish(): Timeline {
    const assumedPulls = this.#assumedPulls ?? this.#stillIn();
    for (const [rig, run] of this.#rigs) this.#close(rig, run, this.#endMs);
    return {
      stretches: this.#stretches,
      anomalies: this.#anomalies,
      assumedPulls,
      endMs: this.#endMs,
      settingAfter: this.#settingAfter,
      spreadAfter: this.#spreadAfter,
      wetAfter: this.#wetAfter,
      changes: this.#changes,
      ordered: this.ordered,
    };
  }

  #stillIn(): AssumedPull[] {
    return [...this.#rigs].flatMap(([rig, { state, since }]) =>
      state === "up" || since === undefined ? [] : [{ rig, since, state }],
    );
  }

  #runOf(rig: string): RigRun {
    const known = this.#rigs.get(rig);
    if (known !== undefined) return known;
    const fresh: RigRun = {
      state: "up",
      setting: NO_SETTING,
      sinceMs: null,
      dryMs: null,
      since: undefined,
      because: undefined,
    };
    this.#rigs.set(rig, fresh);
    return fresh;
  }

  /** Notes what does not fit: a line of a rod that is up, a set of one that fishes, a strike on one not put back. */
  #doubt(event: TripEvent, run: RigRun): void {
    const { verb } = event.line;
    if (event.rig === undefined) return;
    const note = (kind: Anomaly["kind"]): void => {
      this.#anomalies.push({ kind, event, rig: event.rig ?? "", since: run.because });
    };
    if (run.state === "up" && NEEDS_RIG_WET.has(verb)) note("not-in-water");
    else if (run.state === "fishing" && verb === "set") note("already-set");
    else if (run.state === "interrupted" && isStrikeOnIdleRod(event, run.because)) note("waiting-again");
    else if (run.state === "interrupted" && isFishOnRaisedBall(event, run.because)) note("waiting-again");
  }

  #start(event: TripEvent, run: RigRun, timeMs: number | null): void {
    const rig = event.rig ?? "";
    const carried = event.line.verb === "again" ? run.setting : NO_SETTING;
    this.#close(rig, run, timeMs);
    run.setting = nextSetting(carried, event.line, this.#trip.gear);
    Object.assign(run, { sinceMs: timeMs, since: event });
    this.#turn(rig, run, "fishing", event);
  }

  /** More out, another lure, a look at it: a stretch ends and another begins, with the time out of the water between. */
  #adjust(event: TripEvent, run: RigRun, timeMs: number | null): void {
    const rig = event.rig ?? "";
    if (run.state !== "up") {
      const rods = event.line.verb === "move" ? [rig] : this.#rodsOn(rig);
      for (const rod of rods) this.#pause(rod, event, timeMs, rod === rig && event.line.verb === "change");
    }
    run.setting = nextSetting(run.setting, event.line, this.#trip.gear);
  }

  /** Ends the stretch `down` before the line's time and starts the next at it. */
  #pause(rig: string, event: TripEvent, timeMs: number | null, isDone: boolean): void {
    const run = this.#runOf(rig);
    if (run.state === "up" || timeMs === null) return;
    const downMs = (measureOf(event.line, "down", "duration", this.#trip.gear.defaults) ?? 0) * 1000;
    const outMs = Math.max(timeMs - downMs, run.sinceMs ?? timeMs - downMs);
    this.#close(rig, run, outMs);
    if (run.state === "fishing" && outMs < timeMs) {
      const { setting } = run;
      this.#push({ rig, state: "interrupted", fromMs: outMs, toMs: timeMs, wetToMs: outMs, setting });
    }
    if (isDone && run.state !== "fishing") this.#turn(rig, run, "fishing", event, run.because);
    run.sinceMs = timeMs;
  }

  /** Crossed lines: out of the water for as long as the line says, else until `again`. */
  #tangle(event: TripEvent, timeMs: number | null): void {
    const others = event.line.items.flatMap((item) =>
      item.word === "with" && item.value.kind === "name"
        ? [matchName(this.#trip.gear.rigs, item.value.text.normalize("NFC"))]
        : [],
    );
    const isBack = findItem(event.line, "down") !== undefined;
    for (const rig of [event.rig ?? "", ...others]) {
      if (isBack) this.#pause(rig, event, timeMs, false);
      else if (this.#runOf(rig).state !== "up") this.#interrupt(rig, timeMs, event);
    }
  }

  #interrupt(rig: string, timeMs: number | null, event: TripEvent): void {
    const run = this.#runOf(rig);
    const before = run.state;
    if (before !== "interrupted") {
      this.#close(rig, run, timeMs);
      Object.assign(run, { sinceMs: timeMs, dryMs: null, since: before === "up" ? event : run.since });
    }
    if (event.line.verb !== "strike") run.dryMs ??= timeMs;
    this.#turn(rig, run, "interrupted", event);
  }

  #pull(rig: string, timeMs: number | null, event: TripEvent): void {
    const run = this.#runOf(rig);
    this.#close(rig, run, timeMs);
    this.#takeUp(rig, run, event);
    for (const rod of this.#rodsOn(rig)) {
      if (rod !== rig && this.#runOf(rod).state === "fishing") this.#interrupt(rod, timeMs, event);
    }
  }

  #pullAll(event: TripEvent): void {
    const timeMs = placedMs(this.#trip, event);
    for (const [rig, run] of this.#rigs) {
      if (run.state !== "up") this.#pull(rig, timeMs, event);
    }
    for (const [rig, run] of this.#rigs) {
      if (run.state !== "up") this.#takeUp(rig, run, event);
    }
  }

  #takeUp(rig: string, run: RigRun, event: TripEvent): void {
    Object.assign(run, { sinceMs: null, since: undefined });
    this.#turn(rig, run, "up", event);
  }

  /** Puts a rig in a state; `because` is what a later doubt about it points at. */
  #turn(
    rig: string,
    run: RigRun,
    state: RigState,
    event: TripEvent,
    because: TripEvent | undefined = event,
  ): void {
    Object.assign(run, { state, because });
    this.#changes.push({ rig, state, because: event });
  }

  /** Every rod on the same cable, when the rig carries the ball; else the rig alone. */
  #rodsOn(rig: string): string[] {
    return [rig, ...stackedOn(this.#trip.gear, rig).map((other) => other.name)];
  }

  #close(rig: string, run: RigRun, timeMs: number | null): void {
    const { state, sinceMs, dryMs, setting } = run;
    if (state === "up" || sinceMs === null || timeMs === null || timeMs <= sinceMs) return;
    const wetToMs = state === "fishing" || dryMs === null ? timeMs : Math.max(dryMs, sinceMs);
    this.#push({ rig, state, fromMs: sinceMs, toMs: timeMs, wetToMs, setting });
  }

  /** Nothing is in the water after the return, whatever a line there says. */
  #push(stretch: Stretch): void {
    const endMs = this.#endMs ?? stretch.toMs;
    const [toMs, wetToMs] = [stretch.toMs, stretch.wetToMs].map((ms) => Math.min(ms, endMs)) as [
      number,
      number,
    ];
    if (toMs > stretch.fromMs) this.#stretches.push({ ...stretch, toMs, wetToMs });
  }

  #remember(event: TripEvent): void {
    const rig = event.rig ?? "";
    this.#settingAfter.set(event.lineIndex, this.#runOf(rig).setting);
    const cableRig = cableRigOf(this.#trip.gear, rig);
    if (cableRig === undefined) return;
    const fresh = new Map<string, RodOnSpread>();
    for (const rod of this.#rodsOn(cableRig.name)) {
      const run = this.#rigs.get(rod);
      if (run !== undefined && (run.state === "fishing" || rod === cableRig.name)) fresh.set(rod, rodOf(run));
    }
    const spread = lastOrNew(this.#lastSpreads.get(cableRig.name), fresh);
    this.#lastSpreads.set(cableRig.name, spread);
    this.#spreadAfter.set(event.lineIndex, spreadKept.sameOrNew(event, spread));
  }
}

function rodOf({ setting, state }: RigRun): RodOnSpread {
  return { setting, isClipped: state === "fishing" };
}

/** A second strike, or a strike after the fish was in or off, with nothing that put the rod back between. */
function isStrikeOnIdleRod(event: TripEvent, because: TripEvent | undefined): boolean {
  if (event.line.verb !== "strike" || because === undefined) return false;
  return hasWord(event.line, "slider") === hasWord(because.line, "slider");
}

/** As long a fish may be fought that was hooked before its ball was raised out of the way (judgement). */
const LONGEST_FIGHT_MS = 30 * 60_000;
const FISH = new Set(["miss", "catch", "lost", "broke"]);

/** A fish, with no strike before, on a rod that came up with the ball it is stacked on, too long before to be of then. */
function isFishOnRaisedBall({ line, rig, instant }: TripEvent, because: TripEvent | undefined): boolean {
  const raised = because?.line.verb === "pull" && because.rig !== rig ? because.instant : null;
  if (!FISH.has(line.verb) || raised === null || instant === null) return false;
  return instant.utcMs - raised.utcMs > LONGEST_FIGHT_MS;
}
