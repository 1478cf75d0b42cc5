/** Runs every rule over one file. A silenced check stays silenced: by `quiet` in the book, by `sure` on the line. */
import type { JournalAnalysis, TripAnalysis } from "../analysis/journal-analysis.ts";
import type { Gear } from "../model/gear-types.ts";
import { hasWord } from "../model/quantities.ts";
import type { CheckContext, CheckRow, Finding, Fix, Place, ReportExtras, Rule, Severity } from "./check.ts";
import { TRIP_RULES } from "./day-rules.ts";
import { findingsKnown, keepFindings } from "./findings-kept.ts";
import { ownerOf } from "./owners.ts";
import { RULES } from "./rules.ts";

/** Severities by slug that the user chose instead of the usual; `off` silences. */
export type SeverityChoices = ReadonlyMap<string, Severity | "off">;

const ofOneTrip: ReadonlySet<Rule> = new Set(TRIP_RULES);

/** What a run is given besides the file. */
interface CheckOptions {
  readonly choices?: SeverityChoices;
  /** Every rule unless told otherwise. */
  readonly rules?: readonly Rule[];
  /** The day it is, `2031-06-21`; nothing is said of days to come without it. */
  readonly today?: string | undefined;
}

/** Everything found in a file, in the order of its lines. */
export function runChecks(
  analysis: JournalAnalysis,
  { choices = NO_CHOICES, rules = RULES, today }: CheckOptions = {},
): Finding[] {
  const [tripRules, fileRules] = [
    rules.filter((rule) => ofOneTrip.has(rule)),
    rules.filter((rule) => !ofOneTrip.has(rule)),
  ];
  const ofTrips = analysis.trips.flatMap((day) =>
    rules === RULES ? knownOrNew(analysis, day, choices) : findingsOf(analysis, day, choices, tripRules),
  );
  return inFileOrder([...runRules(analysis, choices, fileRules, today), ...ofTrips]);
}

/** Sorted by place; quick where it is made of parts that are sorted. */
function inFileOrder(findings: Finding[]): Finding[] {
  return findings.sort((a, b) => a.lineIndex - b.lineIndex || a.start - b.start);
}

/** Does most of the work of `runChecks` ahead of it, a rule a step, so that its caller may stop to answer others. */
export function* prepareChecks(analysis: JournalAnalysis, choices: SeverityChoices): Generator<void> {
  for (const day of analysis.trips) {
    if (findingsKnown(day.trip, choices) === undefined) {
      const run = new CheckRun({ ...analysis, trips: [day] }, choices, undefined);
      for (const rule of TRIP_RULES) {
        rule(run);
        yield;
      }
      keepFindings(day.trip, choices, inFileOrder(run.findings));
    }
    yield;
  }
}

const NO_CHOICES: SeverityChoices = new Map();

function runRules(
  analysis: JournalAnalysis,
  choices: SeverityChoices,
  rules: readonly Rule[],
  today?: string,
): Finding[] {
  const run = new CheckRun(analysis, choices, today);
  for (const rule of rules) rule(run);
  return run.findings;
}

/** What rules of one trip find in it, seen as if it were alone in its file. */
function findingsOf(
  analysis: JournalAnalysis,
  day: TripAnalysis,
  choices: SeverityChoices,
  rules: readonly Rule[] = TRIP_RULES,
): Finding[] {
  return runRules({ ...analysis, trips: [day] }, choices, rules);
}

/** A trip that is the very same, or only stands elsewhere in the file, is not looked at again. */
function knownOrNew(
  analysis: JournalAnalysis,
  day: TripAnalysis,
  choices: SeverityChoices,
): readonly Finding[] {
  const known = findingsKnown(day.trip, choices);
  if (known !== undefined) return known;
  const findings = inFileOrder(findingsOf(analysis, day, choices));
  keepFindings(day.trip, choices, findings);
  return findings;
}

class CheckRun implements CheckContext {
  readonly analysis: JournalAnalysis;
  readonly today: string | undefined;
  readonly findings: Finding[] = [];
  readonly #choices: SeverityChoices;

  constructor(analysis: JournalAnalysis, choices: SeverityChoices, today: string | undefined) {
    this.analysis = analysis;
    this.today = today;
    this.#choices = choices;
  }

  readonly gearFor = (lineIndex: number): Gear | undefined => ownerOf(this.analysis, lineIndex)?.gear;

  readonly report = <Data>(
    row: CheckRow<Data>,
    place: Place,
    data: Data,
    extras: ReportExtras = {},
  ): void => {
    const choice = this.#choices.get(row.slug);
    if (choice === "off" || (choice === undefined && row.isOffByDefault === true)) return;
    if (this.gearFor(place.lineIndex)?.quiet.has(row.slug) === true) return;
    if (row.isDoubt && this.#isSure(place.lineIndex)) return;
    const { start, stop, lineIndex } = place;
    let { fixes = [] } = extras;
    this.findings.push({
      slug: row.slug,
      severity: choice ?? extras.severity ?? row.severities[0],
      message: row.message(data),
      lineIndex,
      start,
      stop,
      related: extras.related ?? [],
      get fixes(): readonly Fix[] {
        if (typeof fixes === "function") fixes = fixes();
        return fixes;
      },
    });
  };

  #isSure(lineIndex: number): boolean {
    const line = this.analysis.parse.journal.lines[lineIndex];
    return (line?.kind === "fact" || line?.kind === "property") && hasWord(line, "sure");
  }
}
