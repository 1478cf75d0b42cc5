/** What a let-out table is made for, in sentences: boat, day, speeds, lure. */
import type { Rigging } from "../analysis/lines-to-set.ts";
import type { StatedSpeeds } from "../analysis/stated-water.ts";
import { lengthWords, speedWords, tempWords } from "../model/figures.ts";
import type { Gear } from "../model/gear-types.ts";

/** `Bright Penny, gear of 2031-06-21.` and the speeds; the day is left out where any would do. */
export function statedFacts(
  gear: Gear,
  date: string | undefined,
  speeds: StatedSpeeds,
  rigging: Rigging,
): string[] {
  const day = date === undefined ? "" : `, gear of ${date}`;
  return [`${gear.boat}${day}.`, speedFact(gear, speeds), ...lureFact(gear, rigging)];
}

function speedFact(gear: Gear, { speedMS, surfaceSpeedMS, speedDepthM, waterTempC }: StatedSpeeds): string {
  const down = speedWords(gear, speedMS);
  const water = waterTempC === undefined ? "" : ` Water of ${tempWords(gear, waterTempC)}.`;
  if (surfaceSpeedMS === undefined) return `${down} at every depth.${water}`;
  const at = speedDepthM === undefined ? "down at the depth" : `at ${lengthWords(gear, speedDepthM)}`;
  return `${down} ${at}, ${speedWords(gear, surfaceSpeedMS)} on top.${water}`;
}

function lureFact(gear: Gear, { lure, setbackM, aboveM }: Rigging): string[] {
  const parts = [
    ...(lure === undefined ? [] : [lure]),
    ...(setbackM === undefined ? [] : [`${lengthWords(gear, setbackM)} behind the release`]),
    ...(aboveM === undefined ? [] : [`stacked rods ${lengthWords(gear, aboveM)} above the ball`]),
  ];
  return parts.length === 0 ? [] : [`${parts.join(", ")}.`];
}
