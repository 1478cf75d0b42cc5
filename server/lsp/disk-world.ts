/** The world of a server whose files are on disk. */
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { BookShelf } from "../files/book-shelf.ts";
import { dayOf } from "../files/today.ts";
import type { ServerWorld } from "./connect.ts";

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
    today: () => dayOf(new Date()),
  };
}

/** A document that was never saved is taken to lie in the first folder. */
function unsavedPath(uri: string, [root]: readonly string[]): string | undefined {
  return uri.startsWith("untitled:") && root !== undefined ? join(root, "untitled") : undefined;
}

function pathOf(uri: string): string | undefined {
  if (!uri.startsWith("file:")) return undefined;
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
}
