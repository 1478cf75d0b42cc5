/** When the extension wakes, and how long that holds up the editor. The order of these tests matters. */
import * as vscode from "vscode";
import assert from "./assert.ts";
import { DAY, openFile, openJournal, ownExtension } from "./open-editor.ts";
import type { EditorTest } from "./runner.ts";

/** How long `activate` may hold up the editor, also on a slow and busy machine; the goal of 50 ms is the bench's. */
const activateBoundMs = 250;

export const activationTests: readonly EditorTest[] = [
  {
    name: "a file that is no journal leaves the extension asleep",
    async run() {
      const document = await openFile("plain.txt");
      assert.equal(document.languageId, "plaintext");
      assert.equal(ownExtension().isActive, false);
    },
  },
  {
    name: "opening a journal wakes the extension and its server",
    async run() {
      const document = await openJournal(DAY);
      assert.equal(document.languageId, "deepwake-trip");
      assert.equal(ownExtension().isActive, true);
    },
  },
  {
    name: `waking holds up the editor for no more than ${activateBoundMs} ms`,
    async run() {
      const { activateMs } = ownExtension().exports;
      const measured = `activate() took ${activateMs.toFixed(1)} ms`;
      assert.ok(activateMs <= activateBoundMs, measured);
      return measured;
    },
  },
  {
    name: "a gear book is known by its extension",
    async run() {
      assert.equal((await openJournal("bright-penny.gear")).languageId, "deepwake-gear");
    },
  },
  {
    name: "our languages show inlay hints and indent by two blanks without any setting touched",
    async run() {
      const document = await openJournal(DAY);
      const editor = vscode.workspace.getConfiguration("editor", document);
      assert.equal(editor.get("inlayHints.enabled"), "on");
      assert.equal(editor.get("formatOnSave"), false);
      assert.equal(vscode.window.activeTextEditor?.options.tabSize, 2);
      assert.equal(vscode.window.activeTextEditor?.options.insertSpaces, true);
      assert.equal(vscode.workspace.getConfiguration("deepwake", document).get("hints.depth"), true);
    },
  },
];
