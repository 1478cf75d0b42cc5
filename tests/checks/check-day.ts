/** Runs every check over a day of a small boat: findings against carets, fixes against texts. Strict both ways. */
import { expect } from "vitest";
import type { Finding, Fix } from "../../server/checks/check.ts";
import { applyEdits } from "../harness/apply-edits.ts";
import { expectDiagnostics } from "../harness/expect-diagnostics.ts";
import { dedent } from "../harness/markers.ts";
import { BOOK_URI, findingsIn } from "./check-findings.ts";

/** A boat with one rig of each kind the checks tell apart. */
const DAY_BOOK = `boat "Bright Penny"
  units ft mph F lb in
  zone America/Detroit

cable rigger-wire steel diameter 0.9 mm
cable diver-wire steel diameter 0.53 mm
ball round-12 sphere 12 lb
lure glow-spoon spoon 4 in
lure mini-spoon spoon 2.5 in
lure tin-slab jig 3.5 in 2 oz

rig C1 downrigger center cable rigger-wire ball round-12 probe 1.25 ft
rig P1 downrigger port cable rigger-wire ball round-12
rig P1U stacked P1
rig S1 downrigger starboard cable rigger-wire ball round-12
rig SD diver starboard cable diver-wire dial 2
rig J1 jig cable diver-wire

nickname king chinook
`;

const OPENER = 'trip 2031-06-21 "Bright Penny"\n';
const TROLLING = `${OPENER}04:59 surface speed 2.4 mph\n05:00 set P1 out 60 ft setback 15 ft lure glow-spoon\n`;

/** What stands above the lines of a case. */
export type Before = "file" | "opener" | "trolling";

const ABOVE: Readonly<Record<Before, string>> = { file: "", opener: OPENER, trolling: TROLLING };

/** What a case may change about the boat. */
export interface DayAround {
  /** A line added to the boat's properties, instead of the one that lets old speeds pass. */
  readonly boat?: string;
  /** The day it is. */
  readonly today?: string;
}

function find(text: string, { boat = "quiet reading-stale", ...around }: DayAround): Finding[] {
  const zone = "  zone America/Detroit\n";
  const book = DAY_BOOK.replace(zone, `${zone}  ${boat}\n`);
  return findingsIn(text, { ...around, books: { [BOOK_URI]: book } });
}

/** Compares all findings of some lines with the carets under them; the lines above must give none. */
export function checkLines(before: Before, source: string, around: DayAround = {}): void {
  const above = ABOVE[before];
  const shift = above.split("\n").length - 1;
  expectDiagnostics(source, (text) =>
    find((above + text).replaceAll(/\r?\n/gu, text.includes("\r") ? "\r\n" : "\n"), around).map(
      (finding) => ({
        ...finding,
        line: finding.lineIndex - shift,
      }),
    ),
  );
}

/** Lines of a day, with the trip opened above them. */
export const checkDay = (source: string, around?: DayAround): void => checkLines("opener", source, around);

/** Lines of a day with P1 in the water since 05:00 and a speed read at 04:59. */
export const checkTrolling = (source: string, around?: DayAround): void =>
  checkLines("trolling", source, around);

/** A whole file. */
export const checkFile = (source: string, around?: DayAround): void => checkLines("file", source, around);

/** Applies a fix of the only finding with that slug, compares, and runs again: it is gone, and nothing is new. */
export function checkFixOf(
  slug: string,
  before: Before,
  source: string,
  after: string,
  fix: string | undefined = undefined,
  around: DayAround = {},
): void {
  const text = ABOVE[before] + dedent(source);
  const findings = find(text, around);
  const [finding, second] = findings.filter((one) => one.slug === slug);
  if (finding === undefined || (fix === undefined && second !== undefined)) {
    throw new Error(`not one ${slug} in:\n${text}`);
  }
  const fixed = applyEdits(text, fixOf(finding, fix).edits);
  expect(fixed).toBe(ABOVE[before] + dedent(after));
  const left = find(fixed, around).map((one) => one.slug);
  const others = findings.filter((one) => one.slug !== slug).map((one) => one.slug);
  expect(left.filter((one) => one !== slug).sort()).toEqual(others.sort());
  expect(left.filter((one) => one === slug).length).toBeLessThan(findings.length - others.length);
}

/** The messages of all findings with that slug. */
export function messages(slug: string, before: Before, source: string): string[] {
  const findings = find(ABOVE[before] + dedent(source), {});
  return findings.flatMap((one) => (one.slug === slug ? one.message : []));
}

/** Titles of the fixes of the first finding with that slug; the preferred one has a star. */
export function fixTitles(slug: string, before: Before, source: string): string[] {
  const finding = find(ABOVE[before] + dedent(source), {}).find((one) => one.slug === slug);
  return (finding?.fixes ?? []).map(({ title, isPreferred }) => `${title}${isPreferred ? "*" : ""}`);
}

function fixOf(finding: Finding, title: string | undefined): Fix {
  const byTitle = finding.fixes.filter((one) => title === undefined || one.title.includes(title));
  const fix = title === undefined ? (byTitle.find((one) => one.isPreferred) ?? byTitle[0]) : byTitle[0];
  if (fix === undefined) {
    throw new Error(`no such fix; there are: ${finding.fixes.map((one) => one.title).join("; ")}`);
  }
  return fix;
}
