/** The records of every journal and gear book of the workspace. What is open counts as it stands in the editor. */
import type { Parse } from "../../grammar/parse.ts";
import { fileRecord, type PackedRecord } from "./file-record.ts";
import type { FileRecord, IndexView } from "./index-view.ts";
import { NameTable } from "./name-table.ts";
import { RecordReader } from "./record-reader.ts";
import type { ListedFile, Turns, WorkspaceFiles } from "./workspace-files.ts";

/** More files than this are no captain's journals; the rest is left out. */
export const MOST_FILES = 20_000;
/** Nor are files searched for in more folders than this. */
const MOST_PARTS = 50_000;

/** The documents that are open in the editor. */
export interface OpenDocuments {
  uris(): Iterable<string>;
  parseOf(uri: string): Parse | undefined;
}

/** A file on disk as it was read last. */
export interface KeptFile {
  readonly stamp: string;
  readonly record: PackedRecord;
}

/** What a look at all files came to. */
export interface ScanOutcome {
  /** Files whose text is another than before, those that are new included. */
  readonly changed: readonly string[];
  readonly removed: readonly string[];
  /** There are more files or folders than are looked at. */
  readonly isCut: boolean;
}

/** Called while files are looked at: how many are done of how many. */
export type Progress = (done: number, all: number) => void;

/** Knows every file. Files on disk are read when `scan` or `update` is called, open documents when they are asked for. */
export class WorkspaceIndex implements IndexView {
  readonly #files: WorkspaceFiles;
  readonly #open: OpenDocuments;
  #names = new NameTable();
  #reader = new RecordReader(this.#names);
  readonly #kept = new Map<string, KeptFile>();
  #filesRead = 0;

  constructor(files: WorkspaceFiles, open: OpenDocuments) {
    this.#files = files;
    this.#open = open;
  }

  get names(): NameTable {
    return this.#names;
  }

  *records(): Generator<FileRecord> {
    for (const uri of this.#open.uris()) {
      const parse = this.#open.parseOf(uri);
      if (parse !== undefined) yield fileRecord(uri, parse);
    }
    for (const [uri, { record }] of this.#kept) if (this.#open.parseOf(uri) === undefined) yield record;
  }

  record(uri: string): FileRecord | undefined {
    const parse = this.#open.parseOf(uri);
    return parse === undefined ? this.#kept.get(uri)?.record : fileRecord(uri, parse);
  }

  /** The files on disk, open or not. */
  kept(): ReadonlyMap<string, KeptFile> {
    return this.#kept;
  }

  /** How many files and lines were read since the start, for tests that count work. */
  get work(): { readonly files: number; readonly lines: number } {
    return { files: this.#filesRead, lines: this.#reader.linesRead };
  }

  /** Takes what an earlier run knew instead of what is known; the next scan reads what changed since. */
  restore(names: NameTable, files: Iterable<KeptFile>): void {
    this.#names = names;
    this.#reader = new RecordReader(names);
    this.#kept.clear();
    for (const file of files) this.#kept.set(file.record.uri, file);
  }

  /** Looks at every file and reads those that are new or have changed. */
  async scan(turns: Turns, progress: Progress = () => undefined): Promise<ScanOutcome> {
    const { files, isCut } = await this.#list(turns);
    const removed = [...this.#kept.keys()].filter((uri) => !files.has(uri));
    for (const uri of removed) this.#kept.delete(uri);
    const changed: string[] = [];
    let done = 0;
    for (const file of files.values()) {
      progress(done++, files.size);
      if (this.#kept.get(file.uri)?.stamp === file.stamp) continue;
      if (await this.#read(file)) changed.push(file.uri);
      const pause = turns.pause();
      if (pause !== undefined) await pause;
    }
    this.#reader.forget();
    return { changed, removed, isCut };
  }

  /** Looks at one file again; true when its text is another, or it is gone. */
  async update(uri: string): Promise<boolean> {
    const file = await this.#files.find(uri);
    if (file === undefined) return this.#kept.delete(uri);
    return this.#read(file);
  }

  /** Forgets a file, or all files under a folder; gives those that were known. */
  remove(uri: string): string[] {
    const folder = uri.endsWith("/") ? uri : `${uri}/`;
    const gone = [...this.#kept.keys()].filter((known) => known === uri || known.startsWith(folder));
    for (const known of gone) this.#kept.delete(known);
    return gone;
  }

  async #list(turns: Turns): Promise<{ files: Map<string, ListedFile>; isCut: boolean }> {
    const files = new Map<string, ListedFile>();
    let parts = 0;
    for await (const part of this.#files.list()) {
      for (const file of part) {
        if (files.size >= MOST_FILES && !files.has(file.uri)) return { files, isCut: true };
        files.set(file.uri, file);
      }
      if (++parts >= MOST_PARTS) return { files, isCut: true };
      const pause = turns.pause();
      if (pause !== undefined) await pause;
    }
    return { files, isCut: false };
  }

  /** A file that can't be read is as good as gone. */
  async #read({ uri, stamp }: ListedFile): Promise<boolean> {
    const read = this.#files.read(uri);
    const text = read instanceof Promise ? await read : read;
    if (text === undefined) return this.#kept.delete(uri);
    this.#filesRead++;
    const before = this.#kept.get(uri)?.record.hash;
    const record = this.#reader.read(uri, text);
    this.#kept.set(uri, { stamp, record });
    return record.hash !== before;
  }
}
