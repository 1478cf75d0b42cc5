/** Runs the checks over a text and the books around it, for the tests: findings against carets, fixes against texts. */
import { expect } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";
import { CATALOG } from "../../server/checks/catalog.ts";
import * as language from "../../server/checks/catalog/language.ts";
import type { CheckRow, Finding, Fix, FixEdit, Severity } from "../../server/checks/check.ts";
import { runChecks } from "../../server/checks/run-checks.ts";
import { expectDiagnostics } from "../harness/expect-diagnostics.ts";
import { dedent, type LineDiagnostic } from "../harness/markers.ts";

/** The file under test. */
export const TRIP_URI = "file:///season/day.trip";
/** Where a book stands that is given without a name. */
export const BOOK_URI = "file:///season/bright-penny.gear";

/** A small book for trips of one line. */
export const BOOK = `boat "Bright Penny"
  units ft mph F lb in
  zone America/Detroit

cable rigger-wire steel diameter 0.9 mm
ball round-12 sphere 12 lb
lure glow-spoon spoon 4 in
lure mini-spoon spoon 2.5 in

rig P1 downrigger port cable rigger-wire ball round-12
rig S1 downrigger starboard cable rigger-wire ball round-12

nickname king chinook
band sauger 60 to 70 F
`;

/** The opener that a line of a day needs above it. */
export const OPENER = 'trip 2031-06-21 "Bright Penny"\n';

/** What is run, and what stands around it. */
export interface Around {
  /** Books in reach by URI, nearest first; the small book unless told otherwise. */
  readonly books?: Readonly<Record<string, string>>;
  /** A check that is off by default, switched on. */
  readonly on?: string;
}

const LANGUAGE_SLUGS: ReadonlySet<string> = new Set(
  Object.values(language as Record<string, CheckRow<never>>).map((row) => row.slug),
);

/** True for the checks of how lines are written. */
export const isLanguageSlug = (slug: string): boolean => LANGUAGE_SLUGS.has(slug);

/** Everything that is found in a text. */
export function findingsIn(text: string, around: Around = {}): Finding[] {
  const books = Object.entries(around.books ?? { [BOOK_URI]: BOOK });
  const file = { uri: TRIP_URI, parse: parse(text) };
  const others = books.map(([uri, book]) => ({ uri, parse: parse(book) }));
  return runChecks(analyzeJournal(file, others), choicesOf(around.on));
}

function choicesOf(slug: string | undefined): Map<string, Severity> {
  const row = CATALOG.find((one) => one.slug === slug);
  return new Map(row === undefined ? [] : [[row.slug, row.severities[0]]]);
}

function languageFindings(text: string, around: Around): Finding[] {
  return findingsIn(text, around).filter((finding) => isLanguageSlug(finding.slug));
}

/** Compares what the language's checks find with the carets in a text, strictly both ways. */
export function checkFindings(source: string, around: Around = {}): void {
  expectDiagnostics(source, (text) => languageFindings(text, around).map(diagnosticOf));
}

function diagnosticOf({ lineIndex, start, stop, slug, message }: Finding): LineDiagnostic {
  return { line: lineIndex, start, stop, slug, message };
}

/** The same for lines of a day: the trip is opened above them. */
export function checkDay(source: string, around: Around = {}): void {
  checkFindings(OPENER + dedent(source), around);
}

/** Which fix, and which file it changes. */
export interface FixAround extends Around {
  /** Part of the title; the preferred fix otherwise, or the first. */
  readonly fix?: string;
  /** The file to compare; the text itself unless told otherwise. */
  readonly uri?: string;
  /** Findings of the language that the fix may leave for the captain to see to. */
  readonly leaves?: readonly string[];
}

/** Applies the fix of the only finding with that slug, compares, and runs again: it is gone, and nothing is new. */
export function checkFix(slug: string, before: string, after: string, around: FixAround = {}): void {
  const findings = languageFindings(before, around);
  const finding = findings.find((one) => one.slug === slug);
  if (finding === undefined) throw new Error(`no ${slug} in:\n${before}`);
  const fix = fixOf(finding, around.fix);
  const books = around.books ?? { [BOOK_URI]: BOOK };
  const texts = new Map([[TRIP_URI, before], ...Object.entries(books)]);
  for (const edit of latestFirst(fix.edits)) texts.set(edit.uri, withEdit(texts.get(edit.uri), edit));
  expect(texts.get(around.uri ?? TRIP_URI)).toBe(after);
  const { [TRIP_URI]: text = "", ...mendedBooks } = Object.fromEntries(texts);
  const left = languageFindings(text, { ...around, books: mendedBooks }).map((one) => one.slug);
  const were = findings.filter((one) => one !== finding).map((one) => one.slug);
  expect(left.sort()).toEqual([...were, ...(around.leaves ?? [])].sort());
}

/** The same for a line of a day. */
export function checkDayFix(slug: string, before: string, after: string, around: FixAround = {}): void {
  checkFix(slug, OPENER + before, OPENER + after, around);
}

function fixOf(finding: Finding, title: string | undefined): Fix {
  const byTitle = (fix: Fix): boolean => title !== undefined && fix.title.includes(title);
  const fix =
    title === undefined
      ? (finding.fixes.find((one) => one.isPreferred) ?? finding.fixes[0])
      : finding.fixes.find(byTitle);
  if (fix === undefined) {
    throw new Error(`no such fix; there are: ${finding.fixes.map((one) => one.title).join("; ")}`);
  }
  return fix;
}

function latestFirst(edits: readonly FixEdit[]): FixEdit[] {
  return [...edits].sort((a, b) => b.lineIndex - a.lineIndex || b.start - a.start);
}

function withEdit(text: string | undefined, edit: FixEdit): string {
  if (text === undefined) throw new Error(`a fix edits ${edit.uri}, which is not there`);
  const { journal } = parse(text);
  let start = journal.bom ? 1 : 0;
  for (const line of journal.lines.slice(0, edit.lineIndex)) start += line.raw.length + line.end.length;
  return text.slice(0, start + edit.start) + edit.text + text.slice(start + edit.stop);
}
