/** The program apart from its process: what `main.ts` loads once compiled code is kept. */
import { askFirst } from "../../server/model/local-time.ts";
import type { ExitCode } from "./exit-codes.ts";
import { processOffset } from "./process-offset.ts";
import { processWorld } from "./process-world.ts";
import { run } from "./run.ts";

/** Runs on a process's arguments, streams and files, and answers how it ends. */
export function start(from: NodeJS.Process, end: () => never): Promise<ExitCode> {
  askFirst((zone, at) => processOffset(from.env, zone, at));
  return run(from.argv.slice(2), processWorld(from, end));
}
