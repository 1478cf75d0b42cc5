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

function writeText(path: string, text: string): string | undefined {
  try {
    writeFileSync(path, text, "utf8");
    return undefined;
  } catch (error) {
    return plainReason(error).replace(/^reading/u, "writing");
  }
}

/** Written beside the file, then renamed over it: a reader sees the old text or the new one, never half of one. */
function replaceText(path: string, before: string, text: string): string | undefined {
  try {
    const target = realpathSync(path);
    accessSync(target, constants.W_OK);
    const { mode, uid, gid } = statSync(target);
    const name = `.${basename(target)}.${process.pid}.tmp`;
    const temporary = join(dirname(target), name);
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
