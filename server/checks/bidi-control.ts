import { BIDI_CONTROL } from "./catalog/language.ts";
import { FIX_TITLES } from "./catalog/titles.ts";
import type { Rule } from "./check.ts";
import { replace } from "./edits.ts";

/** Marks, embeddings, overrides and isolates: U+200E, U+200F, U+202A to U+202E, U+2066 to U+2069. */
export const CONTROL = /[\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;
const EVERY_CONTROL = new RegExp(CONTROL, "gu");

/** Flags invisible characters that change a line's reading direction: what one sees is not what is stored. */
export const bidiControl: Rule = ({ analysis, report }) => {
  analysis.parse.journal.lines.forEach(({ raw }, lineIndex) => {
    const start = raw.search(CONTROL);
    if (start < 0) return;
    const rest = raw.slice(start);
    const clean = rest.replaceAll(EVERY_CONTROL, "");
    const edits = [replace(analysis.uri, { lineIndex, start, stop: raw.length }, clean)];
    const fixes = [{ title: FIX_TITLES.removeControls, edits, isPreferred: true }];
    const place = { lineIndex, start, stop: start + 1 };
    report(BIDI_CONTROL, place, { count: rest.length - clean.length }, { fixes });
  });
};
