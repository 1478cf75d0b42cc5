/** Boats, gear, places and trips of the whole workspace, found by some of their letters in order. */
import { SymbolKind, type WorkspaceSymbol } from "vscode-languageserver-types";
import type { NamedKind, NamedPlace } from "../model/named-places.ts";
import type { FileRecord, TripHeading } from "../workspace/index-view.ts";
import { type Journals, rangeIn } from "./names/journals.ts";
import { nameOwner } from "./names/name-owner.ts";

/** More answers than anyone reads; typing another letter brings the rest. */
export const MOST_SYMBOLS = 128;

const KINDS: Partial<Record<NamedKind, SymbolKind>> = {
  boat: SymbolKind.Package,
  rig: SymbolKind.Object,
  cable: SymbolKind.Constant,
  ball: SymbolKind.Constant,
  lure: SymbolKind.Constant,
  spot: SymbolKind.Constant,
};

/** A symbol before its place is worked out. */
interface Candidate {
  readonly record: FileRecord;
  readonly lineIndex: number;
  readonly place: NamedPlace | undefined;
  readonly kind: SymbolKind;
  readonly name: string;
  readonly container: string;
  /** What a trip is sorted by, newest first; empty for what lasts. */
  readonly date: string;
}

/**
 * The symbols for a query, best first: names that hold it in one piece before those with letters between, early
 * before late, short before long, newer trips before older. Blanks, capitals and accents don't count.
 */
export function workspaceSymbols(journals: Journals, query: string): WorkspaceSymbol[] {
  const wanted = searchable(query);
  const best: Scored[] = [];
  for (const record of journals.index.records()) {
    for (const candidate of candidatesIn(record)) {
      const score = scoreOf(wanted, candidate);
      if (score !== undefined) keep(best, { candidate, score });
    }
  }
  return best
    .sort(byScore)
    .slice(0, MOST_SYMBOLS)
    .map(({ candidate }) => symbolOf(journals, candidate));
}

interface Scored {
  readonly candidate: Candidate;
  readonly score: number;
}

/** Twice as many are kept as are shown, so that sorting is seldom. */
function keep(best: Scored[], one: Scored): void {
  best.push(one);
  if (best.length < 2 * MOST_SYMBOLS) return;
  best.sort(byScore);
  best.length = MOST_SYMBOLS;
}

function byScore(a: Scored, b: Scored): number {
  if (a.score !== b.score) return a.score - b.score;
  const [one, other] = [a.candidate, b.candidate];
  if (one.date !== other.date) return one.date < other.date ? 1 : -1;
  return one.name < other.name ? -1 : Number(one.name > other.name);
}

function* candidatesIn(record: FileRecord): Generator<Candidate> {
  for (const trip of record.trips) yield tripCandidate(record, trip);
  const seen = new Set<string>();
  for (const place of record.definitions) {
    const kind = KINDS[place.kind];
    if (kind === undefined) continue;
    const { lineIndex } = place.range;
    const boat = place.kind === "boat" ? "" : (nameOwner(record, lineIndex)?.boat ?? "");
    // A rig that changed over the season is listed once, at its first line.
    const key = `${place.kind} ${boat} ${place.name}`;
    if (seen.has(key)) continue;
    seen.add(key);
    yield { record, lineIndex, place, kind, name: place.name, container: containerOf(place, boat), date: "" };
  }
}

function containerOf({ kind }: NamedPlace, boat: string): string {
  return boat === "" ? kind : `${kind}, ${boat}`;
}

/** The port is part of the name: editors look for the letters there once more. */
function tripCandidate(record: FileRecord, { lineIndex, date, boat, harbor }: TripHeading): Candidate {
  const name = `${date} ${boat}`.trim();
  return {
    record,
    lineIndex,
    place: undefined,
    kind: SymbolKind.Event,
    name: [name, harbor ?? ""].filter((part) => part !== "").join(", "),
    container: "trip",
    date,
  };
}

function symbolOf(journals: Journals, { record, lineIndex, place, ...symbol }: Candidate): WorkspaceSymbol {
  const range = place?.range ?? { lineIndex, start: 0, stop: 0 };
  return {
    name: symbol.name || symbol.container,
    kind: symbol.kind,
    containerName: symbol.container,
    location: { uri: record.uri, range: rangeIn(journals, record.uri, range) },
  };
}

/** How well a query fits, less is better; undefined where its letters are not all there in order. */
function scoreOf(wanted: string, { name }: Candidate): number | undefined {
  if (wanted === "") return 0;
  const text = searchable(name);
  const whole = text.indexOf(wanted);
  if (whole >= 0) return whole + text.length / 1000;
  const gaps = gapsIn(wanted, text);
  return gaps === undefined ? undefined : 1000 + gaps + text.length / 1000;
}

/** Letters skipped between the first and the last one found; undefined where one is missing. */
function gapsIn(wanted: string, text: string): number | undefined {
  let at = -1;
  let first = -1;
  for (const letter of wanted) {
    at = text.indexOf(letter, at + 1);
    if (at < 0) return undefined;
    if (first < 0) first = at;
  }
  return at - first + 1 - wanted.length;
}

/** Letters and digits alone, without capitals and accents. */
function searchable(text: string): string {
  return text
    .normalize("NFD")
    .replaceAll(/[^\p{L}\p{N}]/gu, "")
    .toLowerCase();
}
