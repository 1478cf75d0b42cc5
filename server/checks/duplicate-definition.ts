import type { FactLine } from "../../grammar/journal.ts";
import type { JournalAnalysis } from "../analysis/journal-analysis.ts";
import { type BookFile, definitionKey, fileGear } from "../model/gear-lines.ts";
import { slotName } from "../model/quantities.ts";
import { DUPLICATE_DEFINITION } from "./catalog/language.ts";
import type { DefinitionSpot } from "./catalog/names.ts";
import { FIX_TITLES, RELATED } from "./catalog/titles.ts";
import type { CheckContext, RelatedPlace, Rule } from "./check.ts";
import { insert } from "./edits.ts";
import { fileNameAmong } from "./file-names.ts";
import { ownerNear } from "./owners.ts";
import { slotPlace } from "./places.ts";

/** A line that defines something: gear, or a boat's opener. */
interface Definition {
  readonly uri: string;
  readonly lineIndex: number;
  readonly line: FactLine;
  readonly boat: string | null;
}

/** Definitions by first day, kind and name; then by boat. */
type Firsts = Map<string, Map<string | null, Definition>>;

/** Flags a name that is defined twice for one boat and day, in one file or in two within reach of each other. */
export const duplicateDefinition: Rule = (context) => {
  const { analysis } = context;
  const [own, ...books] = analysis.files;
  if (own === undefined) return;
  const firsts: Firsts = new Map();
  for (const definition of books.flatMap(definitionsOf)) remember(firsts, definition);
  for (const written of definitionsOf(own)) {
    const definition = written.boat === null ? ofItsTrip(analysis, written) : written;
    const first = firstOf(firsts, definition);
    if (first !== undefined) reportTwice(context, definition, first);
    remember(firsts, definition);
  }
  reportBooksApart(context, definitionsOf(own), books.flatMap(definitionsOf));
};

function definitionsOf(file: BookFile): Definition[] {
  const { boats, lines } = fileGear(file);
  return [...boats.map((opener) => ({ uri: file.uri, ...opener })), ...lines];
}

/** A line above any boat speaks of every boat; in a trip's file it is there for that trip. */
function ofItsTrip(analysis: JournalAnalysis, definition: Definition): Definition {
  return { ...definition, boat: ownerNear(analysis, definition.lineIndex)?.boat ?? null };
}

/** The same kind, name and first day. */
function keyOf({ line }: Definition): string {
  return `${line.date ?? ""} ${definitionKey(line)}`;
}

function remember(firsts: Firsts, definition: Definition): void {
  const known = firsts.get(keyOf(definition)) ?? new Map<string | null, Definition>();
  if (!known.has(definition.boat)) known.set(definition.boat, definition);
  firsts.set(keyOf(definition), known);
}

function firstOf(firsts: Firsts, definition: Definition): Definition | undefined {
  const known = firsts.get(keyOf(definition));
  if (definition.boat === null) return known?.values().next().value;
  return known?.get(definition.boat) ?? known?.get(null);
}

function reportTwice({ analysis, report }: CheckContext, second: Definition, first: Definition): void {
  const { line, lineIndex } = second;
  const isOpener = line.verb === "boat";
  const related = [placeOf(first, isOpener ? RELATED.otherOpener : RELATED.firstDefinition)];
  const edits = [insert(analysis.uri, lineIndex, line.raw.length - line.raw.trimStart().length, "# ")];
  const isSame = first.line.raw.trim() === line.raw.trim();
  const fixes = isOpener ? [] : [{ title: FIX_TITLES.commentOut, edits, isPreferred: isSame }];
  const places = [null, spotOf(analysis, first, [analysis.uri])];
  const data = { verb: line.verb, name: slotName(line) ?? "", from: line.date, places };
  report(DUPLICATE_DEFINITION, slotPlace(lineIndex, line), data, { related, fixes });
}

/** Where a definition is; another file by its name, told apart from the files that it is spoken of with. */
function spotOf({ uri }: JournalAnalysis, one: Definition, besides: readonly string[]): DefinitionSpot {
  const file = one.uri === uri ? undefined : fileNameAmong(one.uri, besides);
  return { line: one.lineIndex + 1, file };
}

/** Two books that both open a trip's boat: told at the boat's first trip, for neither book may see the other. */
function reportBooksApart(
  { analysis, report }: CheckContext,
  own: readonly Definition[],
  books: readonly Definition[],
): void {
  const openers = new Map<string | null, Definition[]>();
  for (const one of books) {
    if (one.line.verb === "boat") openers.set(one.boat, [...(openers.get(one.boat) ?? []), one]);
  }
  const told = new Set(own.filter((one) => one.line.verb === "boat").map((one) => one.boat));
  for (const { trip } of analysis.trips) {
    const twice = openers.get(trip.boat) ?? [];
    if (twice.length < 2 || told.has(trip.boat)) continue;
    told.add(trip.boat);
    const related = twice.map((opener) => placeOf(opener, RELATED.otherOpener));
    const files = twice.map((opener) => opener.uri);
    const places = twice.slice(0, 2).map((opener) => spotOf(analysis, opener, files));
    const data = { verb: "boat", name: trip.boat, from: null, places };
    report(DUPLICATE_DEFINITION, slotPlace(trip.openerIndex, trip.opener, 1), data, { related });
  }
}

function placeOf({ uri, lineIndex, line }: Definition, message: string): RelatedPlace {
  return { uri, message, ...slotPlace(lineIndex, line) };
}
