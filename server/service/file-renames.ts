/** What journals have to say differently when files are renamed: the names of pictures, in whatever folder they lie. */
import type { TextEdit } from "vscode-languageserver-types";
import { type Journals, rangeIn } from "./names/journals.ts";
import { type FileNow, fileNow } from "./names/lines-asked.ts";
import { namedFile } from "./names/named-file.ts";
import { respelled } from "./names/respell.ts";
import { pictureName, picturePath } from "./picture-files.ts";
import type { FileEdits, Renaming } from "./rename.ts";

/** A file or a folder that gets another address. */
export interface FileRename {
  readonly oldUri: string;
  readonly newUri: string;
}

/** The edits that keep every picture found, to be made before the files move. */
export function fileRenameEdits(journals: Journals, renames: readonly FileRename[]): Renaming {
  const moves = renames.map(({ oldUri, newUri }) => ({ oldUri: plain(oldUri), newUri: plain(newUri) }));
  const files: FileEdits[] = [];
  for (const record of journals.index.records()) {
    const { uri, places } = record;
    if (!places.some(({ kind }) => kind === "picture")) continue;
    const now = fileNow(journals, namedFile(record));
    const edits = now === undefined ? [] : pictureEdits(journals, now, moves);
    if (edits.length > 0) files.push({ uri, version: journals.version(uri), edits });
  }
  return { files };
}

function pictureEdits(
  journals: Journals,
  { line, names: { uri, places } }: FileNow,
  moves: readonly FileRename[],
): TextEdit[] {
  const journal = plain(uri);
  const home = moved(journal, moves);
  return places.flatMap(({ kind, name, range }) => {
    const picture = kind === "picture" ? picturePath(journal, name) : undefined;
    if (picture === undefined) return [];
    const target = moved(picture, moves);
    if (picturePath(home, name) === target) return [];
    const renamed = pictureName(home, target);
    const spelling =
      renamed === undefined ? undefined : respelled(line(range.lineIndex), [range], renamed)?.[0];
    return spelling === undefined ? [] : [{ range: rangeIn(journals, uri, range), newText: spelling.text }];
  });
}

/** An address without its escapes: clients differ in what they escape. A folder's has no slash at its end. */
function plain(uri: string): string {
  try {
    return decodeURIComponent(uri).replace(/\/$/u, "");
  } catch {
    return uri;
  }
}

/** Where a file lies afterwards; a folder that moves takes along what is in it, the innermost first. */
function moved(uri: string, moves: readonly FileRename[]): string {
  const taken = moves.filter(({ oldUri }) => uri === oldUri || uri.startsWith(`${oldUri}/`));
  const [innermost] = taken.sort((a, b) => b.oldUri.length - a.oldUri.length);
  return innermost === undefined ? uri : innermost.newUri + uri.slice(innermost.oldUri.length);
}
