/** The amount that is out after a change: `out 90 ft` for `20 ft deeper` on a rod with 70 ft out. */
import { isRead } from "../../grammar/is-read.ts";
import type { Issue } from "../../grammar/issues.ts";
import type { Line } from "../../grammar/journal.ts";
import { findUnit, fromSi } from "../../grammar/units.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import { defaultUnit, partsToSi } from "../model/quantities.ts";
import type { Setting } from "../model/setting.ts";
import type { Place } from "./check.ts";
import { mendsLine, replace } from "./edits.ts";
import { ownerOf } from "./owners.ts";
import type { Way } from "./way.ts";

/** Amounts that grow as the lure goes deeper or farther back; a clip goes deeper as it comes nearer to the ball. */
const GROWING: Readonly<Record<string, (setting: Setting) => number | undefined>> = {
  out: (setting) => setting.outM,
  setback: (setting) => setting.setbackM,
  board: (setting) => setting.boardM,
  leader: (setting) => setting.leaderM,
};

/** What to write instead of a change; without ways where what was out before isn't known. Undefined for other issues. */
export function amountAfter(
  analysis: JournalAnalysis,
  issue: Extract<Issue, { code: "syntax" }>,
  line: Line,
  place: Place,
): { readonly typed: string; readonly ways: readonly Way[] } | undefined {
  if (issue.reason !== "by-how-much" || !isRead(line)) return undefined;
  const typed = line.raw.slice(place.start, place.stop);
  const owner = ownerOf(analysis, place.lineIndex);
  const setting = owner?.trip?.timeline.settingAfter.get(place.lineIndex);
  const before = setting === undefined ? undefined : GROWING[issue.word]?.(setting);
  const meant = defaultUnit("length", line.verb, owner?.gear.defaults ?? NO_DEFAULTS, issue.word);
  const [first] = issue.parts;
  const unit = first?.unit == null ? meant : findUnit(first.unit);
  const changeM = partsToSi(issue.parts, meant, "length");
  if (before === undefined || unit === undefined || changeM === undefined) return { typed, ways: [] };
  const after = Number(fromSi(before + issue.way * changeM, unit).toFixed(1));
  const text = `${issue.word} ${after} ${unit.unit}`;
  const item = line.items.find(({ start, stop }) => start <= place.start && place.stop <= stop);
  const edit = replace(analysis.uri, { ...place, start: item?.start ?? place.start }, text);
  return { typed, ways: after > 0 && mendsLine(analysis, edit) ? [{ text, edit }] : [] };
}

const NO_DEFAULTS = { byDimension: new Map(), shortLength: undefined };
