/** Gear books read from disk, kept until they change. */
import { statSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { type Parse, reparse } from "../../grammar/parse.ts";
import type { BookFile } from "../model/gear-lines.ts";
import { findBooks } from "./find-books.ts";
import { readText } from "./read-text.ts";

/** A book that could not be read, and why. */
export interface UnreadBook {
  readonly path: string;
  readonly why: string;
}

/** No file has this stamp. */
const UNSURE = "unsure";

interface Kept {
  readonly stamp: string;
  readonly parse: Parse | undefined;
  readonly why: string;
}

/** Reads books once and again only when their file changed. */
export class BookShelf {
  readonly #kept = new Map<string, Kept>();
  /** Books within reach by folder, since all files of a folder reach the same ones. */
  readonly #near = new Map<string, string[]>();

  /** Books within reach of a file, nearest first. */
  booksNear(path: string, roots: readonly string[]): { books: BookFile[]; unread: UnreadBook[] } {
    const books: BookFile[] = [];
    const unread: UnreadBook[] = [];
    for (const book of this.#pathsNear(path, roots)) {
      const kept = this.#read(book);
      if (kept.parse === undefined) unread.push({ path: book, why: kept.why });
      else books.push({ uri: pathToFileURL(book).href, parse: kept.parse });
    }
    return { books, unread };
  }

  /** Forgets which files exist and looks into each again; called when the file watcher reports a change. */
  forget(): void {
    this.#near.clear();
    for (const [path, kept] of this.#kept) this.#kept.set(path, { ...kept, stamp: UNSURE });
  }

  #pathsNear(path: string, roots: readonly string[]): string[] {
    const own = resolve(path);
    const key = [dirname(own), ...roots].join("\n");
    const known = this.#near.get(key) ?? findBooks(dirname(own), roots);
    this.#near.set(key, known);
    return known.filter((book) => book !== own);
  }

  #read(path: string): Kept {
    const stamp = stampOf(path);
    const known = this.#kept.get(path);
    if (known !== undefined && known.stamp === stamp) return known;
    const file = readText(path);
    // Lines that are as they were stay the same values, and with them all that was computed from them.
    const parse = file.ok ? reparse(known?.parse, file.text) : undefined;
    const kept = { stamp, parse, why: file.ok ? "" : file.why };
    this.#kept.set(path, kept);
    return kept;
  }
}

function stampOf(path: string): string {
  try {
    const { mtimeMs, size } = statSync(path);
    return `${mtimeMs} ${size}`;
  } catch {
    return "gone";
  }
}
