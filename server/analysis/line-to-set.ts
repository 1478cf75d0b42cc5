/** A line that is to be set, and what every kind of rig answers about the length that brings it to a depth. */
import type { Gear, Rig } from "../model/gear-types.ts";
import type { Setting } from "../model/setting.ts";
import type { CableSpread } from "../model/timeline.ts";
import type { CounterReading } from "./counter-reading.ts";
import type { DepthPlace } from "./depth-place.ts";
import type { NoTask } from "./no-task.ts";

/** A line to be set: its rig with what is on it, and what hangs on the same cable. */
export interface LineToSet {
  readonly gear: Gear;
  readonly rig: Rig;
  readonly setting: Setting;
  /** The rods on the rig's cable; `undefined` for a rig on no downrigger. */
  readonly rods: CableSpread | undefined;
}

/** What is brought to the depth. */
export type TargetOf = "lure" | "ball";

/** One kind of rig, asked both ways. Lengths and depths in m. */
export interface Invertible {
  readonly ok: true;
  readonly of: TargetOf;
  readonly mostM: number;
  /** The length for a depth; `undefined` where it is out of reach. */
  lengthFor(
    depthM: number,
  ): { readonly ok: true; readonly outM: number } | { ok: false; why: string } | undefined;
  /** The depth at a length, without its band. */
  depthAt(outM: number): number | undefined;
  /** The same as it is shown. */
  placeAt(reading: CounterReading): DepthPlace | NoTask;
}

/** What there is to let out at most where the book states no `holds`, m: 600 ft of cable, 1000 ft of line (judgement). */
export const MOST_OUT_M = { cable: 182.88, line: 304.8 } as const;
