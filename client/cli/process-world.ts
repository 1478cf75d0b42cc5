/** The world of a running process. */
import about from "../../package.json" with { type: "json" };
import { decodeText, plainReason, type TextFile } from "../../server/files/read-text.ts";
import { dayOf } from "../../server/files/today.ts";
import { diskFiles } from "./disk.ts";
import { processOutput } from "./process-output.ts";
import { startServer } from "./start-server.ts";
import type { Output, World } from "./world.ts";

/** Builds it from what the process was given; `end` ends the process at once. */
export function processWorld(from: NodeJS.Process, end: () => never): World {
  let errors: Output | undefined;
  return {
    cwd: calledFrom(from),
    env: from.env,
    version: about.version,
    today: dayOf(new Date()),
    out: processOutput(1, end),
    get err() {
      errors ??= processOutput(2, end);
      return errors;
    },
    files: diskFiles(),
    readInput: () => readInput(from.stdin),
    serve: (ways) => startServer(from, ways),
  };
}

/** The script `npm run deepwake` starts in the project's folder; npm says where the user was. */
function calledFrom({ env, cwd }: NodeJS.Process): string {
  return env.npm_lifecycle_event === "deepwake" ? (env.INIT_CWD ?? cwd()) : cwd();
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
