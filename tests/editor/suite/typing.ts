/** What the editor itself does with our languages: words, comments, quotes and the Enter key. */
import * as vscode from "vscode";
import assert from "./assert.ts";
import { DAY, openJournal, placeOf } from "./open-editor.ts";
import type { EditorTest } from "./runner.ts";

/** Opens an unsaved journal with this text and the cursor at its end. */
async function typeAfter(text: string, language = "deepwake-trip"): Promise<vscode.TextEditor> {
  const document = await vscode.workspace.openTextDocument({ language, content: text });
  const editor = await vscode.window.showTextDocument(document);
  const end = document.positionAt(text.length);
  editor.selection = new vscode.Selection(end, end);
  return editor;
}

/** Presses Enter, then types a letter, and answers the text: the letter shows where the cursor landed. */
async function textAfterEnter(text: string, language?: string): Promise<string> {
  const editor = await typeAfter(text, language);
  await vscode.commands.executeCommand("type", { text: "\n" });
  await vscode.commands.executeCommand("type", { text: "x" });
  return editor.document.getText().replaceAll("\r\n", "\n");
}

export const typingTests: readonly EditorTest[] = [
  {
    name: "a name with hyphens, a clock and a decimal number are one word each",
    async run() {
      const document = await openJournal(DAY);
      for (const word of ["barred-plug", "05:23", "45.5", "lake-trout"]) {
        const range = document.getWordRangeAtPosition(placeOf(document, word, 1));
        assert.equal(document.getText(range), word);
      }
    },
  },
  {
    name: "a quoted name's words don't take the quotes along",
    async run() {
      const document = await openJournal(DAY);
      const range = document.getWordRangeAtPosition(placeOf(document, "Tessler", 1));
      assert.equal(document.getText(range), "Tessler");
    },
  },
  {
    name: "Enter after a trip, a boat or a note line indents what follows",
    async run() {
      assert.equal(
        await textAfterEnter('trip 2031-06-21 "Bright Penny"'),
        'trip 2031-06-21 "Bright Penny"\n  x',
      );
      assert.equal(await textAfterEnter('boat "Bright Penny"', "deepwake-gear"), 'boat "Bright Penny"\n  x');
      assert.equal(await textAfterEnter("05:45 note private"), "05:45 note private\n  x");
      assert.equal(await textAfterEnter("05:58 strike P1"), "05:58 strike P1\nx");
      assert.equal(await textAfterEnter("tripod"), "tripod\nx");
    },
  },
  {
    name: "Enter on an indented empty line leaves the block",
    async run() {
      assert.equal((await textAfterEnter("trip\n  harbor here\n  ")).split("\n").at(-1), "x");
    },
  },
  {
    name: "the comment key comments a line with a number sign",
    async run() {
      const editor = await typeAfter("05:58 strike P1");
      await vscode.commands.executeCommand("editor.action.commentLine");
      assert.equal(editor.document.getText(), "# 05:58 strike P1");
    },
  },
];
