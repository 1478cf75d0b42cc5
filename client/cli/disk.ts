/** Files on disk. */
import {
  accessSync,
  chownSync,
  closeSync,
  constants,
  fchmodSync,
  fsyncSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { basename, dirname, join } from "node:path";
import { BookShelf } from "../../server/files/book-shelf.ts";
import { kindOf, listFolder } from "../../server/files/journal-walk.ts";
import { plainReason, readText } from "../../server/files/read-text.ts";
import type { Files } from "./world.ts";

/** The files of this machine. */
export function diskFiles(): Files {
  const shelf = new BookShelf();
  return {
    kindOf,
    list: listFolder,
    readText,
    booksNear: (path) => shelf.booksNear(path, []),
    replaceText,
    writeText,
  };
}

/** What is written for a file that is there already. */
export const IS_THERE = "it is there already; --force writes over it";
/** Whoever makes a file says later who may read it, with the mask of the process. */
const NEW_MODE = 0o666;

/** Written beside its place, then put there by name: a reader sees nothing of it before it is whole. */
function writeText(path: string, text: string, isForced: boolean): string | undefined {
  try {
    const there = statSync(path, { throwIfNoEntry: false });
    if (there !== undefined && !there.isFile()) return "it is no file";
    if (there !== undefined && !isForced) return IS_THERE;
    const target = there === undefined ? path : realpathSync(path);
    const temporary = besides(target);
    try {
      writeDurably(temporary, text, NEW_MODE & ~process.umask());
      // Takes the name, which fails where someone else took it meanwhile.
      if (!isForced) closeSync(openSync(target, "wx"));
      renameSync(temporary, target);
    } finally {
      rmSync(temporary, { force: true });
    }
    return undefined;
  } catch (error) {
    if (isThere(error)) return IS_THERE;
    return plainReason(error).replace(/^reading/u, "writing");
  }
}

function besides(target: string): string {
  return join(dirname(target), `.${basename(target)}.${process.pid}.tmp`);
}

function isThere(error: unknown): boolean {
  return error instanceof Error && "code" in error && error.code === "EEXIST";
}

/** Written beside the file, then renamed over it: a reader sees the old text or the new one, never half of one. */
function replaceText(path: string, before: string, text: string): string | undefined {
  try {
    const target = realpathSync(path);
    accessSync(target, constants.W_OK);
    const { mode, uid, gid } = statSync(target);
    const temporary = besides(target);
    try {
      writeDurably(temporary, text, mode);
      keepOwner(temporary, uid, gid);
      const now = readText(target);
      if (!now.ok || now.text !== before) throw new Error("it was changed by someone else meanwhile");
      renameSync(temporary, target);
    } finally {
      rmSync(temporary, { force: true });
    }
    return undefined;
  } catch (error) {
    return plainReason(error).replace(/^reading/u, "writing");
  }
}

function writeDurably(path: string, text: string, mode: number): void {
  const file = openSync(path, "wx", mode);
  try {
    writeFileSync(file, text, "utf8");
    fchmodSync(file, mode);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** Whoever may not give files away leaves them as they are. */
function keepOwner(path: string, uid: number, gid: number): void {
  try {
    chownSync(path, uid, gid);
  } catch {
    // The text matters more than the owner.
  }
}
