/** What a check is, and what it reports. Everything shown about a check derives from its row in the catalog. */
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import type { Gear } from "../model/gear-types.ts";
import type { Sight } from "../model/sight.ts";
import type { Trip, TripEvent } from "../model/trip.ts";

/** As the LSP names them, in lower case. */
export type Severity = "error" | "warning" | "information" | "hint";

/** One check. `Data` is what its message is made from. */
export interface CheckRow<Data = never> {
  /** The code shown in the editor; never reused. */
  readonly slug: string;
  /** The severities it can have; the first is the usual one. */
  readonly severities: readonly [Severity, ...Severity[]];
  /** One line for the index and the settings. */
  readonly summary: string;
  /** When it keeps quiet, in a few words; empty when it always speaks. */
  readonly quietWhen: string;
  /** Raises a doubt rather than an error of the language: the flag `sure` on the line settles it. */
  readonly isDoubt: boolean;
  readonly isFixable: boolean;
  /** Speaks only when the user gave it a severity. */
  readonly isOffByDefault?: true;
  /** The version it came with. */
  readonly since: string;
  /** What is wrong, with the numbers, and what was expected. One sentence, two at most. */
  readonly message: (data: Data) => string;
}

/** Writes a row with its data's type; the catalog is made of these. */
export const check = <Data>(row: CheckRow<Data>): CheckRow<Data> => row;

/** A stretch of one line. */
export interface Place {
  readonly lineIndex: number;
  readonly start: number;
  readonly stop: number;
}

/** Another line that has to do with a finding. */
export interface RelatedPlace extends Place {
  readonly uri: string;
  readonly message: string;
}

/** A change of text in one file. */
export interface FixEdit extends Place {
  readonly uri: string;
  readonly text: string;
}

/** A way to mend a finding. */
export interface Fix {
  readonly title: string;
  readonly edits: readonly FixEdit[];
  /** The one to take when only one is wanted. */
  readonly isPreferred: boolean;
}

/** Something found. */
export interface Finding extends Place {
  readonly slug: string;
  readonly severity: Severity;
  readonly message: string;
  readonly related: readonly RelatedPlace[];
  /** Made when they are first asked for, where making them is much work. */
  readonly fixes: readonly Fix[];
}

/** What a rule may add to a report. */
export interface ReportExtras {
  readonly severity?: Severity;
  readonly related?: readonly RelatedPlace[];
  /** A function where they are much work: it is called when somebody asks for them, once. */
  readonly fixes?: readonly Fix[] | (() => readonly Fix[]);
}

/** What a rule sees. */
export interface CheckContext {
  readonly analysis: JournalAnalysis;
  /** The day it is where the captain sits, `2031-06-21`; undefined where nobody says. */
  readonly today: string | undefined;
  /** Another trip stands below the one trip that is looked at: its day is over. */
  readonly isFollowed: boolean;
  /** The gear that speaks for a line: its trip's, or its boat's. */
  readonly gearFor: (lineIndex: number) => Gear | undefined;
  readonly report: <Data>(row: CheckRow<Data>, place: Place, data: Data, extras?: ReportExtras) => void;
}

/** A rule looks at a file and reports what it finds. */
export type Rule = (context: CheckContext) => void;

/**
 * A rule that looks at one event by itself, and reports at its line. What it finds may depend on nothing but that line
 * and the trip's gear and zone.
 */
export type LineRule = (context: CheckContext, trip: Trip, event: TripEvent) => void;

/** A rule that looks at one trip alone: with what it sees of it, or at each of its events by itself. */
export type TripRule = { readonly rule: Rule; readonly sees: Sight } | { readonly ofLine: LineRule };
