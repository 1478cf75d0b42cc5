/**
 * Loaded by the editor in place of the tests when a picture is taken: opens one file, runs the commands asked for,
 * puts the cursor where the hover shall be, says so on the log, and stays until the page is closed.
 */
import * as vscode from "vscode";
import { openJournal } from "./open-editor.ts";
import { withBound } from "./runner.ts";

/** What the picture shall show, as JSON in `DEEPWAKE_POSE`. Places are counted from 0. */
export interface Pose {
  readonly file: string;
  readonly cursor: { readonly line: number; readonly character: number } | undefined;
  readonly commands: readonly string[];
  readonly theme: string;
}

/** The log line that tells the photographer that everything is in place. */
export const posedLine = "the picture is posed";

/** Called by the editor's extension host; never ends by itself, since its end would close the page. */
export async function run(): Promise<void> {
  const pose: Pose = JSON.parse(process.env.DEEPWAKE_POSE ?? "{}");
  await showTheme(pose.theme);
  await openJournal(pose.file);
  for (const command of [
    "workbench.action.closeSidebar",
    "workbench.action.closeAuxiliaryBar",
    "workbench.action.closePanel",
    ...pose.commands,
    "notifications.clearAll",
  ]) {
    await vscode.commands.executeCommand(command);
  }
  if (pose.cursor !== undefined) placeCursor(new vscode.Position(pose.cursor.line, pose.cursor.character));
  console.log(posedLine);
  await new Promise<never>(() => undefined);
}

/** Chooses the theme as a person would; one named in the settings file is not always applied at the start. */
async function showTheme(theme: string): Promise<void> {
  const shown = new Promise<void>((resolve) => vscode.window.onDidChangeActiveColorTheme(() => resolve()));
  await vscode.workspace
    .getConfiguration("workbench")
    .update("colorTheme", theme, vscode.ConfigurationTarget.Global);
  await withBound(shown, 10_000, `the theme ${theme} did not come`);
}

function placeCursor(position: vscode.Position): void {
  const editor = vscode.window.activeTextEditor;
  if (editor === undefined) return;
  editor.selection = new vscode.Selection(position, position);
  const range = new vscode.Range(position, position);
  editor.revealRange(range, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
}
