/** That editor and server are joined: what is wrong shows, a hover is answered, and a restart loses nothing. */
import assert from "node:assert/strict";
import * as vscode from "vscode";
import { diagnosticsWhen, openJournal, placeOf } from "./open-editor.ts";
import type { EditorTest } from "./runner.ts";

/** Replaces the first occurrence of `text`, as typing would. */
async function replaceText(document: vscode.TextDocument, text: string, by: string): Promise<void> {
  const edit = new vscode.WorkspaceEdit();
  edit.replace(
    document.uri,
    new vscode.Range(placeOf(document, text), placeOf(document, text, text.length)),
    by,
  );
  assert.ok(await vscode.workspace.applyEdit(edit));
}

async function hoverText(document: vscode.TextDocument, place: vscode.Position): Promise<string> {
  const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
    "vscode.executeHoverProvider",
    document.uri,
    place,
  );
  const contents = hovers.flatMap((hover) => hover.contents);
  return contents.map((content) => (typeof content === "string" ? content : content.value)).join("\n");
}

export const joinedTests: readonly EditorTest[] = [
  {
    name: "a slip is marked where it stands, and the mark goes when the slip is mended",
    async run() {
      const document = await openJournal("slips.trip");
      const marked = await diagnosticsWhen(document, (all) => all.length > 0);
      const slip = marked.find((diagnostic) => diagnostic.range.start.line === 1);
      assert.equal(document.getText(slip?.range), "72,5");
      await replaceText(document, "72,5", "72.5");
      await diagnosticsWhen(document, (all) => all.every(({ range }) => document.getText(range) !== "72.5"));
      await replaceText(document, "72.5", "72,5");
      await diagnosticsWhen(document, (all) => all.length > 0);
    },
  },
  {
    name: "a hover is answered",
    async run() {
      const document = await openJournal("2031-06-21.trip");
      assert.match(await hoverText(document, placeOf(document, "set P1", 1)), /set/i);
    },
  },
  {
    name: "a journal that was never saved is checked too",
    async run() {
      const content = "05:14 set C1 out 72,5 ft\n";
      const document = await vscode.workspace.openTextDocument({ language: "deepwake-trip", content });
      await diagnosticsWhen(document, (all) => all.length > 0);
    },
  },
  {
    name: "the restart command brings the marks back",
    async run() {
      const document = await openJournal("slips.trip");
      await vscode.commands.executeCommand("deepwake.restartServer");
      await diagnosticsWhen(document, (all) => all.length > 0);
    },
  },
];
