import type { DepthPlace, LineDepth } from "../analysis/line-depth.ts";
import { hasWord } from "../model/quantities.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { propertiesOf } from "../model/trip.ts";
import { TOUCHING_BOTTOM } from "./catalog/day.ts";
import { DAY_FIXES, DAY_RELATED } from "./catalog/day-titles.ts";
import type { Fix, Rule } from "./check.ts";
import { insert } from "./edits.ts";
import { itemPlace } from "./places.ts";

/**
 * Flags a ball or lure that the model puts within the margin of the bottom. Where that is meant, only cable that is
 * far longer than the way to the bottom is flagged.
 */
export const touchingBottom: Rule = ({ analysis, report }) => {
  for (const { trip, depths } of analysis.trips) {
    const isDeep = propertiesOf(trip, "method").some((line) => hasWord(line, "deep"));
    const marginM = thresholdOf(trip.gear, THRESHOLDS.touchingBottom);
    for (const depth of depths) {
      const { bottom, setting, event } = depth;
      const what = nearBottom(depth, marginM);
      const tooMuch = tooMuchCable(depth);
      if (bottom === undefined || what === undefined) continue;
      if (tooMuch === undefined && (isDeep || setting.onBottom)) continue;
      const data = {
        gear: trip.gear,
        what,
        depthM: depth[what]?.depthM ?? 0,
        isStopped: depth[what]?.onBottom ?? false,
        tooMuch,
        bottomShownM: bottom.shownM,
        bottomAgeMs: bottom.ageMs,
      } as const;
      const read = itemPlace(bottom.event.lineIndex, bottom.event.line, "bottom");
      const related = [{ uri: analysis.uri, message: DAY_RELATED.bottom, ...read }];
      const place = itemPlace(event.lineIndex, event.line, "out");
      const fixes = tooMuch === undefined ? [isMeant(analysis.uri, depth)] : [];
      report(TOUCHING_BOTTOM, place, data, { related, fixes });
    }
  }
};

/** Cable longer than this many times the water, and some more, is never let out to reach the bottom (judgement). */
const TOO_MUCH_TIMES = 1.5;
const TOO_MUCH_MORE_M = 30 * 0.3048;

/** How much cable is out over how much water, where that is far more than a ball on the bottom takes. */
function tooMuchCable({
  ball,
  bottom,
  cableRig,
  rig,
  setting: { outM },
}: LineDepth): { outM: number; waterM: number } | undefined {
  if (ball?.onBottom !== true || cableRig?.name !== rig || bottom === undefined || outM === undefined)
    return undefined;
  const { waterM } = bottom;
  return outM > TOO_MUCH_TIMES * waterM + TOO_MUCH_MORE_M ? { outM, waterM } : undefined;
}

/** A lure's own pull is a guess: it counts only where even the high end of its range is near the bottom. */
function nearBottom({ ball, lure, bottom }: LineDepth, marginM: number): "ball" | "lure" | undefined {
  if (bottom === undefined) return undefined;
  const isNear = (place: DepthPlace | null, depthM: number | undefined): boolean =>
    place !== null && (depthM ?? 0) > bottom.waterM - marginM;
  if (isNear(ball, ball?.depthM)) return "ball";
  return isNear(lure, lure?.depthM) && isNear(lure, lure?.lowM) ? "lure" : undefined;
}

function isMeant(uri: string, { event: { line, lineIndex } }: LineDepth): Fix {
  const end = line.items.at(-1)?.stop ?? line.slots.at(-1)?.stop ?? line.verbStop;
  const edits = [insert(uri, lineIndex, end, " on-bottom")];
  return { title: DAY_FIXES.onBottom, edits, isPreferred: false };
}
