/** Which readings a depth did not lean on because they contradict each other, so that nobody wonders. */
import { type Contradiction, contradictionsOf } from "../analysis/contradictions.ts";
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { LineDepth } from "../analysis/line-depth.ts";
import { clockWords, lengthWords, speedWords } from "../model/figures.ts";
import { hasWord } from "../model/quantities.ts";
import { meantMs } from "../model/time-order.ts";

/** One sentence for each pair that is nearer to the line than the speed it leans on; none where all is well. */
export function contradictionSentences({ trip, ages }: TripAnalysis, { event, speed }: LineDepth): string[] {
  const timeMs = meantMs(trip, event);
  if (timeMs === null) return [];
  const reachMs = Math.min(ages.unusedAfterMs, Math.max(speed?.ageMs ?? Number.POSITIVE_INFINITY, 0));
  return contradictionsOf(trip).flatMap((pair) => {
    if (Math.abs(pair.timeMs - timeMs) > reachMs) return [];
    const { gear, zone } = trip;
    const words = pair.of === "speed" ? speedWords : lengthWords;
    const [first, second] = [words(gear, pair.firstValue), words(gear, pair.secondValue)];
    const clock = clockWords(pair.timeMs, zone);
    if (hasWord(pair.first.line, "sure"))
      return [`Left out: ${second} ${whereOf(pair)}, read ${clock}; ${first} of that minute is sure.`];
    if (hasWord(pair.second.line, "sure"))
      return [`Left out: ${first} ${whereOf(pair)}, read ${clock}; ${second} of that minute is sure.`];
    return [`Left out: ${first} and ${second} ${whereOf(pair)}, both read ${clock}.`];
  });
}

function whereOf({ second: { line, rig } }: Contradiction): string {
  if (line.verb === "gps") return "over ground";
  return line.verb === "surface" ? "on top" : `at ${rig ?? "the"}'s probe`;
}
