/** The test module that the editor loads: runs every test, writes the report, and fails when any test has failed. */
import { writeFileSync } from "node:fs";
import { activationTests } from "./activation.ts";
import { featureTests } from "./features.ts";
import { joinedTests } from "./joined.ts";
import { runAll } from "./runner.ts";
import { typingTests } from "./typing.ts";

/** Called by the editor's extension host. The report goes to the file that `DEEPWAKE_EDITOR_REPORT` names. */
export async function run(): Promise<void> {
  const results = await runAll([...activationTests, ...joinedTests, ...featureTests, ...typingTests]);
  const report = process.env.DEEPWAKE_EDITOR_REPORT;
  if (report !== undefined) writeFileSync(report, JSON.stringify(results));
  const failed = results.filter(({ failure }) => failure !== undefined);
  if (failed.length > 0) throw new Error(`${failed.length} of ${results.length} editor tests failed`);
}
