/** What other gear of the book would do to a downrigger's depth; solved anew, so only for whoever asks. */
import type { GearChange } from "../analysis/gear-changes.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { LineDepth } from "../analysis/line-depth.ts";
import type { Gear } from "../model/gear-types.ts";
import { deeperWords } from "./deeper-words.ts";

/** One line for all changes: `finned-15 for round-12: about 2 ft deeper.` */
export function gearChangeSentences(day: TripAnalysis, depth: LineDepth): string[] {
  const words = day.gearChanges(depth).map((change) => changeWords(day.trip.gear, change));
  return words.length === 0 ? [] : [words.join(" ")];
}

function changeWords(gear: Gear, { name, instead, deeperM }: GearChange): string {
  return `${name} for ${instead}: ${deeperWords(gear, deeperM)}.`;
}
