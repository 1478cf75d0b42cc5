/** The world outside, as the verbs see it. `main.ts` builds the real one; tests bring their own. */
import type { ListedFolder, PathKind } from "../../server/files/journal-walk.ts";
import type { TextFile } from "../../server/files/read-text.ts";
import type { BookFile } from "../../server/model/gear-lines.ts";

/** A stream that text goes out to. */
export interface Output {
  readonly isTerminal: boolean;
  /** Columns of the terminal; undefined where it is none or doesn't say. */
  readonly columns: number | undefined;
  write(text: string): void;
}

/** A gear book within reach that could not be read. */
export interface UnreadBook {
  readonly path: string;
  readonly why: string;
}

/** Files by absolute path. Nothing here throws: what fails comes back as a plain reason. */
export interface Files {
  kindOf(path: string): PathKind;
  list(folder: string): ListedFolder;
  readText(path: string): TextFile;
  /** Gear books within reach of a file, nearest first, itself left out. */
  booksNear(path: string): { books: BookFile[]; unread: UnreadBook[] };
  /** Writes a new file whole or not at all; over one that is there only if forced. Undefined when it worked. */
  writeText(path: string, text: string, isForced: boolean): string | undefined;
  /** Replaces a file's text whole or not at all, if it still reads `before`. Undefined when it worked. */
  replaceText(path: string, before: string, text: string): string | undefined;
}

/** Everything a verb may touch. */
export interface World {
  readonly cwd: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly version: string;
  /** The day it is, `2031-06-21`. */
  readonly today: string;
  readonly out: Output;
  /** For people: errors and progress. Never part of a verb's output. */
  readonly err: Output;
  readonly files: Files;
  /** Standard input, decoded strictly like a file. */
  readInput(): Promise<TextFile>;
  /** Starts the language server on the way of talking that the words name; it lives on in this process. */
  serve(ways: readonly string[]): Promise<void>;
}
