/**
 * Which rod is fishing, interrupted or up at each minute, with what setting. Rod-hours count from `set`, `again` or
 * `change` done to strike, catch, lost, broke or pull. Raising a ball interrupts every rod on it.
 */
import type { Setting } from "./setting.ts";
import type { TripEvent } from "./trip.ts";

/** In the water and fishing, in the water's business but not fishing (a fish on, the ball up), or out. */
export type RigState = "fishing" | "interrupted" | "up";

/** A time during which a rig stayed in one state. Instants are UTC milliseconds. */
export interface Stretch {
  readonly rig: string;
  readonly state: "fishing" | "interrupted";
  readonly fromMs: number;
  readonly toMs: number;
  /** The lure was in the water up to then: all the while it fished, with a fish on until that was in or off. */
  readonly wetToMs: number;
  readonly setting: Setting;
}

/** Something the log says that does not fit what it said before. */
export interface Anomaly {
  readonly kind: "not-in-water" | "already-set" | "waiting-again";
  readonly event: TripEvent;
  readonly rig: string;
  /** The line that put the rig in its state; undefined when the rig never was in the water. */
  readonly since: TripEvent | undefined;
}

/** A rig still in the water when the log ends. */
export interface AssumedPull {
  readonly rig: string;
  readonly since: TripEvent;
  /** Interrupted: the last fish or break-off left it out of the water, and nothing put it back. */
  readonly state: "fishing" | "interrupted";
}

/** A line that put a rig in a state, or gave its state another reason. */
export interface StateChange {
  readonly rig: string;
  readonly state: RigState;
  readonly because: TripEvent;
}

/** A rod on a cable: its setting, and whether its line is clipped to the release just then. */
export interface RodOnSpread {
  readonly setting: Setting;
  readonly isClipped: boolean;
}

/** The rods on one cable by rig name; the rig that carries the ball is always among them. */
export type CableSpread = ReadonlyMap<string, RodOnSpread>;

/** What the day did with the rigs. */
export interface Timeline {
  readonly stretches: readonly Stretch[];
  readonly anomalies: readonly Anomaly[];
  readonly assumedPulls: readonly AssumedPull[];
  /** When rigs never pulled are taken to be out: the return, else the last clock time. Null without any. */
  readonly endMs: number | null;
  /** The setting of a line's rig just after that line, by line index. */
  readonly settingAfter: ReadonlyMap<number, Setting>;
  /** The rods on the same cable just after a line, by line index. */
  readonly spreadAfter: ReadonlyMap<number, CableSpread>;
  /** Every rig in the water just after a line that puts one in or moves it, a turn or a sounding, by line index. */
  readonly wetAfter: ReadonlyMap<number, CableSpread>;
  /** Changes of the rigs' states, in the order of time. */
  readonly changes: readonly StateChange[];
  /** Events in the order of time; lines without a clock, or slipped by half a day or a day, stay where they are. */
  readonly ordered: readonly TripEvent[];
}
