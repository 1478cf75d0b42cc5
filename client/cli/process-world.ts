/** The world of a running process. */

import about from "../../package.json" with { type: "json" };
import { decodeText, plainReason, type TextFile } from "../../server/files/read-text.ts";
import { diskFiles } from "./disk.ts";
import type { Output, World } from "./world.ts";

/** Builds it from what the process was given. */
export function processWorld(from: NodeJS.Process): World {
  return {
    cwd: calledFrom(from),
    env: from.env,
    version: about.version,
    out: outputOf(from.stdout),
    err: outputOf(from.stderr),
    files: diskFiles(),
    readInput: () => readInput(from.stdin),
  };
}

/** The script `npm run deepwake` starts in the project's folder; npm says where the user was. */
function calledFrom({ env, cwd }: NodeJS.Process): string {
  return env.npm_lifecycle_event === "deepwake" ? (env.INIT_CWD ?? cwd()) : cwd();
}

function outputOf(stream: NodeJS.WriteStream): Output {
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

async function readInput(stream: NodeJS.ReadStream): Promise<TextFile> {
  try {
    const chunks: Buffer[] = [];
    for await (const chunk of stream) chunks.push(Buffer.from(chunk));
    return decodeText(Buffer.concat(chunks));
  } catch (error) {
    return { ok: false, why: plainReason(error) };
  }
}
