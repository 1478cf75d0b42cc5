/** Paths as the user named them → journals to read. Folders are searched for them, all the way down. */
import { join, relative, resolve, sep } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { walkJournals } from "../../server/files/journal-walk.ts";
import type { Call } from "./verb.ts";
import type { World } from "./world.ts";

/** A file to read, or standard input. */
export interface NamedFile {
  /** As it is shown: the way the user named it, with forward slashes. */
  readonly shown: string;
  /** Absolute. For standard input the file it stands for. */
  readonly path: string;
  readonly isInput: boolean;
}

/** Something named that can't be used, and why, as a sentence part. */
export interface Unusable {
  readonly shown: string;
  readonly why: string;
}

/** What was found, in the order named; within a folder by name. No file comes twice. */
interface Found {
  readonly files: readonly NamedFile[];
  readonly unusable: readonly Unusable[];
}

/** What to look for. */
export interface Search {
  /** Name endings that count in a folder. */
  readonly endings: readonly string[];
  /** The file that standard input stands for. */
  readonly inputPath?: string | undefined;
}

/** Names that stand for standard input. */
const INPUT = "-";

/** What a verb was asked to read: the paths of its call, or the folder one is in where there are none. */
export function askedFor(call: Call, endings: readonly string[], world: World): Found {
  const paths = call.paths.length === 0 ? ["."] : call.paths;
  return findJournals(paths, { endings, inputPath: call.values.get("stdin-path") }, world);
}

/** Finds what the given paths name. */
export function findJournals(paths: readonly string[], search: Search, world: World): Found {
  const files = new Map<string, NamedFile>();
  const unusable: Unusable[] = [];
  const take = (file: NamedFile): void => {
    const key = file.isInput ? INPUT : file.path;
    if (!files.has(key)) files.set(key, file);
  };
  for (const named of paths) {
    if (named === INPUT) {
      take(inputFile(search.inputPath, world));
      continue;
    }
    const path = resolve(world.cwd, named);
    const found = world.files.kindOf(path);
    if (found.kind === "none") unusable.push({ shown: named, why: found.why });
    else if (found.kind === "file") take({ shown: slashed(named), path, isInput: false });
    else {
      const inside = searchFolder(path, named, search, world);
      inside.files.forEach(take);
      unusable.push(...inside.unusable);
    }
  }
  return { files: [...files.values()], unusable };
}

function inputFile(inputPath: string | undefined, world: World): NamedFile {
  const shown = inputPath ?? INPUT;
  return { shown: slashed(shown), path: resolve(world.cwd, inputPath ?? "stdin.trip"), isInput: true };
}

function searchFolder(top: string, named: string, search: Search, world: World): Found {
  const paths: string[] = [];
  const unusable: Unusable[] = [];
  const shownAs = (path: string): string => slashed(join(named, relative(top, path)));
  for (const walked of walkJournals(top, search.endings, world.files.list)) {
    if ("why" in walked) unusable.push({ shown: shownAs(walked.folder), why: walked.why });
    else paths.push(...walked.paths);
  }
  if (paths.length === 0 && unusable.length === 0) {
    unusable.push({ shown: named, why: `there is no ${search.endings.join(" or ")} file in it` });
  }
  paths.sort();
  return { files: paths.map((path) => ({ shown: shownAs(path), path, isInput: false })), unusable };
}

/** A path inside the working folder as it is typed there; others in full. */
export function shownPath(path: string, world: World): string {
  const inside = relative(world.cwd, path);
  return slashed(inside === "" || inside.startsWith("..") ? path : inside);
}

function slashed(path: string): string {
  return sep === "/" ? path : path.replaceAll(sep, "/");
}

/** A place's file as it is shown: its own the way the user named it. */
export function shownUri(uri: string, own: { shown: string; path: string }, world: World): string {
  if (!uri.startsWith("file:")) return uri;
  const path = fileURLToPath(uri);
  return path === own.path ? own.shown : shownPath(path, world);
}

/** An absolute path, or the URI of one, as a URI relative to the working folder where it lies inside it. */
export function relativeUri(path: string, world: World): string {
  const uri = path.startsWith("file:") ? path : pathToFileURL(path).href;
  const folder = `${pathToFileURL(world.cwd).href.replace(/\/$/u, "")}/`;
  return uri.startsWith(folder) ? uri.slice(folder.length) : uri;
}
