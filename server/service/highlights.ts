/** The other places of a document that mean the same thing: written where a line says what it is, read elsewhere. */
import { type DocumentHighlight, DocumentHighlightKind, type Position } from "vscode-languageserver-types";
import { NameFinder, placeAt } from "./names/find-names.ts";
import { type Journals, rangeIn } from "./names/journals.ts";

/** The places to light up for a cursor. */
export function highlights(
  journals: Journals,
  uri: string,
  { line, character }: Position,
): DocumentHighlight[] {
  const record = journals.index.record(uri);
  const place = record === undefined ? undefined : placeAt(record, line, character);
  if (record === undefined || place === undefined) return [];
  const finder = new NameFinder(journals, [record]);
  const thing = finder.thingAt(record, place);
  if (thing === undefined) return [];
  return finder.placesIn(record, thing).map(({ range, role }) => ({
    range: rangeIn(journals, uri, range),
    kind: role === "definition" ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
  }));
}
