/** Finds journal files under a folder, all the way down; hidden folders and installed packages are left out. */
import { type Dirent, readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { isLeftOut } from "./left-out.ts";
import { plainReason } from "./read-text.ts";

/** What a path names. */
export type PathKind = { readonly kind: "file" | "folder" } | { readonly kind: "none"; readonly why: string };

/** An entry of a folder. */
export interface Listed {
  readonly name: string;
  readonly kind: "file" | "folder" | "other";
}

/** A folder's entries, or why they can't be had. */
export type ListedFolder =
  | { readonly ok: true; readonly names: Listed[] }
  | { readonly ok: false; readonly why: string };

/** A folder walked through: the files in it that count, or why it can't be looked into. */
export type Walked =
  | { readonly folder: string; readonly paths: readonly string[] }
  | { readonly folder: string; readonly why: string };

/** Walks through a folder and those in it; `endings` are those of the names that count, in lower case. */
export function* walkJournals(
  top: string,
  endings: readonly string[],
  list: (folder: string) => ListedFolder = listFolder,
): Generator<Walked> {
  const waiting = [top];
  for (let folder = waiting.pop(); folder !== undefined; folder = waiting.pop()) {
    const listed = list(folder);
    if (!listed.ok) {
      yield { folder, why: listed.why };
      continue;
    }
    const paths: string[] = [];
    for (const { name, kind } of listed.names) {
      if (isLeftOut(name)) continue;
      if (kind === "folder") waiting.push(join(folder, name));
      else if (kind === "file" && endings.some((ending) => name.toLowerCase().endsWith(ending)))
        paths.push(join(folder, name));
    }
    yield { folder, paths };
  }
}

/** What a path names on disk. */
export function kindOf(path: string): PathKind {
  try {
    const stat = statSync(path);
    if (stat.isDirectory()) return { kind: "folder" };
    return stat.isFile() || stat.isFIFO()
      ? { kind: "file" }
      : { kind: "none", why: "it is neither a file nor a folder" };
  } catch (error) {
    return { kind: "none", why: plainReason(error) };
  }
}

/** The entries of a folder on disk. */
export function listFolder(folder: string): ListedFolder {
  try {
    const names = readdirSync(folder, { withFileTypes: true });
    return { ok: true, names: names.map((entry) => ({ name: entry.name, kind: listedKind(folder, entry) })) };
  } catch (error) {
    return { ok: false, why: plainReason(error) };
  }
}

/**
 * A link to a file counts as that file; links to folders are not followed, so that no walk goes round in a ring. A pipe
 * is read where it is named, not where it is come upon: it may never end.
 */
function listedKind(folder: string, entry: Dirent): Listed["kind"] {
  if (entry.isDirectory()) return "folder";
  if (entry.isFile()) return "file";
  return entry.isSymbolicLink() && isFileAt(join(folder, entry.name)) ? "file" : "other";
}

function isFileAt(path: string): boolean {
  try {
    return statSync(path).isFile();
  } catch {
    return false;
  }
}
