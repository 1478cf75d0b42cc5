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

/** What was found in a trip of the very same lines and gear, at its place now; undefined where none was looked at. */
export function findingsKnown(trip: Trip, choices: object): readonly Finding[] | undefined {
  const known = knownFindings.get(contentOf(trip));
  if (known === undefined || known.choices !== choices) return undefined;
  if (known.trip === trip) return known.findings;
  const findings = moved(known, trip);
  keepFindings(trip, choices, findings);
  return findings;
}

/** Keeps what was found in a trip. */
export function keepFindings(trip: Trip, choices: object, findings: readonly Finding[]): void {
  knownFindings.set(contentOf(trip), { choices, trip, findings });
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
