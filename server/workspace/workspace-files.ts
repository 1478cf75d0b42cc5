/** What the index asks of wherever the files are: a disk, or an editor in a browser. */

/** A file and a mark that changes when its text may have changed. */
export interface ListedFile {
  readonly uri: string;
  readonly stamp: string;
}

/** A value now, or later where fetching it takes time. */
export type Soon<T> = T | Promise<T>;

/** The journals and gear books under the workspace's folders. */
export interface WorkspaceFiles {
  /** All of them, folder by folder; hidden folders and installed packages left out. A file may come twice. */
  list(): Iterable<readonly ListedFile[]> | AsyncIterable<readonly ListedFile[]>;
  /** One of them as `list` would give it; undefined where it is gone, hidden or none of ours. */
  find(uri: string): Soon<ListedFile | undefined>;
  /** Its text; undefined where it can't be read or is no text. */
  read(uri: string): Soon<string | undefined>;
}

/** An index between runs: a text and bytes, which belong together. */
export interface StoredParts {
  readonly text: string;
  readonly bytes: Uint8Array;
}

/** Where it is kept. Reading and writing may fail: the index is then made anew. */
export interface IndexStore {
  read(): Soon<StoredParts | undefined>;
  write(parts: StoredParts): Soon<void>;
}

/** Says when long work has to let others in. */
export interface Turns {
  /** Called between two steps: undefined to go on, else to be waited for. */
  pause(): Promise<void> | undefined;
}
