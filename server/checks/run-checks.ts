/** Runs every rule over one file. */
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import type { Finding, Rule } from "./check.ts";
import { CheckRun, type SeverityChoices } from "./check-run.ts";
import { tripFindings } from "./findings-kept.ts";
import { inFileOrder } from "./in-file-order.ts";
import { FILE_RULES } from "./rules.ts";

export type { SeverityChoices } from "./check-run.ts";

/** What a run is given besides the file. */
interface CheckOptions {
  readonly choices?: SeverityChoices;
  /** These rules of files only; every rule, those of one trip as well, unless told otherwise. */
  readonly rules?: readonly Rule[] | undefined;
  /** The day it is, `2031-06-21`; nothing is said of days to come without it. */
  readonly today?: string | undefined;
}

/** Everything found in a file, in the order of its lines. */
export function runChecks(
  analysis: JournalAnalysis,
  { choices = NO_CHOICES, rules, today }: CheckOptions = {},
): Finding[] {
  const ofTrips =
    rules === undefined ? analysis.trips.flatMap((day) => last(tripFindings(analysis, day, choices))) : [];
  const run = new CheckRun(analysis, choices, { today });
  for (const rule of rules ?? FILE_RULES) rule(run);
  return inFileOrder([...run.take(), ...ofTrips]);
}

/** Does most of the work of `runChecks` ahead of it, a rule a step, so that its caller may stop to answer others. */
export function* prepareChecks(analysis: JournalAnalysis, choices: SeverityChoices): Generator<void> {
  for (const day of analysis.trips) {
    yield* tripFindings(analysis, day, choices);
    yield;
  }
}

const NO_CHOICES: SeverityChoices = new Map();

/** What a generator returns in the end. */
function last<T>(steps: Generator<void, T>): T {
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  return step.value;
}
