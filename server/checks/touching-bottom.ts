import type { LineDepth } from "../analysis/line-depth.ts";
import { nearBottom } from "../analysis/near-bottom.ts";
import type { Shoal } from "../analysis/shoals.ts";
import { hasWord } from "../model/quantities.ts";
import { THRESHOLDS, thresholdOf } from "../model/thresholds.ts";
import { propertiesOf, type Trip } from "../model/trip.ts";
import { TOUCHING_BOTTOM } from "./catalog/day.ts";
import { DAY_FIXES, DAY_RELATED } from "./catalog/day-titles.ts";
import type { CheckContext, Fix, Rule } from "./check.ts";
import { insert } from "./edits.ts";
import { itemPlace } from "./places.ts";

/**
 * Flags a ball or lure that the model puts within the margin of the bottom, as it goes out and where the bottom comes up
 * under it later. Where that is meant, only cable that is
 * far longer than the way to the bottom is flagged.
 */
export const touchingBottom: Rule = (context) => {
  const { analysis, report } = context;
  for (const { trip, depths, shoals } of analysis.trips) {
    for (const shoal of shoals) reportShoal(context, trip, shoal);
    const isDeep = propertiesOf(trip, "method").some((line) => hasWord(line, "deep"));
    const marginM = thresholdOf(trip.gear, THRESHOLDS.touchingBottom);
    for (const depth of depths) {
      const { bottom, setting, event } = depth;
      const what = nearBottom(depth, marginM);
      const tooMuch = tooMuchCable(depth);
      if (bottom === undefined || what === undefined) continue;
      if (tooMuch === undefined && (isDeep || setting.onBottom)) continue;
      const data = {
        kind: "line",
        gear: trip.gear,
        what,
        depthM: depth[what]?.depthM ?? 0,
        isStopped: depth[what]?.onBottom ?? false,
        tooMuch,
        bottom,
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

/** The bottom came up under lines that are out: told where it was read, with the lines that it finds too near. */
function reportShoal({ analysis, report }: CheckContext, { gear }: Trip, shoal: Shoal): void {
  const { event, lines } = shoal;
  const related = lines.map(({ rig, putOut }) => ({
    uri: analysis.uri,
    message: DAY_RELATED.lineOf(rig),
    ...itemPlace(putOut.lineIndex, putOut.line, "out"),
  }));
  const told = lines.map(({ putOut: { line }, ...found }) => ({
    ...found,
    verb: line.verb,
    clock: line.clock,
  }));
  const place = itemPlace(event.lineIndex, event.line, "bottom");
  report(TOUCHING_BOTTOM, place, { kind: "shoal", gear, bottom: shoal, lines: told }, { related });
}

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

function isMeant(uri: string, { event: { line, lineIndex } }: LineDepth): Fix {
  const end = line.items.at(-1)?.stop ?? line.slots.at(-1)?.stop ?? line.verbStop;
  const edits = [insert(uri, lineIndex, end, " on-bottom")];
  return { title: DAY_FIXES.onBottom, edits, isPreferred: false };
}
