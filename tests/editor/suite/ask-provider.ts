/** Asking as the editor asks: through its own provider commands. */
import * as vscode from "vscode";
import { answerWhen } from "./open-editor.ts";

/** Asks one of the editor's provider commands until it has an answer that isn't empty. */
export function askProvider<T>(command: string, ...args: unknown[]): Promise<T[]> {
  const ask = (): Thenable<T[]> => vscode.commands.executeCommand<T[]>(`vscode.${command}`, ...args);
  return answerWhen(`${command} found nothing`, ask, (answer) => (answer ?? []).length > 0);
}

/** The name of the file at an address. */
export function fileName({ path }: vscode.Uri): string {
  return path.slice(path.lastIndexOf("/") + 1);
}

/** Applies edits, which have to be taken. */
export async function applyEdit(edit: vscode.WorkspaceEdit): Promise<void> {
  if (!(await vscode.workspace.applyEdit(edit))) throw new Error("The editor did not take the edits.");
}
