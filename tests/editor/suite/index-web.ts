/** The test module that an editor in a browser loads, into the worker that the extension runs in. */
import { testsEverywhere } from "./everywhere.ts";
import { followWorkers, lostWorkerTests } from "./lost-worker.ts";
import { runAndReport } from "./report.ts";
import { workerTests } from "./worker.ts";

/** Called by the editor's extension host. */
export function run(): Promise<void> {
  followWorkers();
  return runAndReport([...workerTests, ...testsEverywhere, ...lostWorkerTests]);
}
