import { findUnit } from "../../grammar/units.ts";
import { UNKNOWN_WORD } from "./catalog/language.ts";
import type { CheckContext, Rule } from "./check.ts";
import { renameFixes } from "./edits.ts";
import { nearest } from "./nearest.ts";
import { nearUnits } from "./read-issue-units.ts";
import type { SoundLine } from "./sound-lines.ts";
import { soundProperties } from "./under-openers.ts";

const WATERS = ["fresh", "salt"];

/** Flags words of a boat's `units` and `water` lines that mean nothing there and would be passed over. */
export const propertyWords: Rule = (context) => {
  for (const sound of soundProperties(context.analysis)) {
    if (sound.line.verb === "units") checkUnits(context, sound);
    else if (sound.line.verb === "water") checkWater(context, sound);
  }
};

function checkUnits({ analysis, report }: CheckContext, { line, lineIndex }: SoundLine): void {
  for (const { text, start, stop } of line.slots) {
    if (findUnit(text) !== undefined) continue;
    const near = nearUnits(text, undefined);
    const place = { lineIndex, start, stop };
    const data = { role: "unit", word: text, verb: line.verb, choices: [], near } as const;
    report(UNKNOWN_WORD, place, data, { fixes: renameFixes(analysis.uri, place, near) });
  }
}

function checkWater({ analysis, report }: CheckContext, { line, lineIndex }: SoundLine): void {
  const [slot] = line.slots;
  if (slot === undefined || WATERS.includes(slot.text.toLowerCase())) return;
  const near = nearest(slot.text, WATERS);
  const place = { lineIndex, start: slot.start, stop: slot.stop };
  const data = { role: "choice", word: slot.text, verb: line.verb, choices: WATERS, near } as const;
  report(UNKNOWN_WORD, place, data, { fixes: renameFixes(analysis.uri, place, near) });
}
