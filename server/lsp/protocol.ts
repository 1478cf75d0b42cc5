/**
 * What server and client ask of each other beside the protocol: the server asks for files, where it has no disk of its
 * own or the files are not on one. A client that doesn't know these requests is a client without books.
 */

/** Asks for the entries of a folder: `{ uri }` → what is in it, or null where it can't be listed. */
export const LIST_FOLDER = "deepwake/listFolder";

/** Asks for a file's text: `{ uri }` → the text, or null where it is none or can't be read. */
export const READ_FILE = "deepwake/readFile";

/**
 * Asked of a server in a browser's worker: the name of a lock that it holds as long as it lives, since nothing else
 * tells of its end; null where there are no locks.
 */
export const LIFE_LOCK = "deepwake/lifeLock";

/** What the requests for files are about. */
export interface FileParams {
  readonly uri: string;
}

/** One name in a folder. */
export interface FolderEntry {
  readonly name: string;
  /** The address, as the client writes it in all its messages. */
  readonly uri: string;
  readonly isFile: boolean;
}
