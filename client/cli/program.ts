/** The program apart from its process. In a bundle it is a file of its own, loaded with the code kept of it. */
import { useProcessClock } from "../../server/files/process-offset.ts";
import type { ExitCode } from "./exit-codes.ts";
import { processWorld } from "./process-world.ts";
import { run } from "./run.ts";

/** Runs on a process's arguments, streams and files, and answers how it ends. */
export function start(from: NodeJS.Process, end: () => never): Promise<ExitCode> {
  useProcessClock(from.env);
  return run(from.argv.slice(2), processWorld(from, end));
}
