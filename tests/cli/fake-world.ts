/** A world for `run` with files in memory and streams that are kept. */
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { IS_THERE } from "../../client/cli/disk.ts";
import { run } from "../../client/cli/run.ts";
import type { Files, Output, World } from "../../client/cli/world.ts";
import { parse } from "../../grammar/parse.ts";
import type { Listed } from "../../server/files/journal-walk.ts";
import { decodeText, type TextFile } from "../../server/files/read-text.ts";

/** Where the captain stands. */
export const HERE = "/boat";

/** What a file holds: a text, bytes, or why it can't be read. */
export type Content = string | Uint8Array | { readonly why: string };

/** What differs from a piped run without environment. */
export interface Circumstances {
  readonly files?: Readonly<Record<string, Content>>;
  readonly input?: string | Uint8Array;
  readonly env?: Readonly<Record<string, string>>;
  /** Columns of a terminal; piped without. */
  readonly columns?: number;
  /** The error stream is a terminal. */
  readonly isWatched?: boolean;
  /** Called before each read, to change files meanwhile. */
  readonly onRead?: (path: string, files: Map<string, Content>) => void;
}

/** What a run did. */
export interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  /** The files afterwards, by path from where the captain stands. */
  readonly files: ReadonlyMap<string, Content>;
  /** Paths that were written. */
  readonly written: readonly string[];
  /** The ways of talking that a language server was started on. */
  readonly served: readonly (readonly string[])[];
}

/** Runs the program on words split at blanks (or given as a list). */
export async function deepwake(
  args: string | readonly string[],
  given: Circumstances = {},
): Promise<Outcome> {
  const files = new Map(Object.entries(given.files ?? {}).map(([path, held]) => [join(HERE, path), held]));
  const written: string[] = [];
  const served: (readonly string[])[] = [];
  const out = output(given.columns);
  const err = output(given.isWatched === true ? 80 : undefined);
  const world: World = {
    cwd: HERE,
    env: given.env ?? {},
    version: "0.0.0",
    today: "2040-01-01",
    out: out.stream,
    err: err.stream,
    files: memoryFiles(files, written, given.onRead),
    readInput: async () => textOf(given.input ?? ""),
    serve: async (ways) => void served.push(ways),
  };
  const words = typeof args === "string" ? args.split(" ") : args;
  const code = await run(words, world);
  const here = new Map([...files].map(([path, held]) => [path.slice(HERE.length + 1), held]));
  return { code, out: out.text(), err: err.text(), files: here, written, served };
}

function output(columns: number | undefined): { stream: Output; text: () => string } {
  let all = "";
  const stream = {
    isTerminal: columns !== undefined,
    columns,
    write: (text: string) => {
      all += text;
    },
  };
  return { stream, text: () => all };
}

function textOf(held: Content | undefined): TextFile {
  if (held === undefined) return { ok: false, why: "there is no such file" };
  if (typeof held === "string") return { ok: true, text: held };
  return held instanceof Uint8Array ? decodeText(held) : { ok: false, why: held.why };
}

function memoryFiles(files: Map<string, Content>, written: string[], onRead: Circumstances["onRead"]): Files {
  const namesIn = (folder: string): Listed[] => {
    const inside = [...files.keys()].filter((path) => path.startsWith(`${folder}/`));
    const names = inside.map((path) => path.slice(folder.length + 1).split("/"));
    const kinds = new Map(
      names.map(([name = "", ...more]) => [name, more.length > 0 ? "folder" : "file"] as const),
    );
    return [...kinds].map(([name, kind]) => ({ name, kind }));
  };
  const readText = (path: string): TextFile => {
    onRead?.(path, files);
    return textOf(files.get(path));
  };
  return {
    kindOf: (path) => {
      if (files.has(path)) return { kind: "file" };
      return path === HERE || namesIn(path).length > 0
        ? { kind: "folder" }
        : { kind: "none", why: "there is no such file" };
    },
    list: (folder) => ({ ok: true, names: namesIn(folder) }),
    readText,
    booksNear: (path) => booksNear(path, namesIn, readText),
    writeText: (path, text, isForced) => {
      if (files.has(path) && !isForced) return IS_THERE;
      files.set(path, text);
      written.push(path.slice(HERE.length + 1));
      return undefined;
    },
    replaceText: (path, before, text) => {
      if (files.get(path) !== before) return "it was changed by someone else meanwhile";
      files.set(path, text);
      written.push(path.slice(HERE.length + 1));
      return undefined;
    },
  };
}

function booksNear(
  path: string,
  namesIn: (folder: string) => Listed[],
  readText: (path: string) => TextFile,
): ReturnType<Files["booksNear"]> {
  const found: ReturnType<Files["booksNear"]> = { books: [], unread: [] };
  for (let folder = dirname(path); folder.startsWith(HERE); folder = dirname(folder)) {
    const names = namesIn(folder).filter(({ name, kind }) => kind === "file" && name.endsWith(".gear"));
    for (const book of names.map(({ name }) => join(folder, name)).filter((one) => one !== path)) {
      const text = readText(book);
      if (text.ok) found.books.push({ uri: pathToFileURL(book).href, parse: parse(text.text) });
      else found.unread.push({ path: book, why: text.why });
    }
  }
  return found;
}

/** A book and two days of it that most tests use. */
export const BOOK = `boat "Bright Penny"
  units ft mph F lb in
  zone America/Detroit

cable rigger-wire steel diameter 0.9 mm
ball round-12 sphere 12 lb
lure white-fly fly 2.5 in
rig C1 downrigger center cable rigger-wire ball round-12 probe 1.25 ft
rig C1U stacked C1
rig PB leadcore port cable rigger-wire
`;

export const GOOD_DAY = `trip 2031-06-21 "Bright Penny" charter
  anglers 4

04:45 depart
05:14 set C1 out 90 ft setback 20 ft lure white-fly
05:20 set PB out 5 colors lure white-fly
05:45 probe C1 depth 82 ft speed 2.5 mph
05:58 strike C1
06:14 catch C1 chinook 18 lb kept
06:18 again C1
~06:40 move C1 out 100 ft
10:20 pull all
11:20 return
`;

export const BAD_DAY = `trip 2031-06-22 "Bright Penny"

04:45 depart
05:00 probe C1 speed 2.5 mph
05:14 set C1 out 72,5 ft
05:20 strike D9
06:00 return
`;
