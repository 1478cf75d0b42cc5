/** What the tests do in the editor: open a file of the workspace, wait for the server, find a place in the text. */
import * as vscode from "vscode";
import type { DeepwakeExtension } from "../../../client/vscode/start-client.ts";
import { withBound } from "./runner.ts";

/** How long any one condition is waited for. */
const conditionBoundMs = 30_000;

/** The example's longest day, with every kind of rig in it. */
export const DAY = "trips/2031-06-21.trip";

/** The extension under test. It throws when the editor didn't load it. */
export function ownExtension(): vscode.Extension<DeepwakeExtension> {
  const extension = vscode.extensions.getExtension<DeepwakeExtension>("deepwake.deepwake");
  if (extension === undefined) throw new Error("The editor did not load the extension.");
  return extension;
}

/** The address of a file of the workspace. */
export function inWorkspace(name: string): vscode.Uri {
  const folder = vscode.workspace.workspaceFolders?.[0];
  if (folder === undefined) throw new Error("The editor was opened without a workspace folder.");
  return vscode.Uri.joinPath(folder.uri, name);
}

/** Opens a file of the workspace in the editor, without waiting for the server. */
export async function openFile(name: string): Promise<vscode.TextDocument> {
  const document = await vscode.workspace.openTextDocument(inWorkspace(name));
  await vscode.window.showTextDocument(document, { preview: false });
  return document;
}

/** Opens a journal or gear book and answers when the server is there to be asked about it. */
export async function openJournal(name: string): Promise<vscode.TextDocument> {
  const document = await openFile(name);
  const extension = await withBound(
    ownExtension().activate(),
    conditionBoundMs,
    "the extension was not active",
  );
  await withBound(extension.ready, conditionBoundMs, "the server did not answer");
  return document;
}

/** The place of the first occurrence of `text`, moved on by `offset` characters. */
export function placeOf(document: vscode.TextDocument, text: string, offset = 0): vscode.Position {
  const index = document.getText().indexOf(text);
  if (index < 0) throw new Error(`${document.fileName} holds no ${JSON.stringify(text)}.`);
  return document.positionAt(index + offset);
}

/** Replaces the first occurrence of `text`, as typing would. */
export async function replaceText(document: vscode.TextDocument, text: string, by: string): Promise<void> {
  const edit = new vscode.WorkspaceEdit();
  const range = new vscode.Range(placeOf(document, text), placeOf(document, text, text.length));
  edit.replace(document.uri, range, by);
  if (!(await vscode.workspace.applyEdit(edit))) throw new Error(`${JSON.stringify(text)} was not replaced.`);
}

/** Answers the document's diagnostics as soon as they satisfy `accept`. */
export function diagnosticsWhen(
  document: vscode.TextDocument,
  accept: (diagnostics: readonly vscode.Diagnostic[]) => boolean,
): Promise<readonly vscode.Diagnostic[]> {
  const ask = async (): Promise<readonly vscode.Diagnostic[]> =>
    vscode.languages.getDiagnostics(document.uri);
  return answerWhen("the expected diagnostics did not come", ask, accept);
}

/**
 * Asks again until the answer satisfies `accept`: each time the editor's diagnostics change, and every tenth of a
 * second, since not every answer announces itself. It fails with the last answer when the bound has passed.
 */
export async function answerWhen<T>(
  what: string,
  ask: () => Thenable<T>,
  accept: (answer: T) => boolean,
): Promise<T> {
  const deadline = performance.now() + conditionBoundMs;
  for (;;) {
    const changed = nextChange();
    const answer = await ask();
    if (accept(answer)) return answer;
    if (performance.now() > deadline) throw new Error(`${what}; the last answer: ${JSON.stringify(answer)}`);
    await changed;
  }
}

function nextChange(): Promise<void> {
  return new Promise((resolve) => {
    const settle = (): void => {
      clearTimeout(timer);
      listener.dispose();
      resolve();
    };
    const listener = vscode.languages.onDidChangeDiagnostics(settle);
    const timer = setTimeout(settle, 100);
  });
}
