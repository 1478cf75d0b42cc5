/** One version of one document with everything computed from it; computed when first asked for, then kept. */
import { type Parse, reparse } from "../../grammar/parse.ts";
import type { DepthMemo } from "../analysis/depth-memo.ts";
import { analyzeJournal, type JournalAnalysis, type TripAnalysis } from "../analysis/journal-analysis.ts";
import type { LineDepth } from "../analysis/line-depth.ts";
import type { Finding } from "../checks/check.ts";
import { runChecks, type SeverityChoices } from "../checks/run-checks.ts";
import type { BookFile } from "../model/gear-lines.ts";

/** A document as it stood at one version. Immutable to its readers. */
export class Snapshot {
  readonly uri: string;
  readonly version: number;
  readonly parse: Parse;
  readonly books: readonly BookFile[];
  readonly #memo: DepthMemo;
  readonly #choices: SeverityChoices;
  #analysis: JournalAnalysis | undefined;
  #findings: readonly Finding[] | undefined;
  #depths: ReadonlyMap<number, { day: TripAnalysis; depth: LineDepth }> | undefined;

  constructor(
    file: { uri: string; version: number; parse: Parse },
    books: readonly BookFile[],
    memo: DepthMemo,
    choices: SeverityChoices,
  ) {
    this.uri = file.uri;
    this.version = file.version;
    this.parse = file.parse;
    this.books = books;
    this.#memo = memo;
    this.#choices = choices;
  }

  get analysis(): JournalAnalysis {
    this.#analysis ??= analyzeJournal({ uri: this.uri, parse: this.parse }, this.books, this.#memo);
    return this.#analysis;
  }

  get findings(): readonly Finding[] {
    this.#findings ??= runChecks(this.analysis, this.#choices);
    return this.#findings;
  }

  /** Depths by line number. */
  get depths(): ReadonlyMap<number, { day: TripAnalysis; depth: LineDepth }> {
    this.#depths ??= new Map(
      this.analysis.trips.flatMap((day) =>
        day.depths.map((depth) => [depth.event.lineIndex, { day, depth }] as const),
      ),
    );
    return this.#depths;
  }

  /** The trip a line belongs to: the last one opened above it. */
  tripAt(lineIndex: number): TripAnalysis | undefined {
    return this.analysis.trips.findLast((day) => day.trip.openerIndex <= lineIndex);
  }
}

/** Reads a new text, keeping the lines that did not change. */
export function readAgain(previous: Snapshot | undefined, text: string): Parse {
  return reparse(previous?.parse, text);
}
