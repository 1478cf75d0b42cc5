/** One version of one document with everything computed from it; computed when first asked for, then kept. */
import { type Parse, reparse } from "../../grammar/parse.ts";
import type { DepthMemo } from "../analysis/depth-memo.ts";
import { analyzeJournal, type JournalAnalysis, type TripAnalysis } from "../analysis/journal-analysis.ts";
import type { LineDepth } from "../analysis/line-depth.ts";
import type { Finding } from "../checks/check.ts";
import { prepareChecks, runChecks, type SeverityChoices } from "../checks/run-checks.ts";
import type { BookFile } from "../model/gear-lines.ts";
import type { ThresholdWords } from "../model/thresholds.ts";

/** A line's depth and the trip it is of. */
export interface DayDepth {
  readonly day: TripAnalysis;
  readonly depth: LineDepth;
}

/** What holds for every document just now: the captain's settings, and the day it is where that is known. */
export interface Chosen {
  readonly severities: SeverityChoices;
  readonly thresholds: ThresholdWords;
  readonly today: string | undefined;
}

/** A document as it stood at one version. Immutable to its readers. */
export class Snapshot {
  readonly uri: string;
  readonly version: number;
  readonly parse: Parse;
  readonly books: readonly BookFile[];
  readonly #memo: DepthMemo;
  readonly #choices: SeverityChoices;
  readonly #thresholds: ThresholdWords;
  readonly #today: string | undefined;
  #analysis: JournalAnalysis | undefined;
  #findings: readonly Finding[] | undefined;

  constructor(
    file: { uri: string; version: number; parse: Parse },
    books: readonly BookFile[],
    memo: DepthMemo,
    { severities, thresholds, today }: Chosen,
  ) {
    this.uri = file.uri;
    this.version = file.version;
    this.parse = file.parse;
    this.books = books;
    this.#memo = memo;
    this.#choices = severities;
    this.#thresholds = thresholds;
    this.#today = today;
  }

  get analysis(): JournalAnalysis {
    this.#analysis ??= analyzeJournal(
      { uri: this.uri, parse: this.parse },
      this.books,
      this.#memo,
      this.#thresholds,
    );
    return this.#analysis;
  }

  get findings(): readonly Finding[] {
    this.#findings ??= runChecks(this.analysis, { choices: this.#choices, today: this.#today });
    return this.#findings;
  }

  /** Computes what `findings` needs in small steps; whoever takes them may stop between any two. */
  prepare(): Generator<void> {
    return prepareChecks(this.analysis, this.#choices);
  }

  /** The depth computed for a line, with its trip. */
  depthAt(lineIndex: number): DayDepth | undefined {
    const day = this.tripAt(lineIndex);
    const isMeant = ({ event }: LineDepth): boolean => event.lineIndex === lineIndex;
    const depth = day?.depths.find(isMeant) ?? day?.changeDepths.find(isMeant);
    return day === undefined || depth === undefined ? undefined : { day, depth };
  }

  /** The depths of the lines from one to another, both included. */
  depthsBetween(first: number, last: number): DayDepth[] {
    const isMeant = ({ event }: LineDepth): boolean => event.lineIndex >= first && event.lineIndex <= last;
    const { trips } = this.analysis;
    return trips.flatMap((day, n) => {
      const next = trips[n + 1]?.trip.openerIndex ?? Number.POSITIVE_INFINITY;
      if (day.trip.openerIndex > last || next <= first) return [];
      return [...day.depths, ...day.changeDepths].filter(isMeant).map((depth) => ({ day, depth }));
    });
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
