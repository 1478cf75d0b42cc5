/** The world of a server whose files are on disk. */
import { fileURLToPath } from "node:url";
import { BookShelf } from "../files/book-shelf.ts";
import type { ServerWorld } from "./connect.ts";

/** Books come from the folders above a document, up to the workspace's root. */
export function diskWorld(): ServerWorld {
  const shelf = new BookShelf();
  let roots: string[] = [];
  return {
    booksNear: (uri) => {
      const path = pathOf(uri);
      return path === undefined ? [] : shelf.booksNear(path, roots).books;
    },
    setRoots: (uris) => {
      roots = uris.flatMap((uri) => pathOf(uri) ?? []);
    },
    forgetFiles: () => shelf.forget(),
  };
}

function pathOf(uri: string): string | undefined {
  if (!uri.startsWith("file:")) return undefined;
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
}
