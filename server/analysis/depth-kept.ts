/** Depths kept with their lines: an edit leaves those whose setting, speed, water and bottom stay as they were. */
import type { FactLine } from "../../grammar/journal.ts";
import type { Gear } from "../model/gear-types.ts";
import type { CableSpread } from "../model/timeline.ts";
import type { DepthMemo } from "./depth-memo.ts";
import type { LineDepth } from "./line-depth.ts";
import type { SpeedUsed } from "./speed-used.ts";
import type { DepthBase } from "./without-depth.ts";

/** What a line's depth is computed from besides the line and what its base says. */
export interface DepthInputs {
  readonly gear: Gear;
  readonly memo: DepthMemo;
  /** The rods on the same cable. */
  readonly rods: CableSpread | undefined;
  /** A fish tripped the diver before. */
  readonly isTripped: boolean;
}

interface KnownDepth {
  readonly inputs: DepthInputs;
  readonly depth: LineDepth;
}

/** Of each line, by rig: a sounder's line has every rig that is out above it. */
const knownDepths = new WeakMap<FactLine, Map<string, KnownDepth>>();

/** The depth that the line had where all it leans on has the same values, else what `compute` gives. */
export function depthKept(base: DepthBase, inputs: DepthInputs, compute: () => LineDepth): LineDepth {
  const ofLine = knownDepths.get(base.event.line) ?? new Map<string, KnownDepth>();
  const known = ofLine.get(base.rig);
  if (known !== undefined && isSameInputs(known.inputs, inputs) && isSameBase(known.depth, base))
    return { ...known.depth, ...base };
  const depth = compute();
  knownDepths.set(base.event.line, ofLine.set(base.rig, { inputs, depth }));
  return depth;
}

function isSameInputs(one: DepthInputs, other: DepthInputs): boolean {
  return (
    one.gear === other.gear &&
    one.memo === other.memo &&
    one.rods === other.rods &&
    one.isTripped === other.isTripped
  );
}

/** Speed, water and bottom by their numbers: where those were read makes no difference to the depth. */
function isSameBase(one: DepthBase, other: DepthBase): boolean {
  return (
    one.rig === other.rig &&
    one.setting === other.setting &&
    one.cableRig === other.cableRig &&
    (one.event.instant === null) === (other.event.instant === null) &&
    isSameSpeed(one.speed, other.speed) &&
    one.water?.tempC === other.water?.tempC &&
    one.bottom?.waterM === other.bottom?.waterM
  );
}

/** True for speeds that a depth can't tell apart. */
export function isSameSpeed(one: SpeedUsed | undefined, other: SpeedUsed | undefined): boolean {
  if (one === undefined || other === undefined) return one === other;
  return (
    one.value === other.value &&
    one.sdMS === other.sdMS &&
    one.depthM === other.depthM &&
    one.layer?.topM === other.layer?.topM &&
    one.layer?.bottomM === other.layer?.bottomM &&
    isSameSpeed(one.onTop, other.onTop)
  );
}
