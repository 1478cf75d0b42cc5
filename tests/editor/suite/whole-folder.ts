/** The whole workspace: what is wrong in files that nobody opened, who asks for it, and that long work shows. */
import * as vscode from "vscode";
import assert from "./assert.ts";
import { heard, paramsOf } from "./messages.ts";
import { answerWhen, diagnosticsWhen, inWorkspace, openJournal, replaceText } from "./open-editor.ts";
import type { EditorTest } from "./runner.ts";

const write = (name: string, text: string): Thenable<void> =>
  vscode.workspace.fs.writeFile(inWorkspace(name), new TextEncoder().encode(text));

/** A short day on which one rig is set and pulled. */
const dayOn = (rig: string): string =>
  `trip 2031-06-24 "Bright Penny"\n05:00 surface speed 2.5 mph\n05:14 set ${rig} out 40 ft\n06:00 pull ${rig}\n`;

/** What the example lists of a file, `LINE  SEVERITY  CHECK  MESSAGE` each, of errors and warnings. */
async function listOf(name: string): Promise<string[]> {
  const list = new TextDecoder().decode(await vscode.workspace.fs.readFile(inWorkspace(name)));
  return list.split("\n").filter((line) => /^\d+ {2}(?:error|warning)/u.test(line));
}

/** Answers the codes found in a file that needn't be open, as soon as they satisfy `accept`. */
const codesWhen = (
  name: string,
  accept: (codes: readonly unknown[]) => boolean,
): Promise<readonly unknown[]> =>
  answerWhen(
    `what was expected of ${name} did not come`,
    async () => vscode.languages.getDiagnostics(inWorkspace(name)).map(({ code }) => code),
    accept,
  );

export const wholeFolderTests: readonly EditorTest[] = [
  {
    name: "files that nobody opened are listed with their errors and warnings",
    async run() {
      await openJournal("slips.trip");
      for (const name of ["wrong/clocks", "wrong/wrong"]) {
        const wanted = (await listOf(`${name}.expected.txt`)).map((line) => line.split(/ {2}/u)[2]);
        const file = name.endsWith("clocks") ? `${name}.trip` : `${name}.gear`;
        const found = await codesWhen(file, (codes) => codes.length === wanted.length);
        assert.deepEqual([...found].sort(), [...wanted].sort());
        const isOpen = vscode.workspace.textDocuments.some(({ uri }) => uri.path.endsWith(file));
        assert.ok(!isOpen, `${file} was open`);
      }
    },
  },
  {
    name: "a file that comes, changes and goes on disk is followed",
    async run() {
      await openJournal("slips.trip");
      await write("trips/left.trip", dayOn("Q7"));
      await codesWhen("trips/left.trip", (codes) => codes.includes("unknown-rig"));
      await write("trips/left.trip", dayOn("P1"));
      await codesWhen("trips/left.trip", (codes) => codes.length === 0);
      await write("trips/left.trip", dayOn("Q8"));
      await codesWhen("trips/left.trip", (codes) => codes.includes("unknown-rig"));
      await vscode.workspace.fs.delete(inWorkspace("trips/left.trip"));
      await codesWhen("trips/left.trip", (codes) => codes.length === 0);
    },
  },
  {
    name: "the editor asks for what is wrong, by the name of what it has, and nothing is sent unasked",
    async run() {
      const document = await openJournal("slips.trip");
      await replaceText(document, "72,5", "72,6");
      await diagnosticsWhen(document, (all) => all.some(({ range }) => document.getText(range) === "72,6"));
      await replaceText(document, "72,6", "72,5");
      await diagnosticsWhen(document, (all) => all.some(({ range }) => document.getText(range) === "72,5"));
      const asked = paramsOf(heard.fromEditor, "textDocument/diagnostic");
      assert.ok(asked.some((params) => Reflect.get(Object(params), "previousResultId") !== undefined));
      const named = async (): Promise<unknown[]> =>
        paramsOf(heard.fromEditor, "workspace/diagnostic").flatMap((params) =>
          Reflect.get(Object(params), "previousResultIds"),
        );
      await answerWhen("the workspace was not asked about by name", named, (names) => names.length > 0);
      assert.deepEqual(paramsOf(heard.fromServer, "textDocument/publishDiagnostics"), []);
    },
  },
  {
    name: "work on many files shows how far it is, and ends",
    async run() {
      await openJournal("slips.trip");
      const many = Array.from({ length: 30 }, (_, number) => `many/${number}.trip`);
      for (const name of many) await write(name, dayOn("P1"));
      const from = heard.fromServer.length;
      await vscode.commands.executeCommand("deepwake.restartServer");
      const shown = async (): Promise<unknown[]> =>
        paramsOf(heard.fromServer.slice(from), "$/progress").map((params) =>
          Reflect.get(Object(params), "value"),
        );
      const isEnd = (value: unknown): boolean => Reflect.get(Object(value), "kind") === "end";
      const values = await answerWhen("no progress that ends", shown, (all) => all.some(isEnd));
      const [first] = values.map((value) =>
        ["kind", "title"].map((name) => Reflect.get(Object(value), name)),
      );
      // Reading may be done before the editor is ready to show it.
      assert.equal(first?.[0], "begin");
      assert.ok(["Reading journals", "Checking journals"].includes(first?.[1]), first?.[1]);
      await vscode.workspace.fs.delete(inWorkspace("many"), { recursive: true });
    },
  },
];
