/** Runs tests in the editor and leaves the results beside the workspace, through the editor's own way to files. */
import * as vscode from "vscode";
import { type EditorTest, runAll } from "./runner.ts";

/** The report's name, beside the workspace's folder. */
export const REPORT = "report.json";

/** Runs every test, writes the report, and fails when any test has failed. */
export async function runAndReport(tests: readonly EditorTest[]): Promise<void> {
  const [folder] = vscode.workspace.workspaceFolders ?? [];
  const results = await runAll(tests);
  if (folder !== undefined) {
    const report = vscode.Uri.joinPath(folder.uri, "..", REPORT);
    await vscode.workspace.fs.writeFile(report, new TextEncoder().encode(JSON.stringify(results)));
  }
  const failed = results.filter(({ failure }) => failure !== undefined);
  if (failed.length > 0) throw new Error(`${failed.length} of ${results.length} editor tests failed`);
}
