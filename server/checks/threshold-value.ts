import { looksNumeric, mendNumber, splitNumber } from "../../grammar/number-text.ts";
import { findUnit } from "../../grammar/units.ts";
import { findThreshold, readThreshold, type ThresholdRow } from "../model/thresholds.ts";
import {
  GEAR_IMPLAUSIBLE,
  NUMBER_FORMAT,
  UNIT_MISMATCH,
  UNIT_MISSING,
  UNKNOWN_WORD,
} from "./catalog/language.ts";
import { FIX_TITLES } from "./catalog/titles.ts";
import type { CheckContext, Fix, Place, Rule } from "./check.ts";
import { renameFixes, replace } from "./edits.ts";
import { nearUnits } from "./read-issue-units.ts";
import type { SoundLine } from "./sound-lines.ts";
import { soundProperties } from "./under-openers.ts";

/** Checks the values of a boat's `threshold` lines: one number, and one unit of the right kind where it needs one. */
export const thresholdValue: Rule = (context) => {
  for (const sound of soundProperties(context.analysis)) {
    const { line } = sound;
    const [name, ...value] = line.verb === "threshold" ? line.slots : [];
    const row = name === undefined ? undefined : findThreshold(name.text);
    if (row === undefined) continue;
    const words = value.map((slot) => slot.text);
    if (readThreshold(words, row.dimension) === undefined) reportValue(context, sound, row, words);
  }
};

function reportValue(
  context: CheckContext,
  { line, lineIndex }: SoundLine,
  row: ThresholdRow,
  words: readonly string[],
): void {
  const [first = "", second, ...rest] = words;
  const [numberSlot, unitSlot] = line.slots.slice(1);
  const place = { lineIndex, start: numberSlot?.start ?? 0, stop: line.slots.at(-1)?.stop ?? 0 };
  const split = looksNumeric(first) ? splitNumber(first) : undefined;
  const unitText = split === undefined || split.unit === "" ? second : split.unit;
  const unit = unitText === undefined ? undefined : findUnit(unitText);
  const isGlued = split !== undefined && split.unit !== "";
  if (split !== undefined && isBelowZero(split.number, unitText, row)) {
    const data = { kind: "negative" as const, word: row.name, written: words.join(" ") };
    context.report(GEAR_IMPLAUSIBLE, place, data);
  } else if (split === undefined || rest.length > 0 || (isGlued && second !== undefined)) {
    reportNumber(context, place, words.join(" "), row);
  } else if (unitText === undefined) {
    reportMissing(context, place, split.number, row);
  } else if (row.dimension !== null && unit === undefined) {
    reportUnit(context, { ...place, start: unitSlot?.start ?? place.start }, unitText, row);
  } else if (unit !== undefined && unit.dimension === row.dimension) {
    reportNumber(context, place, words.join(" "), row, `${split.number} ${unit.unit}`);
  } else {
    const found = unit?.dimension ?? "length";
    const data = { word: row.name, unit: unitText, found, wants: row.dimension };
    context.report(UNIT_MISMATCH, place, data, {
      fixes: fixTo(context, place, mismatchText(split.number, row)),
    });
  }
}

/** A number that would do but for its minus. */
function isBelowZero(number: string, unit: string | undefined, row: ThresholdRow): boolean {
  const words = [number.replace("-", ""), ...(unit === undefined ? [] : [unit])];
  return number.startsWith("-") && readThreshold(words, row.dimension) !== undefined;
}

function mismatchText(number: string, row: ThresholdRow): string {
  return row.dimension === null ? number : `${number} ${usualUnit(row)}`;
}

/** The unit that the threshold's default is written in. */
function usualUnit(row: ThresholdRow): string {
  return row.written.split(" ")[1] ?? "";
}

function fixTo(context: CheckContext, place: Place, text: string | null): Fix[] {
  if (text === null) return [];
  const edits = [replace(context.analysis.uri, place, text)];
  return [{ title: FIX_TITLES.write(text), edits, isPreferred: true }];
}

function reportNumber(
  context: CheckContext,
  place: Place,
  text: string,
  row: ThresholdRow,
  glued?: string,
): void {
  const [number = "", ...unit] = text.split(" ");
  const mended = glued ?? mendNumber(number);
  const mend = mended === null ? null : [mended, ...unit].join(" ");
  const fits = mend !== null && readThreshold(mend.split(" "), row.dimension) !== undefined ? mend : null;
  const data = { text, mend: fits, example: row.written };
  context.report(NUMBER_FORMAT, place, data, { fixes: fixTo(context, place, fits) });
}

function reportMissing(context: CheckContext, place: Place, number: string, row: ThresholdRow): void {
  if (row.dimension === null) return;
  const unit = usualUnit(row);
  const data = { number, word: row.name, units: [unit] };
  const fixes = fixTo(context, place, `${number} ${unit}`);
  context.report(UNIT_MISSING, place, data, { fixes });
}

function reportUnit(context: CheckContext, place: Place, word: string, row: ThresholdRow): void {
  const near = nearUnits(word, row.dimension ?? undefined);
  const fixes = renameFixes(context.analysis.uri, place, near);
  context.report(
    UNKNOWN_WORD,
    place,
    { role: "unit", word, verb: "threshold", choices: [], near },
    { fixes },
  );
}
