/** One look at a file: what its rules report, with what the user and the captain silenced left out. */
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import type { Gear } from "../model/gear-types.ts";
import { hasWord } from "../model/quantities.ts";
import type { CheckContext, CheckRow, Finding, Fix, Place, ReportExtras, Severity } from "./check.ts";
import { ownerOf } from "./owners.ts";

/** Severities by slug that the user chose instead of the usual; `off` silences. */
export type SeverityChoices = ReadonlyMap<string, Severity | "off">;

/** What rules see, and the findings that they report. A silenced check stays silenced: by `quiet` in the book, by `sure` on the line. */
export class CheckRun implements CheckContext {
  readonly analysis: JournalAnalysis;
  readonly today: string | undefined;
  readonly isFollowed: boolean;
  readonly #choices: SeverityChoices;
  #findings: Finding[] = [];

  constructor(
    analysis: JournalAnalysis,
    choices: SeverityChoices,
    {
      today,
      isFollowed = false,
    }: { readonly today?: string | undefined; readonly isFollowed?: boolean } = {},
  ) {
    this.analysis = analysis;
    this.today = today;
    this.isFollowed = isFollowed;
    this.#choices = choices;
  }

  /** What was reported since the last time this was asked. */
  take(): Finding[] {
    const findings = this.#findings;
    this.#findings = [];
    return findings;
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
    this.#findings.push({
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
