/** Output streams of a process. Node's own are made for terminals only: they take a while to load. */
import { fstatSync, statSync, writeSync } from "node:fs";
import { devNull } from "node:os";
import type { Output } from "./world.ts";

const SHORT_WAIT_MS = 5;

/** Standard output (1) or error (2). Whoever has stopped reading, as `| head` does, ends the program quietly. */
export function processOutput(descriptor: 1 | 2, end: () => never): Output {
  return mayBeTerminal(descriptor) ? terminal(descriptor, end) : plainOutput(descriptor, end);
}

function mayBeTerminal(descriptor: number): boolean {
  try {
    const stat = fstatSync(descriptor);
    return stat.isCharacterDevice() && stat.rdev !== statSync(devNull).rdev;
  } catch {
    return true;
  }
}

function terminal(descriptor: 1 | 2, end: () => never): Output {
  const stream = descriptor === 1 ? process.stdout : process.stderr;
  stream.on("error", (error: NodeJS.ErrnoException) => stop(error, end));
  return {
    isTerminal: stream.isTTY === true,
    get columns() {
      return stream.isTTY ? stream.columns : undefined;
    },
    write: (text) => {
      stream.write(text);
    },
  };
}

function plainOutput(descriptor: number, end: () => never): Output {
  return {
    isTerminal: false,
    columns: undefined,
    write: (text) => {
      try {
        writeAll(descriptor, Buffer.from(text));
      } catch (error) {
        stop(error, end);
      }
    },
  };
}

/** A pipe that is full for now is tried again. */
function writeAll(descriptor: number, bytes: Buffer): void {
  for (let at = 0; at < bytes.length; ) {
    try {
      at += writeSync(descriptor, bytes, at);
    } catch (error) {
      if (codeOf(error) !== "EAGAIN") throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, SHORT_WAIT_MS);
    }
  }
}

function stop(error: unknown, end: () => never): void {
  if (codeOf(error) === "EPIPE") end();
  throw error;
}

function codeOf(error: unknown): unknown {
  return error instanceof Error && "code" in error ? error.code : undefined;
}
