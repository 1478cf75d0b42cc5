/** Two units of one measure of which the finer holds more than one of the coarser: `17 lb 20 oz` for `18 lb 4 oz`. */
import { isRead } from "../../grammar/is-read.ts";
import type { Item, Line, Part } from "../../grammar/journal.ts";
import { findUnit, type UnitRow } from "../../grammar/units.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import type { Place } from "./check.ts";
import { mendsLine, replace } from "./edits.ts";
import type { Way } from "./way.ts";

/** The two as one measure, where the second stands right behind the first; undefined where that isn't what is wrong. */
export function carriedOver(
  analysis: JournalAnalysis,
  line: Line,
  place: Place,
): { readonly typed: string; readonly way: Way } | undefined {
  if (!isRead(line)) return undefined;
  const index = line.items.findIndex((item) => item.bare && item.start === place.start);
  const [first, second] = [line.items[index - 1], line.items[index]];
  if (first === undefined || second === undefined || first.word !== second.word) return undefined;
  const [coarse, fine] = [onlyPart(first), onlyPart(second)];
  if (coarse === undefined || fine === undefined || !(coarse.unit.factor > fine.unit.factor))
    return undefined;
  const fineInCoarse = coarse.unit.factor / fine.unit.factor;
  const more = Math.floor(fine.number / fineInCoarse + 1e-9);
  const left = Number((fine.number - more * fineInCoarse).toFixed(3));
  const text = `${coarse.number + more} ${coarse.unit.unit}${left > 0 ? ` ${left} ${fine.unit.unit}` : ""}`;
  const { lineIndex } = place;
  const edit = replace(analysis.uri, { lineIndex, start: first.valueStart, stop: second.stop }, text);
  const typed = line.raw.slice(first.valueStart, second.stop);
  return mendsLine(analysis, edit) ? { typed, way: { text, edit } } : undefined;
}

interface Figure {
  readonly number: number;
  readonly unit: UnitRow;
}

function onlyPart({ value }: Item): Figure | undefined {
  const [part, ...others]: readonly Part[] = value.kind === "quantity" ? value.parts : [];
  const unit = part?.unit == null ? undefined : findUnit(part.unit);
  return part === undefined || unit === undefined || others.length > 0
    ? undefined
    : { number: Number(part.number), unit };
}
