/** Gives a thing another name, wherever it is meant, or says why that can't be done. */
import type { Position, Range, TextDocumentEdit, TextEdit, WorkspaceEdit } from "vscode-languageserver-types";
import { RENAME_REFUSALS } from "../checks/catalog/rename-sentences.ts";
import type { NamedPlace } from "../model/named-places.ts";
import { NameFinder, placeAt } from "./names/find-names.ts";
import { type Journals, rangeIn } from "./names/journals.ts";
import { type FileNow, fileNow } from "./names/lines-asked.ts";
import { typedName, whyNotName } from "./names/new-name.ts";
import { respelled } from "./names/respell.ts";
import { fileName, spotOf } from "./names/spots.ts";
import { takenBy } from "./names/taken-name.ts";
import { isFish, type Thing } from "./names/thing.ts";

/** Why a thing keeps its name, for the captain to read. */
export interface Refusal {
  readonly refused: string;
}

/** What an editor asks before the new name is typed. */
export interface Renamable {
  readonly range: Range;
  /** The name without quotes. */
  readonly placeholder: string;
}

/** The edits, by file. */
export interface Renaming {
  readonly files: readonly FileEdits[];
}

export interface FileEdits {
  readonly uri: string;
  /** Null for a file that isn't open. */
  readonly version: number | null;
  readonly edits: readonly TextEdit[];
}

interface Named {
  readonly finder: NameFinder;
  readonly place: NamedPlace;
  readonly thing: Thing;
}

/** The name under the cursor; null where there is none that could be another. */
export function prepareRename(journals: Journals, uri: string, at: Position): Renamable | Refusal | null {
  const named = namedAt(journals, uri, at);
  if (named === undefined) return null;
  const { place, thing } = named;
  if (isFish(thing)) return { refused: RENAME_REFUSALS.fish(thing.name) };
  return { range: rangeIn(journals, uri, place.range), placeholder: place.name };
}

/** The edits that give the thing under the cursor a new name; null where nothing there has a name. */
export function rename(
  journals: Journals,
  uri: string,
  at: Position,
  typed: string,
): Renaming | Refusal | null {
  const named = namedAt(journals, uri, at);
  if (named === undefined) return null;
  const { finder, thing } = named;
  if (isFish(thing)) return { refused: RENAME_REFUSALS.fish(thing.name) };
  const name = typedName(typed);
  const refused = whyNotName(thing, name, finder.definitions(thing)) ?? takenBy(finder, thing, name);
  if (refused !== undefined) return { refused };
  return editsOf(journals, named, name);
}

function namedAt(journals: Journals, uri: string, { line, character }: Position): Named | undefined {
  const record = journals.index.record(uri);
  const place = record === undefined ? undefined : placeAt(record, line, character);
  if (record === undefined || place === undefined) return undefined;
  const finder = new NameFinder(journals, journals.index.records());
  const thing = finder.thingAt(record, place);
  return thing === undefined ? undefined : { finder, place, thing };
}

function editsOf(journals: Journals, { finder, thing }: Named, name: string): Renaming | Refusal {
  const files: FileEdits[] = [];
  for (const file of finder.files) {
    if (finder.placesIn(file, thing).length === 0) continue;
    const now = fileNow(journals, file);
    if (now === undefined) return { refused: RENAME_REFUSALS.unread(fileName(file.uri)) };
    const edits = respellFile(journals, now, finder.placesIn(now.names, thing), name);
    if ("refused" in edits) return edits;
    if (edits.length > 0) files.push({ uri: file.uri, version: journals.version(file.uri), edits });
  }
  return { files };
}

function respellFile(
  journals: Journals,
  { line, names: { uri } }: FileNow,
  places: readonly NamedPlace[],
  name: string,
): TextEdit[] | Refusal {
  const edits: TextEdit[] = [];
  for (const lineIndex of new Set(places.map(({ range }) => range.lineIndex))) {
    const ranges = places.map(({ range }) => range).filter((range) => range.lineIndex === lineIndex);
    const spellings = respelled(line(lineIndex), ranges, name);
    if (spellings === undefined) return { refused: RENAME_REFUSALS.misread(name, spotOf(uri, lineIndex)) };
    for (const { range, text } of spellings) {
      const isSame = line(lineIndex)?.line.raw.slice(range.start, range.stop) === text;
      if (!isSame) edits.push({ range: rangeIn(journals, uri, range), newText: text });
    }
  }
  return edits;
}

/** A renaming for the client: by versions where it can hold edits to them. */
export function workspaceEdit({ files }: Renaming, isVersioned: boolean): WorkspaceEdit {
  if (!isVersioned) return { changes: Object.fromEntries(files.map(({ uri, edits }) => [uri, [...edits]])) };
  const documentChanges: TextDocumentEdit[] = files.map(({ uri, version, edits }) => ({
    textDocument: { uri, version },
    edits: [...edits],
  }));
  return { documentChanges };
}
