/** Units near a misspelt one, and the ways out of a measure in the wrong unit. */

import { isRead } from "../../grammar/is-read.ts";
import type { Issue } from "../../grammar/issues.ts";
import type { Line } from "../../grammar/journal.ts";
import { splitNumber } from "../../grammar/number-text.ts";
import { type Dimension, findUnit, UNITS, type UnitRow } from "../../grammar/units.ts";
import { FIX_TITLES } from "./catalog/titles.ts";
import type { CheckContext, Fix, FixEdit, Place } from "./check.ts";
import { mendsLine, replace } from "./edits.ts";
import { nearest } from "./nearest.ts";
import { rowOf } from "./sound-lines.ts";
import { usualUnits } from "./usual-units.ts";

/** A unit by its canonical spelling. */
export const unitOf = (spelling: string): UnitRow | undefined => findUnit(spelling);

/** What the measure at a place of a line is of; undefined where that can't be told. */
export function dimensionAt(line: Line, at: number): Dimension | undefined {
  if (!isRead(line)) return undefined;
  const item = line.items.find((one) => one.start <= at && at < one.stop);
  const type = item === undefined ? undefined : rowOf(line)?.words.get(item.word)?.type;
  return type?.kind === "quantity" && type.dimension !== "any" ? type.dimension : undefined;
}

/** Canonical units spelled nearly like a word, of one dimension where it is known. */
export function nearUnits(word: string, dimension: Dimension | undefined): string[] {
  const units = UNITS.filter((unit) => dimension === undefined || unit.dimension === dimension);
  const spellings = units.flatMap((unit) => [unit.unit, ...unit.aliases].filter((one) => one.length > 1));
  const near = nearest(word, spellings).map((spelling) => findUnit(spelling)?.unit ?? spelling);
  return [...new Set(near)];
}

/** Either the word was meant and the unit is wrong, or the unit was meant and the word is wrong. */
export function mismatchFixes(
  context: CheckContext,
  issue: Extract<Issue, { code: "unit-mismatch" }>,
  line: Line,
  place: Place,
): Fix[] {
  const { analysis } = context;
  const edits: FixEdit[] = [...wordEdits(analysis.uri, issue, line, place)];
  const number = splitNumber(line.raw.slice(place.start, place.stop).split(/\s/u)[0] ?? "")?.number;
  const verb = isRead(line) ? line.verb : "";
  const [unit] = usualUnits(issue.word, verb, issue.wants, context.gearFor(place.lineIndex)?.defaults);
  if (number !== undefined && unit !== undefined) {
    edits.push(replace(analysis.uri, place, `${number} ${unit}`));
  }
  return edits
    .filter((edit) => mendsLine(analysis, edit))
    .map((edit, index) => ({ title: FIX_TITLES.write(edit.text), edits: [edit], isPreferred: index === 0 }));
}

/** `depth 66 F` may have been meant as `temp 66 F`. */
function* wordEdits(
  uri: string,
  issue: Extract<Issue, { code: "unit-mismatch" }>,
  line: Line,
  place: Place,
): Generator<FixEdit> {
  if (!isRead(line)) return;
  const found = findUnit(issue.unit)?.dimension;
  const written = line.items.find((item) => item.word === issue.word && item.stop >= place.stop);
  if (written === undefined || written.bare) return;
  const others = (rowOf(line)?.items ?? []).filter(
    (item) => item.type.kind === "quantity" && item.type.dimension === found,
  );
  const free = others.filter((item) => !line.items.some((used) => used.word === item.word));
  const [only] = free;
  if (only === undefined || free.length > 1) return;
  const { lineIndex } = place;
  const value = line.raw.slice(written.valueStart, written.stop);
  yield replace(uri, { lineIndex, start: written.start, stop: written.stop }, `${only.word} ${value}`);
}
