/**
 * Findings of a trip, rule by rule, kept with its opener. After an edit only the rules run that could see what changed;
 * what the others found moves along with its lines.
 */
import type { FactLine } from "../../grammar/journal.ts";
import type { JournalAnalysis, TripAnalysis } from "../analysis/journal-analysis.ts";
import type { Trip } from "../model/trip.ts";
import { TripChange } from "../model/trip-change.ts";
import type { Finding, LineRule, Place, TripRule } from "./check.ts";
import { CheckRun, type SeverityChoices } from "./check-run.ts";
import { TRIP_RULES } from "./day-rules.ts";
import { inFileOrder } from "./in-file-order.ts";

interface KnownFindings {
  /** The severities they were found with; compared by identity. */
  readonly choices: SeverityChoices;
  readonly trip: Trip;
  readonly isFollowed: boolean;
  /** Nearly every rule finds nothing, and is left out. */
  readonly byRule: ReadonlyMap<TripRule, readonly Finding[]>;
  readonly inOrder: readonly Finding[];
}

const knownFindings = new WeakMap<FactLine, KnownFindings>();

/** What the rules of one trip find in it, seen as if it were alone in its file; a step for each rule that runs. */
export function* tripFindings(
  analysis: JournalAnalysis,
  day: TripAnalysis,
  choices: SeverityChoices,
): Generator<void, readonly Finding[]> {
  const { trip } = day;
  const last = knownFindings.get(trip.opener);
  const isFollowed = analysis.trips.at(-1) !== day;
  const known = last?.choices === choices && last.isFollowed === isFollowed ? last : undefined;
  if (known?.trip === trip) return known.inOrder;
  const change = known && TripChange.between(known.trip, trip);
  const run = new CheckRun({ ...analysis, trips: [day] }, choices, { isFollowed });
  const byRule = new Map<TripRule, readonly Finding[]>();
  for (const rule of TRIP_RULES) {
    const before = known?.byRule.get(rule) ?? NONE;
    let found = change && keptBy(rule, before, change, trip.uri);
    if (found === undefined) {
      look(rule, run, trip);
      found = run.take();
      yield;
    } else if ("ofLine" in rule && change?.isNone === false) {
      lookAtLines(rule.ofLine, run, trip, (lineIndex) => change.isNew(lineIndex));
      found = [...found, ...run.take()];
    }
    if (found.length > 0) byRule.set(rule, found);
  }
  const inOrder = inFileOrder([...byRule.values()].flat());
  knownFindings.set(trip.opener, { choices, trip, isFollowed, byRule, inOrder });
  return inOrder;
}

const NONE: readonly Finding[] = [];

function look(rule: TripRule, run: CheckRun, trip: Trip): void {
  if ("rule" in rule) rule.rule(run);
  else lookAtLines(rule.ofLine, run, trip);
}

function lookAtLines(
  rule: LineRule,
  run: CheckRun,
  trip: Trip,
  isMeant = (_: number): boolean => true,
): void {
  for (const event of trip.events) if (isMeant(event.lineIndex)) rule(run, trip, event);
}

/** What a rule found before that still holds, at its place now; undefined where the rule has to run again. */
function keptBy(
  rule: TripRule,
  found: readonly Finding[],
  change: TripChange,
  uri: string,
): readonly Finding[] | undefined {
  if ("rule" in rule && change.isSeenWith(rule.sees)) return undefined;
  const touches = (place: Place): boolean => change.isChanged(place.lineIndex);
  const isTouched = (finding: Finding): boolean =>
    touches(finding) || finding.related.some((place) => place.uri === uri && touches(place));
  if ("rule" in rule && found.some(isTouched)) return undefined;
  const kept = "rule" in rule ? found : found.filter((finding) => !isTouched(finding));
  return change.isStill ? kept : moved(kept, change, uri);
}

/** The findings with every place of their file moved as far as its line was; undefined where one can't be followed. */
function moved(findings: readonly Finding[], change: TripChange, uri: string): Finding[] | undefined {
  let isLost = false;
  const move = <T extends Place>(place: T): T => {
    const lineIndex = change.lineNow(place.lineIndex);
    isLost ||= lineIndex === undefined;
    return { ...place, lineIndex: lineIndex ?? place.lineIndex };
  };
  const moveIn = <T extends Place & { readonly uri: string }>(place: T): T =>
    place.uri === uri ? move(place) : place;
  const all = findings.map((finding) => ({
    ...move(finding),
    related: finding.related.map(moveIn),
    fixes: finding.fixes.map((fix) => ({ ...fix, edits: fix.edits.map(moveIn) })),
  }));
  return isLost ? undefined : all;
}
