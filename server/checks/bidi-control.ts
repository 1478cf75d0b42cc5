import { BIDI_CONTROL } from "./catalog/language.ts";
import { FIX_TITLES } from "./catalog/titles.ts";
import type { Rule } from "./check.ts";
import { replace } from "./edits.ts";
import { allUnderOpeners, type Stretch } from "./under-openers.ts";

/** Marks, embeddings, overrides and isolates: U+200E, U+200F, U+202A to U+202E, U+2066 to U+2069. */
export const CONTROL = /[\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;
const EVERY_CONTROL = new RegExp(CONTROL, "gu");

/** Flags invisible characters that change a line's reading direction: what one sees is not what is stored. */
export const bidiControl: Rule = ({ analysis, report }) => {
  for (const { lineIndex, raw } of allUnderOpeners(analysis, controlledLines)) {
    const start = raw.search(CONTROL);
    const rest = raw.slice(start);
    const clean = rest.replaceAll(EVERY_CONTROL, "");
    const edits = [replace(analysis.uri, { lineIndex, start, stop: raw.length }, clean)];
    const fixes = [{ title: FIX_TITLES.removeControls, edits, isPreferred: true }];
    const place = { lineIndex, start, stop: start + 1 };
    report(BIDI_CONTROL, place, { count: rest.length - clean.length }, { fixes });
  }
};

function controlledLines({ analysis, start, stop }: Stretch): { lineIndex: number; raw: string }[] {
  const found: { lineIndex: number; raw: string }[] = [];
  for (let lineIndex = start; lineIndex < stop; lineIndex++) {
    const raw = analysis.parse.journal.lines[lineIndex]?.raw ?? "";
    if (CONTROL.test(raw)) found.push({ lineIndex, raw });
  }
  return found;
}
