/** The world of a server that reaches files through its client: in a browser, or in a workspace that is on no disk. */
import type { Connection } from "vscode-languageserver";
import { type Parse, parse } from "../../grammar/parse.ts";
import { GEAR_ENDING } from "../files/endings.ts";
import { dayOf } from "../files/today.ts";
import { ClientFolders } from "./client-folders.ts";
import { type FileParams, type FolderEntry, LIST_FOLDER, READ_FILE } from "./protocol.ts";
import type { ServerWorld } from "./server-world.ts";

/** Files by address, as a client gives them; null where it can't. */
export interface ClientFiles {
  listFolder(uri: string): Promise<readonly FolderEntry[] | null>;
  readFile(uri: string): Promise<string | null>;
}

/** Folders never climbed above when no root is known, as on a disk. */
const MOST_FOLDERS = 32;

interface Book {
  readonly uri: string;
  readonly parse: Parse;
}

/** What was fetched since files were last forgotten. */
interface Round {
  readonly folders: Map<string, Promise<readonly FolderEntry[]>>;
  readonly fetches: Map<string, Promise<void>>;
  readonly fetched: Set<string>;
}

/** Asks the client of a connection. One that doesn't know the requests, or fails at them, has no files. */
export function filesOf(connection: Connection): ClientFiles {
  const ask = <Answer>(method: string, uri: string): Promise<Answer | null> => {
    const params: FileParams = { uri };
    return connection.sendRequest<Answer | null>(method, params).catch(() => null);
  };
  return { listFolder: (uri) => ask(LIST_FOLDER, uri), readFile: (uri) => ask(READ_FILE, uri) };
}

/** Books come from the folders above a document, up to the workspace's root; they are fetched before they are used. */
export function clientWorld(files: ClientFiles): ServerWorld {
  const shelf = new FetchedBooks(files);
  return {
    booksNear: (uri) => shelf.near(uri).filter((book) => book.uri !== uri),
    ready: (uri) => shelf.fetch(uri),
    setRoots: (uris) => shelf.setRoots(uris),
    forgetFiles: () => shelf.forget(),
    files: new ClientFolders(files, () => shelf.roots),
    today: () => dayOf(new Date()),
  };
}

class FetchedBooks {
  readonly #files: ClientFiles;
  /** Books near each folder, as they were fetched last: they hold until newer ones have come. */
  readonly #near = new Map<string, readonly Book[]>();
  readonly #read = new Map<string, { text: string; book: Book }>();
  #roots: readonly string[] = [];
  #round = newRound();

  constructor(files: ClientFiles) {
    this.#files = files;
  }

  /** The workspace's folders, without a slash at the end. */
  get roots(): readonly string[] {
    return this.#roots;
  }

  setRoots(uris: readonly string[]): void {
    this.#roots = uris.map((uri) => uri.replace(/\/+$/u, ""));
    this.forget();
  }

  forget(): void {
    this.#round = newRound();
  }

  near(uri: string): readonly Book[] {
    return this.#near.get(this.#folderOf(uri) ?? "") ?? [];
  }

  /** Fetches the books near a document; undefined when they are there. */
  fetch(uri: string): Promise<void> | undefined {
    const folder = this.#folderOf(uri);
    const { fetched, fetches } = this.#round;
    if (folder === undefined || fetched.has(folder)) return undefined;
    const known = fetches.get(folder);
    if (known !== undefined) return known;
    const fetching = this.#fetchNear(folder, this.#round);
    fetches.set(folder, fetching);
    return fetching;
  }

  async #fetchNear(folder: string, round: Round): Promise<void> {
    const entries = await this.#bookEntries(folder, round);
    const books = await Promise.all(entries.map((entry) => this.#book(entry)));
    if (round === this.#round || !this.#near.has(folder)) this.#near.set(folder, books.flat());
    round.fetched.add(folder);
  }

  /** Nearest folder first, and by name within a folder; climbing stops at a root, a repository's root or the top. */
  async #bookEntries(own: string, round: Round): Promise<FolderEntry[]> {
    const found: FolderEntry[] = [];
    let folder: string | undefined = own;
    for (let climbed = 0; folder !== undefined && climbed < MOST_FOLDERS; climbed++) {
      const entries: readonly FolderEntry[] = await this.#list(folder, round);
      const books = entries.filter(({ name, isFile }) => isFile && name.toLowerCase().endsWith(GEAR_ENDING));
      found.push(...books.toSorted((a, b) => (a.name < b.name ? -1 : 1)));
      if (this.#roots.includes(folder) || entries.some(({ name }) => name === ".git")) break;
      folder = folderAbove(folder);
    }
    return found;
  }

  #list(folder: string, { folders }: Round): Promise<readonly FolderEntry[]> {
    const known = folders.get(folder);
    if (known !== undefined) return known;
    const listing = this.#files.listFolder(folder).then((entries) => entries ?? []);
    folders.set(folder, listing);
    return listing;
  }

  /** A book that still reads the same stays the very object. */
  async #book({ uri }: FolderEntry): Promise<Book[]> {
    const text = await this.#files.readFile(uri);
    if (text === null) return [];
    const known = this.#read.get(uri);
    if (known?.text === text) return [known.book];
    const book = { uri, parse: parse(text) };
    this.#read.set(uri, { text, book });
    return [book];
  }

  /** A document that was never saved is taken to lie in the first folder. */
  #folderOf(uri: string): string | undefined {
    return uri.startsWith("untitled:") ? this.#roots[0] : folderAbove(uri);
  }
}

function newRound(): Round {
  return { folders: new Map(), fetches: new Map(), fetched: new Set() };
}

/** The address of the folder that a file or folder is in; undefined at the top. */
function folderAbove(uri: string): string | undefined {
  const path = uri.replace(/[?#].*$/u, "");
  const above = path.slice(0, path.lastIndexOf("/"));
  return /^[\w.+-]+:\/\/?[^/]*(?:\/.*)?$/u.test(above) && !above.endsWith("/") ? above : undefined;
}
