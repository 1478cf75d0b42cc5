/** The journals that names are looked up in: open documents, the books they reach, and what the workspace's index has. */
import type { Parse } from "../../../grammar/parse.ts";
import type { BookFile } from "../../model/gear-lines.ts";
import { fileRecord } from "../../workspace/file-record.ts";
import type { FileRecord, IndexView } from "../../workspace/index-view.ts";
import type { Snapshot } from "../snapshot.ts";
import type { Journals } from "./journals.ts";

/** Files of the workspace that are not open. */
export interface ClosedFiles {
  readonly index: IndexView;
  /** A file as it is on disk; undefined when it can't be read. */
  read(uri: string): Parse | undefined;
  /** Its text, where that can be had at once. */
  text?(uri: string): string | undefined;
}

/** Lays the open documents over everything else. */
export function openJournals(
  open: ReadonlyMap<string, Snapshot>,
  booksNear: (uri: string) => readonly BookFile[],
  closed: ClosedFiles | undefined,
): Journals {
  const reached = (uri: string): Parse | undefined =>
    reachedBooks(open, booksNear).find((book) => book.uri === uri)?.parse;
  const openRecord = (uri: string): FileRecord | undefined => {
    const parse = open.get(uri)?.parse;
    return parse === undefined ? undefined : fileRecord(uri, parse);
  };
  return {
    index: {
      records: () => allRecords(open, booksNear, closed),
      record: (uri) => openRecord(uri) ?? closed?.index.record(uri),
    },
    booksNear,
    read: (uri) => open.get(uri)?.parse ?? closed?.read(uri) ?? reached(uri),
    text: (uri) => (open.has(uri) ? undefined : closed?.text?.(uri)),
    version: (uri) => open.get(uri)?.version ?? null,
    hasMark: (uri) => open.get(uri)?.parse.journal.bom === true,
  };
}

function* allRecords(
  open: ReadonlyMap<string, Snapshot>,
  booksNear: (uri: string) => readonly BookFile[],
  closed: ClosedFiles | undefined,
): Generator<FileRecord> {
  const told = new Set<string>(open.keys());
  for (const [uri, { parse }] of open) yield fileRecord(uri, parse);
  for (const record of closed?.index.records() ?? []) {
    if (told.has(record.uri)) continue;
    told.add(record.uri);
    yield record;
  }
  for (const { uri, parse } of reachedBooks(open, booksNear)) {
    if (told.has(uri)) continue;
    told.add(uri);
    yield fileRecord(uri, parse);
  }
}

function reachedBooks(
  open: ReadonlyMap<string, Snapshot>,
  booksNear: (uri: string) => readonly BookFile[],
): BookFile[] {
  return [...open.keys()].flatMap((uri) => booksNear(uri));
}
