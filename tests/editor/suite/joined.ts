/** That editor and server are joined: what is wrong shows, follows the typing, and outlives a restart. */
import * as vscode from "vscode";
import assert from "./assert.ts";
import { DAY, diagnosticsWhen, openJournal, replaceText } from "./open-editor.ts";
import type { EditorTest } from "./runner.ts";

const SEVERITIES = ["error", "warning", "information", "hint"];

/** Diagnostics as the example's list of them writes each: line, severity, check, message. */
function listed(diagnostics: readonly vscode.Diagnostic[]): string[] {
  return [...diagnostics]
    .sort((a, b) => a.range.start.compareTo(b.range.start))
    .map(
      ({ range, severity, code, message }) =>
        `${range.start.line + 1}  ${SEVERITIES[severity]}  ${code}  ${message}`,
    );
}

export const joinedTests: readonly EditorTest[] = [
  {
    name: "the wrong trip shows what the example lists, and nothing else",
    async run() {
      const document = await openJournal("wrong/2031-07-04.trip");
      const list = await vscode.workspace.fs.readFile(
        vscode.Uri.joinPath(document.uri, "..", "2031-07-04.expected.txt"),
      );
      const wanted = new TextDecoder()
        .decode(list)
        .split("\n")
        .filter((line) => /^\d/u.test(line));
      assert.deepEqual(
        listed(await diagnosticsWhen(document, (all) => all.length === wanted.length)),
        wanted,
      );
    },
  },
  {
    name: "a sound trip shows nothing",
    async run() {
      const document = await openJournal(DAY);
      await replaceText(document, "72 ft setback", "72,5 ft setback");
      await diagnosticsWhen(document, (all) => all.length > 0);
      await replaceText(document, "72,5 ft setback", "72 ft setback");
      await diagnosticsWhen(document, (all) => all.length === 0);
    },
  },
  {
    name: "a slip is marked where it stands, and the mark goes when the slip is mended",
    async run() {
      const document = await openJournal("slips.trip");
      const isSlip = ({ code }: vscode.Diagnostic): boolean => code === "number-format";
      const marked = await diagnosticsWhen(document, (all) => all.some(isSlip));
      assert.equal(document.getText(marked.find(isSlip)?.range), "72,5");
      await replaceText(document, "72,5", "72.5");
      await diagnosticsWhen(document, (all) => !all.some(isSlip));
      await replaceText(document, "72.5", "72,5");
      await diagnosticsWhen(document, (all) => all.some(isSlip));
    },
  },
  {
    name: "a journal that was never saved is checked too",
    async run() {
      const content = "05:14 set C1 out 72,5 ft\n";
      const document = await vscode.workspace.openTextDocument({ language: "deepwake-trip", content });
      await diagnosticsWhen(document, (all) => all.some(({ code }) => code === "number-format"));
    },
  },
  {
    name: "an edit of the gear book that isn't saved changes the trip at once",
    async run() {
      const trip = await openJournal(DAY);
      const book = await openJournal("bright-penny.gear");
      await replaceText(book, "rig CU copper", "rig CX copper");
      await diagnosticsWhen(trip, (all) => all.some(({ code }) => code === "unknown-rig"));
      await replaceText(book, "rig CX copper", "rig CU copper");
      await diagnosticsWhen(trip, (all) => all.length === 0);
    },
  },
  {
    name: "a check that is switched off in the settings is silent at once",
    async run() {
      const document = await openJournal("slips.trip");
      const isSlip = ({ code }: vscode.Diagnostic): boolean => code === "number-format";
      const settings = vscode.workspace.getConfiguration("deepwake");
      await settings.update("checks", { "number-format": "off" }, vscode.ConfigurationTarget.Global);
      await diagnosticsWhen(document, (all) => !all.some(isSlip));
      await settings.update("checks", undefined, vscode.ConfigurationTarget.Global);
      await diagnosticsWhen(document, (all) => all.some(isSlip));
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
