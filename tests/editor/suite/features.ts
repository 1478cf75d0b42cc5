/** Every feature of the server, asked for the way the editor asks: through its own provider commands. */
import * as vscode from "vscode";
import { askProvider } from "./ask-provider.ts";
import assert from "./assert.ts";
import { answerWhen, DAY, diagnosticsWhen, openJournal, placeOf } from "./open-editor.ts";
import type { EditorTest } from "./runner.ts";

function wholeOf(document: vscode.TextDocument): vscode.Range {
  return new vscode.Range(new vscode.Position(0, 0), document.positionAt(document.getText().length));
}

function labelText(label: string | vscode.InlayHintLabelPart[]): string {
  return typeof label === "string" ? label : label.map((part) => part.value).join("");
}

async function hoverText(document: vscode.TextDocument, place: vscode.Position): Promise<string> {
  const hovers = await askProvider<vscode.Hover>("executeHoverProvider", document.uri, place);
  const contents = hovers.flatMap((hover) => hover.contents);
  return contents.map((content) => (typeof content === "string" ? content : content.value)).join("\n");
}

async function hintsOf(document: vscode.TextDocument): Promise<vscode.InlayHint[]> {
  const whole = wholeOf(document);
  return await vscode.commands.executeCommand("vscode.executeInlayHintProvider", document.uri, whole);
}

/** What completion offers at a place, in order, and where the first would be written. */
async function offersAt(document: vscode.TextDocument, place: vscode.Position): Promise<string[]> {
  const ask = (): Thenable<vscode.CompletionList> =>
    vscode.commands.executeCommand("vscode.executeCompletionItemProvider", document.uri, place);
  const list = await answerWhen("no completion", ask, (answer) => answer.items.length > 0);
  const sorted = [...list.items].sort((a, b) => ((a.sortText ?? "") < (b.sortText ?? "") ? -1 : 1));
  return sorted.map(({ label }) => (typeof label === "string" ? label : label.label));
}

export const featureTests: readonly EditorTest[] = [
  {
    name: "a line that is put back says how deep it runs, and by what",
    async run() {
      const document = await openJournal(DAY);
      const said = await hoverText(document, placeOf(document, "06:18 again P1", 7));
      assert.match(said, /Ball about \d+ ft down \(\d+ to \d+\), \d+ ft back\. 72 ft out\./);
      assert.match(said, /Speeds? used: .*\d\.\d mph at C1's probe/);
    },
  },
  {
    name: "the let-out table opens beside the journal, for the rigs as they are set at the cursor",
    async run() {
      const document = await openJournal(DAY);
      const editor = vscode.window.activeTextEditor;
      const place = placeOf(document, "06:18 again P1");
      if (editor !== undefined) editor.selection = new vscode.Selection(place, place);
      await vscode.commands.executeCommand("deepwake.letOutTable");
      const shown = vscode.window.activeTextEditor?.document;
      assert.equal(shown?.languageId, "markdown");
      assert.match(shown?.getText() ?? "", /^# Cable to set\n[\s\S]*\| depth \| C1 \| P1 \|/);
      await vscode.commands.executeCommand("workbench.action.revertAndCloseActiveEditor");
    },
  },
  {
    name: "the trip line sums up the day",
    async run() {
      const document = await openJournal(DAY);
      const said = await hoverText(document, placeOf(document, "trip 2031", 1));
      assert.match(said, /Landed: chinook 4 kept/);
      assert.match(said, /rod-hours fishing/);
    },
  },
  {
    name: "each downrigger line carries its depth and the water there right behind its last word",
    async run() {
      const document = await openJournal(DAY);
      const hints = await answerWhen(
        "no hints",
        () => hintsOf(document),
        (all) => all.length > 0,
      );
      const { line } = placeOf(document, "05:18 set P1");
      const [hint] = hints.filter(({ position }) => position.line === line);
      assert.match(labelText(hint?.label ?? ""), /^↓ ball \d+ ft, lure \d+ ft, \d+ F$/);
      assert.equal(hint?.position.character, document.lineAt(line).text.length);
      assert.ok(hints.length >= 15, `${hints.length} hints`);
    },
  },
  {
    name: "depths and temperatures beside the lines can be switched off, each by itself",
    async run() {
      const document = await openJournal(DAY);
      const settings = vscode.workspace.getConfiguration("deepwake");
      const isTemperature = ({ label }: vscode.InlayHint): boolean => /^↓ \d+ F$/.test(labelText(label));
      await settings.update("hints.depth", false, vscode.ConfigurationTarget.Global);
      await answerWhen(
        "depths stayed",
        () => hintsOf(document),
        (all) => all.length > 0 && all.every(isTemperature),
      );
      await settings.update("hints.temperature", false, vscode.ConfigurationTarget.Global);
      await answerWhen(
        "hints stayed",
        () => hintsOf(document),
        (all) => all.length === 0,
      );
      await settings.update("hints.depth", undefined, vscode.ConfigurationTarget.Global);
      await settings.update("hints.temperature", undefined, vscode.ConfigurationTarget.Global);
      await answerWhen(
        "no hints",
        () => hintsOf(document),
        (all) => all.length > 0,
      );
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
      assert.ok(edits.every(({ range }) => range.start.line === 0 && range.end.line === 0));
      const edit = new vscode.WorkspaceEdit();
      edit.set(document.uri, edits);
      assert.ok(await vscode.workspace.applyEdit(edit));
      assert.equal(document.getText(), "05:14 set C1 out 90 ft lure white-fly\n05:15 pull C1\n");
    },
  },
  {
    name: "formatting a range leaves the lines around it",
    async run() {
      const content = "5:14 pull C1\n5:15 pull P1\n";
      const document = await vscode.workspace.openTextDocument({ language: "deepwake-trip", content });
      const line = new vscode.Range(1, 0, 1, 3);
      const options = { tabSize: 2, insertSpaces: true };
      const edits = await askProvider<vscode.TextEdit>(
        "executeFormatRangeProvider",
        document.uri,
        line,
        options,
      );
      assert.ok(edits.every(({ range }) => range.start.line === 1 && range.end.line === 1));
    },
  },
  {
    name: "an offer of completion says what it means when it is looked at",
    async run() {
      const document = await openJournal(DAY);
      const at = placeOf(document, "06:18 again P1", "06:18 ".length);
      const ask = (): Thenable<vscode.CompletionList> =>
        vscode.commands.executeCommand(
          "vscode.executeCompletionItemProvider",
          document.uri,
          at,
          undefined,
          100,
        );
      const { items } = await answerWhen("no completion", ask, (answer) => answer.items.length > 0);
      const again = items.find(({ label }) => label === "again");
      const { documentation } = again ?? {};
      const said = typeof documentation === "string" ? documentation : documentation?.value;
      assert.match(said ?? "", /\w+ \w+/u);
    },
  },
  {
    name: "every slip of the file can be mended at once, and a line rewritten in other units",
    async run() {
      const content = "05:14 set C1 out 72,5 ft\n05:15 set P1 out 61,5 ft\n";
      const document = await vscode.workspace.openTextDocument({ language: "deepwake-trip", content });
      await diagnosticsWhen(document, (all) => all.some(({ code }) => code === "number-format"));
      const actions = (kind: string): Promise<vscode.CodeAction[]> =>
        askProvider("executeCodeActionProvider", document.uri, wholeOf(document), kind, 20);
      const [all] = await actions("source.fixAll");
      assert.ok(all?.edit !== undefined && (await vscode.workspace.applyEdit(all.edit)));
      assert.match(document.getText(), /out 72\.5 ft[\s\S]*out 61\.5 ft/u);
      const titles = (await actions("refactor")).map(({ title }) => title);
      assert.ok(
        titles.some((title) => title.startsWith("Write ft as ")),
        titles.join(" | "),
      );
    },
  },
  {
    name: "completion offers rigs after a verb, and after a rig its last values first",
    async run() {
      const document = await openJournal(DAY);
      const rigs = await offersAt(document, placeOf(document, "move P1 out 78", "move ".length));
      for (const rig of ["C1", "P1", "P1U", "S1", "PB", "SD"]) assert.ok(rigs.includes(rig), rig);
      const values = await offersAt(document, placeOf(document, "move P1 out 78", "move P1 ".length));
      assert.deepEqual(values.slice(0, 2), ["out 72 ft", "setback 15 ft"]);
    },
  },
  {
    name: "the outline names the trip and its events",
    async run() {
      const document = await openJournal(DAY);
      const symbols = await askProvider<vscode.DocumentSymbol>("executeDocumentSymbolProvider", document.uri);
      const [trip] = symbols.filter(({ name }) => name === "2031-06-21 Bright Penny");
      assert.ok(trip?.children.some(({ name, detail }) => name === "catch P1 king" && detail === "06:14"));
    },
  },
  {
    name: "a trip folds down to its last event",
    async run() {
      const document = await openJournal(DAY);
      const ranges = await askProvider<vscode.FoldingRange>("executeFoldingRangeProvider", document.uri);
      const trip = ranges.find(({ start }) => start === placeOf(document, "trip 2031").line);
      assert.ok((trip?.end ?? 0) >= placeOf(document, "box chinook").line, JSON.stringify(ranges));
    },
  },
  {
    name: "the quick fix for a decimal comma mends it",
    async run() {
      const document = await openJournal("slips.trip");
      const isSlip = ({ code }: vscode.Diagnostic): boolean => code === "number-format";
      const slip = (await diagnosticsWhen(document, (all) => all.some(isSlip))).find(isSlip);
      const fixes = await askProvider<vscode.CodeAction>(
        "executeCodeActionProvider",
        document.uri,
        slip?.range,
        vscode.CodeActionKind.QuickFix.value,
        10,
      );
      const fix = fixes.find(({ isPreferred }) => isPreferred === true);
      assert.ok(fix?.edit !== undefined, JSON.stringify(fixes.map(({ title }) => title)));
      assert.ok(await vscode.workspace.applyEdit(fix.edit));
      assert.ok(document.getText().includes("out 72.5 ft"), document.getText());
      await diagnosticsWhen(document, (all) => !all.some(isSlip));
      await vscode.commands.executeCommand("undo");
    },
  },
  {
    name: "a rig in a trip leads to its line in the gear book",
    async run() {
      const document = await openJournal(DAY);
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
  {
    name: "words are told apart for coloring",
    async run() {
      const document = await openJournal(DAY);
      const tokens = await vscode.commands.executeCommand<vscode.SemanticTokens>(
        "vscode.provideDocumentSemanticTokens",
        document.uri,
      );
      assert.ok(tokens.data.length > 5 * 300, `${tokens.data.length / 5} tokens`);
    },
  },
];
