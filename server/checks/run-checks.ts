/** Runs every rule over one file. A silenced check stays silenced: by `quiet` in the book, by `sure` on the line. */
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import { resolveGear } from "../model/gear.ts";
import { fileGear } from "../model/gear-lines.ts";
import type { Gear } from "../model/gear-types.ts";
import { hasWord } from "../model/quantities.ts";
import type { CheckContext, CheckRow, Finding, Place, ReportExtras, Severity } from "./check.ts";
import { RULES } from "./rules.ts";

/** Severities by slug that the user chose instead of the usual; `off` silences. */
export type SeverityChoices = ReadonlyMap<string, Severity | "off">;

/** Everything found in a file, in the order of its lines. */
export function runChecks(analysis: JournalAnalysis, choices: SeverityChoices = new Map()): Finding[] {
  const run = new CheckRun(analysis, choices);
  for (const rule of RULES) rule(run);
  return run.findings.sort((a, b) => a.lineIndex - b.lineIndex || a.start - b.start);
}

class CheckRun implements CheckContext {
  readonly analysis: JournalAnalysis;
  readonly findings: Finding[] = [];
  readonly #choices: SeverityChoices;
  readonly #gearByBoat = new Map<string, Gear>();

  constructor(analysis: JournalAnalysis, choices: SeverityChoices) {
    this.analysis = analysis;
    this.#choices = choices;
  }

  readonly gearFor = (lineIndex: number): Gear | undefined => {
    const trip = this.analysis.trips.findLast((one) => one.trip.openerIndex <= lineIndex);
    if (trip !== undefined) return trip.trip.gear;
    const [own] = this.analysis.files;
    const boat =
      own === undefined ? undefined : fileGear(own).boats.findLast((one) => one.lineIndex <= lineIndex)?.boat;
    return boat === undefined ? undefined : this.#gearOfBoat(boat);
  };

  readonly report = <Data>(
    row: CheckRow<Data>,
    place: Place,
    data: Data,
    extras: ReportExtras = {},
  ): void => {
    const choice = this.#choices.get(row.slug);
    if (choice === "off" || this.gearFor(place.lineIndex)?.quiet.has(row.slug) === true) return;
    if (row.isDoubt && this.#isSure(place.lineIndex)) return;
    const { start, stop, lineIndex } = place;
    this.findings.push({
      slug: row.slug,
      severity: choice ?? extras.severity ?? row.severities[0],
      message: row.message(data),
      lineIndex,
      start,
      stop,
      related: extras.related ?? [],
      fixes: extras.fixes ?? [],
    });
  };

  #isSure(lineIndex: number): boolean {
    const line = this.analysis.parse.journal.lines[lineIndex];
    return (line?.kind === "fact" || line?.kind === "property") && hasWord(line, "sure");
  }

  /** The latest gear of a boat, for lines of its own book. */
  #gearOfBoat(boat: string): Gear {
    const gear = this.#gearByBoat.get(boat) ?? resolveGear(this.analysis.files, boat, "9999-12-31");
    this.#gearByBoat.set(boat, gear);
    return gear;
  }
}
