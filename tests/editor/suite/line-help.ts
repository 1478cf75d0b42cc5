/** What helps on and around a line: what it may say, growing selections, tidying on Enter, the lens over its trip. */
import * as vscode from "vscode";
import { askProvider } from "./ask-provider.ts";
import assert from "./assert.ts";
import { answerWhen, DAY, openJournal, placeOf } from "./open-editor.ts";
import type { EditorTest } from "./runner.ts";

/** What a selection at a place grows to, from the smallest. */
function growing(document: vscode.TextDocument, range: vscode.SelectionRange | undefined): string[] {
  return range === undefined ? [] : [document.getText(range.range), ...growing(document, range.parent)];
}

export const lineHelpTests: readonly EditorTest[] = [
  {
    name: "behind a verb stands what the line may say, with what is being typed marked",
    async run() {
      const document = await openJournal(DAY);
      const help = await answerWhen(
        "no signature",
        () =>
          vscode.commands.executeCommand<vscode.SignatureHelp | undefined>(
            "vscode.executeSignatureHelpProvider",
            document.uri,
            placeOf(document, "move P1 out 78", "move P1 out ".length),
          ),
        (answer) => (answer?.signatures.length ?? 0) > 0,
      );
      const parameters = help?.signatures[help.activeSignature]?.parameters ?? [];
      assert.equal(parameters[help?.activeParameter ?? 0]?.label, "[out length]");
    },
  },
  {
    name: "a growing selection takes the word, its attribute, the line, the trip",
    async run() {
      const document = await openJournal(DAY);
      const at = placeOf(document, "move P1 out 78 ft", "move P1 out ".length);
      const [range] = await askProvider<vscode.SelectionRange>(
        "executeSelectionRangeProvider",
        document.uri,
        [at],
      );
      const grown = growing(document, range);
      const inOrder = ["out 78 ft", "07:50 move P1 out 78 ft"].map((text) => grown.indexOf(text));
      assert.ok(inOrder[0] !== undefined && inOrder[0] > 0, grown.slice(0, 5).join(" | "));
      assert.equal(inOrder[1], inOrder[0] + 1, grown.slice(0, 5).join(" | "));
      assert.ok(grown.some((text) => text.startsWith("trip 2031-06-21")));
    },
  },
  {
    name: "a line that is left with Enter is tidied, and no other",
    async run() {
      const content = "5:14 pull C1\n5:15 pull P1";
      const document = await vscode.workspace.openTextDocument({ language: "deepwake-trip", content });
      const editor = await vscode.window.showTextDocument(document);
      const options = { tabSize: 2, insertSpaces: true };
      const ask = ["executeFormatOnTypeProvider", document.uri, new vscode.Position(1, 0), "\n", options];
      const [edit] = await askProvider<vscode.TextEdit>(...(ask as [string]));
      assert.deepEqual([edit?.range.start.line, edit?.newText], [0, "0"]);
      const end = document.positionAt(content.length);
      editor.selection = new vscode.Selection(end, end);
      await vscode.commands.executeCommand("type", { text: "\n" });
      const text = async (): Promise<string> => document.getText().replaceAll("\r\n", "\n");
      await answerWhen("the line stayed", text, (now) => now === "5:14 pull C1\n05:15 pull P1\n");
    },
  },
  {
    name: "over the trip stand the day in brief and the way to the let-out table",
    async run() {
      const document = await openJournal(DAY);
      const lenses = await askProvider<vscode.CodeLens>("executeCodeLensProvider", document.uri, 10);
      const { line } = placeOf(document, "trip 2031");
      assert.ok(lenses.every(({ range }) => range.start.line === line));
      const [brief, table] = lenses.map(({ command }) => command);
      assert.match(brief?.title ?? "", /\d+ h .*\d+ (landed|kept|fish)/u);
      assert.equal(table?.command, "deepwake.letOutTable");
    },
  },
];
