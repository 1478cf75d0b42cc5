/** Reads journal files whole and strictly: what isn't text is refused with a plain reason and left alone. */
import { readFileSync, statSync } from "node:fs";

/** A file's text, or why it can't be used. */
export type TextFile =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly why: string };

/** Larger files are no journals. */
const MOST_BYTES = 256 * 1024 * 1024;

/** Reads a UTF-8 file. A byte order mark stays part of the text. */
export function readText(path: string): TextFile {
  try {
    const { size } = statSync(path);
    if (size > MOST_BYTES)
      return { ok: false, why: `it is ${Math.round(size / 1024 / 1024)} MB, larger than any journal` };
    return decodeText(readFileSync(path));
  } catch (error) {
    return { ok: false, why: plainReason(error) };
  }
}

/** Decodes bytes that have to be UTF-8 text. */
export function decodeText(bytes: Uint8Array): TextFile {
  const nul = bytes.indexOf(0);
  if (nul >= 0) return { ok: false, why: `it is not text: line ${lineOf(bytes, nul)} holds a NUL byte` };
  try {
    return { ok: true, text: new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch {
    return {
      ok: false,
      why: `it is not valid UTF-8 (line ${lineOf(bytes, firstBadByte(bytes))}); save it as UTF-8`,
    };
  }
}

/** The line, from 1, that a byte stands in. */
function lineOf(bytes: Uint8Array, offset: number): number {
  let line = 1;
  for (let at = 0; at < offset; at++) {
    if (bytes[at] === 10 || (bytes[at] === 13 && bytes[at + 1] !== 10)) line++;
  }
  return line;
}

/** Where decoding stops, by bisection over whole prefixes. */
function firstBadByte(bytes: Uint8Array): number {
  let good = 0;
  let bad = bytes.length;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (decodesTo(bytes, middle)) good = middle;
    else bad = middle;
  }
  return good;
}

function decodesTo(bytes: Uint8Array, length: number): boolean {
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes.subarray(0, length), { stream: true });
    return true;
  } catch {
    return false;
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file",
  EACCES: "reading it is not permitted",
  EPERM: "reading it is not permitted",
  EISDIR: "it is a folder",
  ENOTDIR: "a part of its path is no folder",
  ELOOP: "its links lead round in a ring",
  ENAMETOOLONG: "its name is too long",
  ENOSPC: "the disk is full",
  EROFS: "nothing can be written to that disk",
};

/** A file system error in plain words. */
export function plainReason(error: unknown): string {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  return REASONS[code] ?? (error instanceof Error ? error.message : String(error));
}
