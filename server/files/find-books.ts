/** Finds the gear books within reach of a folder's files: from it upward to the workspace or repository root. */
import { existsSync, readdirSync, statSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { GEAR_ENDING, TRIP_ENDING } from "./endings.ts";

export { GEAR_ENDING, TRIP_ENDING };

/** Folders never climbed above when no root is known. */
const MOST_FOLDERS = 32;

/**
 * Paths of gear books, nearest folder first and by name within a folder. Climbing stops at the first of `roots`, at
 * a repository's root, or at the file system's.
 */
export function findBooks(from: string, roots: readonly string[]): string[] {
  const stops = new Set(roots.map((root) => resolve(root)));
  const books: string[] = [];
  let folder = resolve(from);
  for (let climbed = 0; climbed < MOST_FOLDERS; climbed++) {
    books.push(...gearFilesIn(folder));
    const parent = dirname(folder);
    if (stops.has(folder) || existsSync(join(folder, ".git")) || parent === folder) break;
    folder = parent;
  }
  return books;
}

function gearFilesIn(folder: string): string[] {
  try {
    return readdirSync(folder)
      .filter((name) => name.toLowerCase().endsWith(GEAR_ENDING))
      .sort()
      .map((name) => join(folder, name))
      .filter(isNoChannel);
  } catch {
    return [];
  }
}

/** Reading a pipe, a socket or a device by that name would wait for ever; what can't be looked at says why when it is read. */
function isNoChannel(path: string): boolean {
  try {
    const stat = statSync(path);
    return stat.isFile() || stat.isDirectory();
  } catch {
    return true;
  }
}
