/** Keeps an index in a file of the folder that an editor gives for such things. */
import { mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { IndexStore, StoredParts } from "../workspace/workspace-files.ts";

const NAME = "index.deepwake";
/** Bytes of the length that stands before the text. */
const LENGTH_BYTES = 4;

/** The index of the workspace whose storage folder is given. */
export function indexFile(folder: string): IndexStore {
  const path = join(folder, NAME);
  return {
    read: () => {
      try {
        return split(readFileSync(path));
      } catch {
        return undefined;
      }
    },
    write: (parts) => {
      mkdirSync(folder, { recursive: true });
      // Written beside it, then renamed over it: another server reads the old index or the new one, never half of one.
      const temporary = `${path}.${process.pid}.tmp`;
      try {
        writeFileSync(temporary, together(parts));
        renameSync(temporary, path);
      } finally {
        rmSync(temporary, { force: true });
      }
    },
  };
}

/** Tells one build of the program from another: the bundle it was started from, and when that was written. */
export function programStamp(): string {
  const path = process.argv[1] ?? "";
  try {
    const { mtimeMs, size } = statSync(path);
    return `${path} ${mtimeMs} ${size}`;
  } catch {
    return path;
  }
}

function together({ text, bytes }: StoredParts): Buffer {
  const written = Buffer.from(text, "utf8");
  const length = Buffer.alloc(LENGTH_BYTES);
  length.writeUInt32LE(written.length);
  return Buffer.concat([length, written, bytes]);
}

function split(file: Buffer): StoredParts | undefined {
  if (file.length < LENGTH_BYTES) return undefined;
  const end = LENGTH_BYTES + file.readUInt32LE();
  if (end > file.length) return undefined;
  return { text: file.toString("utf8", LENGTH_BYTES, end), bytes: file.subarray(end) };
}
