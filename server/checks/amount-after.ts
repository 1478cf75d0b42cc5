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

/** Amounts that grow as the lure goes deeper or farther back. */
const GROWING: Readonly<Record<string, (setting: Setting) => number | undefined>> = {
  out: (setting) => setting.outM,
  setback: (setting) => setting.setbackM,
  board: (setting) => setting.boardM,
  leader: (setting) => setting.leaderM,
};

/** Words that say where a lure goes; "more" of a clip may be either way. */
const UP_OR_DOWN = /\b(?:deeper|shallower|up|down|lower|higher)\b/iu;

/** The word whose amount changes, what it was, m, and how the change goes into it. */
interface Changed {
  readonly word: string;
  readonly beforeM: number;
  readonly way: 1 | -1;
}

/** A stacked rod has nothing out of its own: up and down move its clip, deeper as it comes nearer to the ball. */
function changedOf(
  { word, way }: { readonly word: string; readonly way: 1 | -1 },
  setting: Setting | undefined,
  typed: string,
): Changed | undefined {
  const beforeM = setting === undefined ? undefined : GROWING[word]?.(setting);
  if (beforeM !== undefined) return { word, beforeM, way };
  if (word !== "out" || setting?.aboveM === undefined || !UP_OR_DOWN.test(typed)) return undefined;
  return { word: "above", beforeM: setting.aboveM, way: way === 1 ? -1 : 1 };
}

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
  const changed = changedOf(issue, setting, typed);
  const meant = defaultUnit("length", line.verb, owner?.gear.defaults ?? NO_DEFAULTS, issue.word);
  const [first] = issue.parts;
  const unit = first?.unit == null ? meant : findUnit(first.unit);
  const changeM = partsToSi(issue.parts, meant, "length");
  if (changed === undefined || unit === undefined || changeM === undefined) return { typed, ways: [] };
  const after = Number(fromSi(changed.beforeM + changed.way * changeM, unit).toFixed(1));
  const text = `${changed.word} ${after} ${unit.unit}`;
  const item = line.items.find(({ start, stop }) => start <= place.start && place.stop <= stop);
  const edit = replace(analysis.uri, { ...place, start: item?.start ?? place.start }, text);
  return { typed, ways: after > 0 && mendsLine(analysis, edit) ? [{ text, edit }] : [] };
}

const NO_DEFAULTS = { byDimension: new Map(), shortLength: undefined };
