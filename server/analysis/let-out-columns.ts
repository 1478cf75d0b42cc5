/** The figures of a let-out table: each line at each depth. */
import type { Calibration, Gear } from "../model/gear-types.ts";
import { cableRigOf } from "../model/trip.ts";
import { calibrationOf } from "./calibration-used.ts";
import type { DepthMemo } from "./depth-memo.ts";
import type { WaterAndSpeed } from "./downrigger-input.ts";
import { type LetOut, type LetOutAsked, type LineToSet, letOutAsker } from "./let-out.ts";

/** One line's column. */
export interface LetOutColumn {
  readonly line: LineToSet;
  /** In the order of the depths. */
  readonly cells: readonly LetOut[];
  /** What the rig, or its line, was checked against. */
  readonly calibration: Calibration | undefined;
}

/** A column for each line; the water may differ with the depth that the speed is stated for. */
export function letOutColumns(
  lines: readonly LineToSet[],
  depthsM: readonly number[],
  waterFor: (depthM: number) => WaterAndSpeed,
  memo: DepthMemo,
): LetOutColumn[] {
  const waters = depthsM.map(waterFor);
  return lines.map((line) => {
    // The water is mostly the same for all depths, and then what they have in common is worked out once.
    const askers = new Map<string, LetOutAsked>();
    const askerIn = (water: WaterAndSpeed): LetOutAsked => {
      const key = JSON.stringify(water);
      const known = askers.get(key) ?? letOutAsker(line, water, memo);
      askers.set(key, known);
      return known;
    };
    const cells = depthsM.map((depthM, i) => askerIn(waters[i] ?? waterFor(depthM))(depthM));
    return { line, cells, calibration: calibrationOfLine(line) };
  });
}

function calibrationOfLine({ gear, rig }: LineToSet): Calibration | undefined {
  const checked = cableRigOf(gear, rig.name) ?? rig;
  const own = calibrationOf(gear, checked);
  return own ?? (checked.kind === "downrigger" ? undefined : ofCable(gear, rig.cable));
}

/** What was weighed or fitted of a long line, while that line is on. */
function ofCable(gear: Gear, name = ""): Calibration | undefined {
  const calibration = gear.calibrations.get(name);
  const since = gear.cables.get(name)?.origin.from ?? "";
  return since > (calibration?.origin.from ?? "") ? undefined : calibration;
}
