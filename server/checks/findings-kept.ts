/** Findings of a trip, kept with its lines; they move along where lines were added or taken away above it. */
import type { Trip } from "../model/trip.ts";
import { contentOf } from "../model/trips-of.ts";
import type { Finding, Place } from "./check.ts";

interface KnownFindings {
  /** The severities they were found with; compared by identity. */
  readonly choices: object;
  readonly trip: Trip;
  readonly findings: readonly Finding[];
}

const knownFindings = new WeakMap<object, KnownFindings>();

/** What was found in a trip of the very same lines and gear, at its place now; else what `find` gives. */
export function findingsKept(
  trip: Trip,
  choices: object,
  find: () => readonly Finding[],
): readonly Finding[] {
  const content = contentOf(trip);
  const known = knownFindings.get(content);
  const isKnown = known !== undefined && known.choices === choices;
  if (isKnown && known.trip === trip) return known.findings;
  const findings = isKnown ? moved(known, trip) : find();
  knownFindings.set(content, { choices, trip, findings });
  return findings;
}

/** The findings with every place from the trip's opener on moved as far as the trip was; gear above it stayed. */
function moved({ trip: { openerIndex, uri }, findings }: KnownFindings, to: Trip): Finding[] {
  const by = to.openerIndex - openerIndex;
  const move = <T extends Place>(place: T): T =>
    place.lineIndex < openerIndex ? place : { ...place, lineIndex: place.lineIndex + by };
  const moveIn = <T extends Place & { readonly uri: string }>(place: T): T =>
    place.uri === uri ? move(place) : place;
  return findings.map((finding) => ({
    ...move(finding),
    related: finding.related.map(moveIn),
    fixes: finding.fixes.map((fix) => ({ ...fix, edits: fix.edits.map(moveIn) })),
  }));
}
