/** Applies a fix that writes into the gear book, and runs again. */
import { expect } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";
import { runChecks } from "../../server/checks/run-checks.ts";

const BOOK = `boat "Bright Penny"
  units ft mph F lb in
  zone America/Detroit
cable rigger-wire steel diameter 0.9 mm
ball round-12 sphere 12 lb
lure glow-spoon spoon 4 in
rig C1 downrigger center cable rigger-wire ball round-12 probe 1.25 ft
`;

/** Applies the first fix of a trip's finding to the book: then nothing is found, and the book's line reads like that. */
export function checkBookFix(slug: string, lines: string, written: RegExp, gear = ""): void {
  const text = `${BOOK}${gear === "" ? "" : `${gear}\n`}`;
  const file = { uri: "file:///day.trip", parse: parse(`trip 2031-06-21 "Bright Penny"${lines}\n`) };
  const book = { uri: "file:///boat.gear", parse: parse(text) };
  const found = runChecks(analyzeJournal(file, [book])).find((one) => one.slug === slug);
  const [edit] = found?.fixes[0]?.edits ?? [];
  expect(edit?.uri).toBe(book.uri);
  expect(edit?.text).toMatch(written);
  const mended = { ...book, parse: parse(`${text.trimEnd()}${edit?.text}\n`) };
  expect(runChecks(analyzeJournal(file, [mended]))).toEqual([]);
}
