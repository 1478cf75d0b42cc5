/** Reads and computes journals one after the other, each with the gear books in its reach. */
import { pathToFileURL } from "node:url";
import { parse } from "../../grammar/parse.ts";
import { createDepthMemo } from "../../server/analysis/depth-memo.ts";
import { analyzeJournal, type JournalAnalysis } from "../../server/analysis/journal-analysis.ts";
import type { TextFile } from "../../server/files/read-text.ts";
import type { BookFile } from "../../server/model/gear-lines.ts";
import { type NamedFile, shownPath, type Unusable } from "./paths.ts";
import { progressOf } from "./progress.ts";
import type { World } from "./world.ts";

/** One journal computed, or why it couldn't be. */
type ReadJournal =
  | { readonly ok: true; readonly file: NamedFile; readonly analysis: JournalAnalysis }
  | { readonly ok: false; readonly file: NamedFile; readonly why: string };

/** Reads the journals of one run. Depths and books once computed or read serve all of them. */
export class JournalReader {
  readonly #world: World;
  readonly #memo = createDepthMemo();
  readonly #unreadBooks = new Map<string, string>();

  constructor(world: World) {
    this.#world = world;
  }

  /** The files one by one, so that no more than one is held; with a progress line where there are many. */
  async *readAll(files: readonly NamedFile[]): AsyncGenerator<ReadJournal> {
    const progress = progressOf(this.#world, files.length);
    for (const file of files) {
      progress.step();
      yield await this.#read(file);
    }
    progress.done();
  }

  /** Books in reach of what was read so far that could not be read themselves; files named anyway are left out. */
  unreadBooks(named: readonly NamedFile[]): Unusable[] {
    const known = new Set(named.map((file) => file.path));
    return [...this.#unreadBooks]
      .filter(([path]) => !known.has(path))
      .map(([path, why]) => ({ shown: shownPath(path, this.#world), why }));
  }

  async #read(file: NamedFile): Promise<ReadJournal> {
    const text = await textOf(file, this.#world);
    if (!text.ok) return { ok: false, file, why: text.why };
    const uri = pathToFileURL(file.path).href;
    const analysis = analyzeJournal({ uri, parse: parse(text.text) }, this.booksNear(file.path), this.#memo);
    return { ok: true, file, analysis };
  }

  /** Gear books in reach of a path; those that can't be read are remembered. */
  booksNear(path: string): BookFile[] {
    const { books, unread } = this.#world.files.booksNear(path);
    for (const book of unread) this.#unreadBooks.set(book.path, book.why);
    return books;
  }
}

/** The text of a file or of standard input. */
export function textOf(file: NamedFile, world: World): Promise<TextFile> | TextFile {
  return file.isInput ? world.readInput() : world.files.readText(file.path);
}
