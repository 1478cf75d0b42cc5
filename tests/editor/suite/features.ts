/** Every feature of the server, asked for the way the editor asks: through its own provider commands. */
import assert from "node:assert/strict";
import * as vscode from "vscode";
import { answerWhen, diagnosticsWhen, openJournal, placeOf } from "./open-editor.ts";
import type { EditorTest } from "./runner.ts";

/** Asks one of the editor's provider commands until it has an answer that isn't empty. */
function askProvider<T>(command: string, ...args: unknown[]): Promise<T[]> {
  const ask = (): Thenable<T[]> => vscode.commands.executeCommand<T[]>(`vscode.${command}`, ...args);
  return answerWhen(`${command} found nothing`, ask, (answer) => (answer ?? []).length > 0);
}

function wholeOf(document: vscode.TextDocument): vscode.Range {
  return new vscode.Range(new vscode.Position(0, 0), document.positionAt(document.getText().length));
}

function labelText(label: string | vscode.InlayHintLabelPart[]): string {
  return typeof label === "string" ? label : label.map((part) => part.value).join("");
}

export const featureTests: readonly EditorTest[] = [
  {
    name: "each line that is set carries its depth",
    async run() {
      const document = await openJournal("2031-06-21.trip");
      const hints = await askProvider<vscode.InlayHint>(
        "executeInlayHintProvider",
        document.uri,
        wholeOf(document),
      );
      const line = placeOf(document, "05:18 set P1").line;
      const texts = hints.filter((hint) => hint.position.line === line).map((hint) => labelText(hint.label));
      assert.match(texts.join(" "), /\d+ ft/);
    },
  },
  {
    name: "formatting rewrites an untidy line and nothing else",
    async run() {
      const document = await openJournal("untidy.trip");
      const edits = await askProvider<vscode.TextEdit>("executeFormatDocumentProvider", document.uri, {
        tabSize: 2,
        insertSpaces: true,
      });
      const edit = new vscode.WorkspaceEdit();
      edit.set(document.uri, edits);
      assert.ok(await vscode.workspace.applyEdit(edit));
      assert.equal(document.getText(), "05:14 set C1 out 90 ft lure white-fly\n");
    },
  },
  {
    name: "completion after set offers the boat's rigs",
    async run() {
      const document = await openJournal("2031-06-21.trip");
      const place = placeOf(document, "set C1", "set ".length);
      const ask = (): Thenable<vscode.CompletionList> =>
        vscode.commands.executeCommand("vscode.executeCompletionItemProvider", document.uri, place);
      const list = await answerWhen("no completion", ask, (answer) => answer.items.length > 0);
      const labels = list.items.map(({ label }) => (typeof label === "string" ? label : label.label));
      for (const rig of ["C1", "P1", "P1U", "S1", "PB", "SD"]) assert.ok(labels.includes(rig), rig);
    },
  },
  {
    name: "the outline names the trip",
    async run() {
      const document = await openJournal("2031-06-21.trip");
      const symbols = await askProvider<vscode.DocumentSymbol>("executeDocumentSymbolProvider", document.uri);
      assert.match(symbols.map(({ name }) => name).join(" "), /2031-06-21/);
    },
  },
  {
    name: "a trip folds down to its last event",
    async run() {
      const document = await openJournal("2031-06-21.trip");
      const ranges = await askProvider<vscode.FoldingRange>("executeFoldingRangeProvider", document.uri);
      const trip = ranges.find(({ start }) => start === placeOf(document, "trip 2031").line);
      assert.ok((trip?.end ?? 0) >= placeOf(document, "box chinook").line, JSON.stringify(ranges));
    },
  },
  {
    name: "the quick fix for a decimal comma mends it",
    async run() {
      const document = await openJournal("slips.trip");
      const slip = (await diagnosticsWhen(document, (all) => all.length > 0)).find(
        ({ range }) => document.getText(range) === "72,5",
      );
      assert.ok(slip !== undefined);
      const fixes = await askProvider<vscode.CodeAction>(
        "executeCodeActionProvider",
        document.uri,
        slip.range,
        vscode.CodeActionKind.QuickFix.value,
        10,
      );
      const changes = fixes.flatMap((fix) => fix.edit?.get(document.uri) ?? []);
      assert.ok(
        changes.some((change) => change.newText.includes("72.5") || change.newText === "."),
        JSON.stringify(fixes.map((fix) => fix.title)),
      );
    },
  },
  {
    name: "a rig in a trip leads to its line in the gear book",
    async run() {
      const document = await openJournal("2031-06-21.trip");
      const targets = await askProvider<vscode.Location | vscode.LocationLink>(
        "executeDefinitionProvider",
        document.uri,
        placeOf(document, "set C1", "set ".length),
      );
      const uris = targets.map((target) => ("uri" in target ? target.uri : target.targetUri).path);
      assert.ok(
        uris.some((path) => path.endsWith("/bright-penny.gear")),
        uris.join(" "),
      );
    },
  },
];
