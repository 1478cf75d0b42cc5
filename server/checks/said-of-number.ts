/** Whether another check says what is odd about the number that a depth was refused for. */
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { LineDepth } from "../analysis/line-depth.ts";
import type { Setting } from "../model/setting.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import type { CheckContext } from "./check.ts";

/** True where it stands on a line of this file, or comes of the speed: those are told where they stand. */
export function isSaidOfNumber(
  { analysis }: CheckContext,
  { trip, timeline }: TripAnalysis,
  { rig, setting, event, speed, cableRig }: LineDepth,
  value: number | undefined,
): boolean {
  const rods = [...(timeline.spreadAfter.get(event.lineIndex)?.values() ?? [])];
  const settings = [setting, ...rods.map((rod) => rod.setting)];
  if (value === undefined) {
    const isSlow = (speed?.value ?? 0) < thresholdOf(trip.gear, THRESHOLDS.slowTroll);
    return (
      isSlow ||
      settings.some((one) => isAboveWater(one, cableRig && rodOf(timeline, event.lineIndex, cableRig.name)))
    );
  }
  const isOfDay = settings.some((one) => lengthsOf(one).includes(value)) || speed?.depthM === value;
  return isOfDay || trip.gear.rigs.get(rig)?.origin.uri === analysis.uri;
}

function rodOf(timeline: TripAnalysis["timeline"], lineIndex: number, rig: string): Setting | undefined {
  return timeline.spreadAfter.get(lineIndex)?.get(rig)?.setting;
}

function isAboveWater({ outM, aboveM }: Setting, own: Setting | undefined): boolean {
  return (outM ?? 1) <= 0 || (aboveM ?? 0) >= (own?.outM ?? Number.POSITIVE_INFINITY);
}

function lengthsOf({
  outM,
  aboveM,
  setbackM,
  boardM,
  leaderM,
  sliderFixedM,
}: Setting): (number | undefined)[] {
  return [outM, aboveM, setbackM, boardM, leaderM, sliderFixedM];
}
