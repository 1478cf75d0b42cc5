/** A language service over a whole workspace of texts, for the tests of what crosses files. */
import type { Position } from "vscode-languageserver-types";
import { parse } from "../../grammar/parse.ts";
import { LanguageService } from "../../server/service/language-service.ts";
import type { ClosedFiles } from "../../server/service/names/open-journals.ts";
import { fileRecord } from "../../server/workspace/file-record.ts";
import type { FileRecord } from "../../server/workspace/index-view.ts";
import { readMarks } from "../harness/markers.ts";
import { positionAt } from "./open-service.ts";

/** Folder of the workspace. */
export const ROOT = "file:///season/";

/** Texts by their path in the workspace. */
export type Texts = Readonly<Record<string, string>>;

/** The address of a file of the workspace. */
export const uriOf = (path: string): string => ROOT + path;
/** The path of an address in the workspace. */
export const pathOf = (uri: string): string => uri.slice(ROOT.length);

/** What else a test may want of the workspace. */
export interface AroundWorkspace {
  /** Addresses of files that can't be read. */
  readonly unread?: ReadonlySet<string>;
  /** Called whenever books are looked up. */
  readonly onBooksNear?: () => void;
  /** Called whenever a file that isn't open is read as a whole. */
  readonly onRead?: (uri: string) => void;
}

/** A service whose workspace holds the texts; those at the paths in `open` are open. */
export function openWorkspace(
  texts: Texts,
  open: readonly string[] = Object.keys(texts),
  { unread = new Set(), onBooksNear = () => undefined, onRead = () => undefined }: AroundWorkspace = {},
): LanguageService {
  const parses = new Map(Object.entries(texts).map(([path, text]) => [uriOf(path), parse(text)]));
  const read = (uri: string) => parses.get(uri);
  const record = (uri: string): FileRecord | undefined => {
    const known = parses.get(uri);
    return known && fileRecord(uri, known);
  };
  const closedFiles: ClosedFiles = {
    index: { record, records: () => [...parses.keys()].flatMap((uri) => record(uri) ?? []) },
    read: (uri) => {
      onRead(uri);
      return unread.has(uri) ? undefined : read(uri);
    },
    text: (uri) => (unread.has(uri) ? undefined : texts[pathOf(uri)]),
  };
  const service = new LanguageService({
    booksNear: (uri) => {
      onBooksNear();
      return booksNear(uri, [...parses.keys()]).map((book) => ({
        uri: book,
        parse: parse(texts[pathOf(book)] ?? ""),
      }));
    },
    severities: () => new Map(),
    closedFiles,
  });
  for (const path of open) service.update(uriOf(path), 1, texts[path] ?? "");
  return service;
}

/** Books from a file's folder upward, nearest first. */
function booksNear(uri: string, all: readonly string[]): string[] {
  const isAround = (book: string): boolean =>
    book !== uri && book.endsWith(".gear") && uri.startsWith(book.slice(0, book.lastIndexOf("/") + 1));
  return all.filter(isAround).sort((a, b) => b.split("/").length - a.split("/").length);
}

/** Texts without their marks: the one cursor in them, and every range. */
export interface MarkedWorkspace {
  readonly texts: Texts;
  readonly path: string;
  readonly at: Position;
  /** As `path:line:start-stop`. */
  readonly ranges: readonly string[];
}

/** Reads the marks of all texts. Throws when there isn't exactly one cursor. */
export function readWorkspace(marked: Texts): MarkedWorkspace {
  const texts: Record<string, string> = {};
  const cursors: { path: string; at: Position }[] = [];
  const ranges: string[] = [];
  for (const [path, source] of Object.entries(marked)) {
    const marks = readMarks(source);
    texts[path] = marks.text;
    cursors.push(...marks.cursors.map((offset) => ({ path, at: positionAt(marks.text, offset) })));
    for (const [start, stop] of marks.ranges) {
      ranges.push(placeText(path, positionAt(marks.text, start), positionAt(marks.text, stop)));
    }
  }
  const [cursor] = cursors;
  if (cursor === undefined || cursors.length > 1) throw new Error("one <|> is needed in all the texts");
  return { texts, ...cursor, ranges: ranges.sort() };
}

/** A place as `path:line:start-stop`. */
export function placeText(path: string, start: Position, end: Position): string {
  return `${path}:${start.line}:${start.character}-${end.character}`;
}
