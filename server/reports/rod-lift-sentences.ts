/** What the pull of the rods does to a ball, where it is much; solved anew, so only for whoever asks. */
import type { TripAnalysis } from "../analysis/journal-analysis.ts";
import type { LineDepth } from "../analysis/line-depth.ts";
import { lengthWords } from "../model/figures.ts";

/** Less than this, m, is not worth a sentence (judgement). */
const MUCH_M = 1.5;

/** `The rod's pull lifts the ball about 8 ft.` Nothing where it is little. */
export function rodLiftSentences(day: TripAnalysis, depth: LineDepth): string[] {
  const lift = day.rodLift(depth);
  if (lift === undefined || lift.byM < MUCH_M) return [];
  const whose =
    lift.rods.length === 1 ? "The rod's pull lifts" : `The pull of ${lift.rods.join(" and ")} lifts`;
  return [`${whose} the ball about ${lengthWords(day.trip.gear, lift.byM)}.`];
}
