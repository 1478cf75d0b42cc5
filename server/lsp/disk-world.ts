/** The world of a server whose files are on disk. */
import { isAbsolute, join } from "node:path";
import { pathToFileURL } from "node:url";
import { BookShelf } from "../files/book-shelf.ts";
import { indexFile, programStamp } from "../files/index-file.ts";
import { dayOf } from "../files/today.ts";
import { pathOf, WorkspaceFolders } from "../files/workspace-folders.ts";
import type { ServerWorld } from "./server-world.ts";

/** Books come from the folders above a document, up to the workspace's root. */
export function diskWorld(): ServerWorld {
  const shelf = new BookShelf();
  let roots: string[] = [];
  return {
    booksNear: (uri) => {
      const path = pathOf(uri) ?? unsavedPath(uri, roots);
      return path === undefined ? [] : shelf.booksNear(path, roots).books;
    },
    setRoots: (uris) => {
      roots = uris.flatMap((uri) => pathOf(uri) ?? []);
    },
    forgetFiles: () => shelf.forget(),
    files: new WorkspaceFolders(() => roots),
    keeping: (storage) => {
      const folder = pathOf(storage) ?? storage;
      return isAbsolute(folder) ? { store: indexFile(folder), program: programStamp() } : undefined;
    },
    canonical: (uri) => {
      const path = pathOf(uri);
      return path === undefined ? uri : pathToFileURL(path).href;
    },
    today: () => dayOf(new Date()),
  };
}

/** A document that was never saved is taken to lie in the first folder. */
function unsavedPath(uri: string, [root]: readonly string[]): string | undefined {
  return uri.startsWith("untitled:") && root !== undefined ? join(root, "untitled") : undefined;
}
