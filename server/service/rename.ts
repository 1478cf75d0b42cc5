/** Gives a thing another name, wherever it is meant, or says why that can't be done. */
import type { Position, Range, TextDocumentEdit, TextEdit, WorkspaceEdit } from "vscode-languageserver-types";
import { RENAME_REFUSALS } from "../checks/catalog/rename-sentences.ts";
import type { LineRange, NamedPlace } from "../model/named-places.ts";
import { CLOCK_LENGTH, hasPlainClock } from "../workspace/plain-clock.ts";
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
  const respell = new Respeller(name);
  for (const file of finder.files) {
    if (finder.placesIn(file, thing).length === 0) continue;
    const now = fileNow(journals, file);
    if (now === undefined) return { refused: RENAME_REFUSALS.unread(fileName(file.uri)) };
    const edits = respellFile(journals, now, finder.placesIn(now.names, thing), respell);
    if ("refused" in edits) return edits;
    if (edits.length > 0) files.push({ uri: file.uri, version: journals.version(file.uri), edits });
  }
  return { files };
}

function respellFile(
  journals: Journals,
  now: FileNow,
  places: readonly NamedPlace[],
  respell: Respeller,
): TextEdit[] | Refusal {
  const { uri } = now.names;
  const edits: TextEdit[] = [];
  for (const [lineIndex, ranges] of rangesByLine(places)) {
    const texts = respell.textsFor(now, lineIndex, ranges);
    if (texts === undefined)
      return { refused: RENAME_REFUSALS.misread(respell.name, spotOf(uri, lineIndex)) };
    const raw = now.raw(lineIndex);
    ranges.forEach((range, n) => {
      const newText = texts[n] ?? "";
      if (raw.slice(range.start, range.stop) !== newText)
        edits.push({ range: rangeIn(journals, uri, range), newText });
    });
  }
  return edits;
}

/** The ranges on each line, in order. */
function rangesByLine(places: readonly NamedPlace[]): Map<number, LineRange[]> {
  const byLine = new Map<number, LineRange[]>();
  for (const { range } of places) {
    const ranges = byLine.get(range.lineIndex);
    if (ranges === undefined) byLine.set(range.lineIndex, [range]);
    else ranges.push(range);
  }
  for (const ranges of byLine.values()) ranges.sort((a, b) => a.start - b.start);
  return byLine;
}

/** Spells lines with one new name. Logs repeat themselves: lines that differ in their clock alone are spelled once. */
class Respeller {
  readonly name: string;
  readonly #known = new Map<string, readonly string[] | undefined>();

  constructor(name: string) {
    this.name = name;
  }

  /** What goes into each of the ranges; undefined when no spelling leaves the rest of the line as it reads now. */
  textsFor(now: FileNow, lineIndex: number, ranges: readonly LineRange[]): readonly string[] | undefined {
    const raw = now.raw(lineIndex);
    if (!hasPlainClock(raw, 0)) return this.#spell(now, lineIndex, ranges);
    const key = `${ranges.map(({ start }) => start).join(" ")} ${raw.slice(CLOCK_LENGTH)}`;
    if (!this.#known.has(key)) this.#known.set(key, this.#spell(now, lineIndex, ranges));
    return this.#known.get(key);
  }

  #spell({ line }: FileNow, lineIndex: number, ranges: readonly LineRange[]): readonly string[] | undefined {
    return respelled(line(lineIndex), ranges, this.name)?.map(({ text }) => text);
  }
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
