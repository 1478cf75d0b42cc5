/** Every place that means the same thing as the name under the cursor, in every journal and book within reach. */
import type { Location, Position } from "vscode-languageserver-types";
import { NameFinder, placeAt } from "./names/find-names.ts";
import { type Journals, rangeIn } from "./names/journals.ts";

/** The places in the order of the files; with `withDefinitions` also those that say what the thing is. */
export function references(
  journals: Journals,
  uri: string,
  { line, character }: Position,
  withDefinitions: boolean,
): Location[] {
  const record = journals.index.record(uri);
  const place = record === undefined ? undefined : placeAt(record, line, character);
  if (record === undefined || place === undefined) return [];
  const finder = new NameFinder(journals, journals.index.records());
  const thing = finder.thingAt(record, place);
  if (thing === undefined) return [];
  return finder.files.flatMap((file) =>
    finder
      .placesIn(file, thing)
      .filter(({ role }) => withDefinitions || role === "use")
      .map(({ range }) => ({ uri: file.uri, range: rangeIn(journals, file.uri, range) })),
  );
}
