/** The journals and gear books under the workspace's folders on disk. */
import { statSync } from "node:fs";
import { basename, relative, sep } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { ListedFile, WorkspaceFiles } from "../workspace/workspace-files.ts";
import { GEAR_ENDING, TRIP_ENDING } from "./find-books.ts";
import { walkJournals } from "./journal-walk.ts";
import { isLeftOut } from "./left-out.ts";
import { readText } from "./read-text.ts";

const ENDINGS: readonly string[] = [TRIP_ENDING, GEAR_ENDING];

/** Files of folders that may change from one question to the next. */
export class WorkspaceFolders implements WorkspaceFiles {
  readonly #roots: () => readonly string[];

  /** `roots` are absolute paths. */
  constructor(roots: () => readonly string[]) {
    this.#roots = roots;
  }

  *list(): Generator<readonly ListedFile[]> {
    for (const root of this.#roots()) {
      for (const walked of walkJournals(root, ENDINGS)) {
        yield "why" in walked ? [] : walked.paths.flatMap((path) => listed(path) ?? []);
      }
    }
  }

  find(uri: string): ListedFile | undefined {
    const path = pathOf(uri);
    if (path === undefined || !ENDINGS.some((ending) => path.toLowerCase().endsWith(ending)))
      return undefined;
    return this.#roots().some((root) => isWalked(root, path)) ? listed(path) : undefined;
  }

  read(uri: string): string | undefined {
    const path = pathOf(uri);
    const file = path === undefined ? undefined : readText(path);
    return file?.ok === true ? file.text : undefined;
  }
}

/** The path of a file's address; undefined where it is no file's. */
export function pathOf(uri: string): string | undefined {
  if (!uri.startsWith("file:")) return undefined;
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
}

/** True where a walk through a folder would come upon the path. */
function isWalked(root: string, path: string): boolean {
  const inside = relative(root, path);
  if (inside === "" || inside.startsWith("..") || inside === path) return false;
  return !inside.split(sep).some(isLeftOut) && !isLeftOut(basename(path));
}

/** Something else than a file by that name, like a pipe, is nothing to read. */
function listed(path: string): ListedFile | undefined {
  try {
    const stat = statSync(path);
    if (!stat.isFile()) return undefined;
    return { uri: pathToFileURL(path).href, stamp: `${stat.mtimeMs} ${stat.size}` };
  } catch {
    return undefined;
  }
}
