/** Runs the checks over a text and the books around it, for the tests: findings against carets, fixes against texts. */
import { expect } from "vitest";
import { parse } from "../../grammar/parse.ts";
import { analyzeJournal } from "../../server/analysis/journal-analysis.ts";
import { CATALOG } from "../../server/checks/catalog.ts";
import type { Finding, Fix, Rule, Severity } from "../../server/checks/check.ts";
import { LANGUAGE_RULES } from "../../server/checks/language-rules.ts";
import { runChecks } from "../../server/checks/run-checks.ts";
import { applyEdits } from "../harness/apply-edits.ts";
import { expectDiagnostics } from "../harness/expect-diagnostics.ts";
import { dedent, type LineDiagnostic } from "../harness/markers.ts";

/** The file under test. */
export const TRIP_URI = "file:///season/day.trip";
/** Where a book stands that is given without a name. */
export const BOOK_URI = "file:///season/bright-penny.gear";

/** The day it is, unless told otherwise. */
const TODAY = "2040-01-01";

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
  /** The day it is, for the check of days to come. */
  readonly today?: string;
  /** The rules to run; every one unless told otherwise. */
  readonly rules?: readonly Rule[];
}

/** Everything that is found in a text. */
export function findingsIn(text: string, around: Around = {}): Finding[] {
  const books = Object.entries(around.books ?? { [BOOK_URI]: BOOK });
  const file = { uri: TRIP_URI, parse: parse(text) };
  const others = books.map(([uri, book]) => ({ uri, parse: parse(book) }));
  const { on, rules, today = TODAY } = around;
  return runChecks(analyzeJournal(file, others), { choices: choicesOf(on), rules, today });
}

function choicesOf(slug: string | undefined): Map<string, Severity> {
  const row = CATALOG.find((one) => one.slug === slug);
  return new Map(row === undefined ? [] : [[row.slug, row.severities[0]]]);
}

function languageFindings(text: string, around: Around): Finding[] {
  return findingsIn(text, { ...around, rules: LANGUAGE_RULES });
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
  for (const uri of new Set(fix.edits.map((edit) => edit.uri))) {
    const edits = fix.edits.filter((edit) => edit.uri === uri);
    texts.set(uri, applyEdits(texts.get(uri) ?? "", edits));
  }
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

/** The same for a line of a day that the book is to be added to: the book afterwards is compared. */
export function checkBookFix(slug: string, line: string, bookAfter: string): void {
  checkFix(slug, OPENER + line, bookAfter, { fix: "Add", uri: BOOK_URI });
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
