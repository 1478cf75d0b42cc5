/** What is asked about names, and what follows from them: other places, renaming, links, searching. */
import * as vscode from "vscode";
import { applyEdit, askProvider, fileName } from "./ask-provider.ts";
import assert from "./assert.ts";
import { answerWhen, DAY, inWorkspace, openJournal, placeOf } from "./open-editor.ts";
import type { EditorTest } from "./runner.ts";

/** The editor's edit that renames what stands at a place. */
async function renaming(
  document: vscode.TextDocument,
  place: vscode.Position,
  name: string,
): Promise<vscode.WorkspaceEdit> {
  return await vscode.commands.executeCommand(
    "vscode.executeDocumentRenameProvider",
    document.uri,
    place,
    name,
  );
}

/** On the P1U of its first line in the day. */
const rigPlace = (document: vscode.TextDocument): vscode.Position => placeOf(document, "set P1U", 4);

export const nameTests: readonly EditorTest[] = [
  {
    name: "references of a rig are found in the day, in another trip that nobody opened and in the book",
    async run() {
      const document = await openJournal(DAY);
      const found = await answerWhen(
        "no references in three files",
        () =>
          vscode.commands.executeCommand<vscode.Location[]>(
            "vscode.executeReferenceProvider",
            document.uri,
            rigPlace(document),
          ),
        (places) => new Set(places.map(({ uri }) => fileName(uri))).size === 3,
      );
      const counts = new Map<string, number>();
      for (const { uri } of found) counts.set(fileName(uri), (counts.get(fileName(uri)) ?? 0) + 1);
      assert.deepEqual([...counts].sort(), [
        ["2031-06-21.trip", 1],
        ["2031-08-16.trip", 4],
        ["bright-penny.gear", 1],
      ]);
    },
  },
  {
    name: "every place of a guest in the trip is highlighted",
    async run() {
      const document = await openJournal(DAY);
      const lit = await askProvider<vscode.DocumentHighlight>(
        "executeDocumentHighlights",
        document.uri,
        placeOf(document, "by G3 clip", 3),
      );
      const lines = lit.map(({ range }) => document.lineAt(range.start.line).text.slice(0, 11));
      assert.deepEqual(lines, ["  guest G3 ", "08:31 catch", "10:12 catch"]);
    },
  },
  {
    name: "a rename starts from the name, and edits trips and book alike",
    async run() {
      const document = await openJournal(DAY);
      const prepared = await vscode.commands.executeCommand<{ placeholder: string }>(
        "vscode.prepareRename",
        document.uri,
        rigPlace(document),
      );
      assert.equal(prepared.placeholder, "P1U");
      const edit = await renaming(document, rigPlace(document), "P1-upper");
      assert.deepEqual(
        edit
          .entries()
          .map(([uri, edits]) => `${fileName(uri)} ${edits.length}`)
          .sort(),
        ["2031-06-21.trip 1", "2031-08-16.trip 4", "bright-penny.gear 1"],
      );
      assert.ok(edit.entries().every(([, edits]) => edits.every(({ newText }) => newText === "P1-upper")));
    },
  },
  {
    name: "a rename that is given and taken back leaves the very text",
    async run() {
      const document = await openJournal(DAY);
      const before = document.getText();
      await applyEdit(await renaming(document, placeOf(document, "guest G3", 6), "Lonnie"));
      assert.ok(document.getText().includes("kept by Lonnie clip none"), "the guest was not renamed");
      await applyEdit(await renaming(document, placeOf(document, "guest Lonnie", 6), "G3"));
      assert.equal(document.getText(), before);
    },
  },
  {
    name: "a rename to a name that is taken is refused in the captain's words",
    async run() {
      const document = await openJournal(DAY);
      const refusal = await renaming(document, rigPlace(document), "C1").then(
        () => "it was not refused",
        (error: unknown) => String(error),
      );
      assert.match(refusal, /"C1" is already the name of a rig: bright-penny\.gear, line \d+\./u);
    },
  },
  {
    name: "the trip's boat links to its book, a position to the map",
    async run() {
      const document = await openJournal(DAY);
      const links = await askProvider<vscode.DocumentLink>("executeLinkProvider", document.uri);
      const targets = links.map(({ range, target }) => [
        document.getText(range),
        target?.scheme === "geo" ? "map" : fileName(target ?? document.uri),
      ]);
      assert.deepEqual(targets.slice(0, 2), [
        ['"Bright Penny"', "bright-penny.gear"],
        ["44 46.1N 086 21.7W", "map"],
      ]);
    },
  },
  {
    name: "searching the workspace finds a rig in its book and a trip that nobody opened",
    async run() {
      await openJournal(DAY);
      for (const [query, file] of [
        ["P1U", "bright-penny.gear"],
        ["2031-08-16", "2031-08-16.trip"],
      ] as const) {
        const found = await askProvider<vscode.SymbolInformation>("executeWorkspaceSymbolProvider", query);
        const files = found.map(({ location }) => fileName(location.uri));
        assert.ok(files.includes(file), `${query}: ${files.join(" ")}`);
      }
    },
  },
  {
    name: "a picture that is moved in the editor keeps its name in the journal",
    async run() {
      const [old, moved] = [inWorkspace("king.jpg"), inWorkspace("pictures/king.jpg")];
      await vscode.workspace.fs.writeFile(old, new Uint8Array());
      const text = 'trip 2031-06-23 "Bright Penny"\n06:14 catch P1 king picture king.jpg\n';
      await vscode.workspace.fs.writeFile(inWorkspace("picture.trip"), new TextEncoder().encode(text));
      const document = await openJournal("picture.trip");
      const move = new vscode.WorkspaceEdit();
      move.renameFile(old, moved);
      await applyEdit(move);
      const ask = async (): Promise<string> => document.getText();
      await answerWhen("the name stayed", ask, (now) => now.includes("picture pictures/king.jpg"));
      await vscode.commands.executeCommand("workbench.action.revertAndCloseActiveEditor");
      for (const file of [moved, document.uri]) await vscode.workspace.fs.delete(file);
    },
  },
];
