/** The test module that an editor with Node loads. */
import { testsEverywhere } from "./everywhere.ts";
import { followProcesses } from "./follow-processes.ts";
import { keptIndexTests } from "./kept-index.ts";
import { killedTests } from "./killed.ts";
import { runAndReport } from "./report.ts";

/** Called by the editor's extension host. */
export function run(): Promise<void> {
  followProcesses();
  return runAndReport([...testsEverywhere, ...keptIndexTests, ...killedTests]);
}
