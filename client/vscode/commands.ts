/** The commands that the extension adds to the editor. */
import * as vscode from "vscode";

/** What a command needs of the language client, whichever kind of editor it runs in. */
interface Client {
  needsStop(): boolean;
  stop(): Promise<void>;
  start(): Promise<void>;
  sendRequest<Answer>(method: string, params: unknown): Promise<Answer>;
}

/** Registers every command; the answer is to be disposed of with the extension. */
export function registerCommands(client: Client, output: vscode.LogOutputChannel): vscode.Disposable[] {
  return [
    vscode.commands.registerCommand("deepwake.restartServer", () => restartServer(client, output)),
    vscode.commands.registerCommand("deepwake.letOutTable", (...place: unknown[]) =>
      showLetOutTable(client, place),
    ),
  ];
}

/** Ends the server and starts it again, for the day when it has lost its way. */
async function restartServer(client: Client, output: vscode.LogOutputChannel): Promise<void> {
  try {
    if (client.needsStop()) await stopServer(client, output);
    await client.start();
    output.info("The language server was restarted.");
  } catch (error) {
    output.error(`The language server could not be restarted: ${error}`);
    void vscode.window.showErrorMessage(
      "Deepwake could not restart its language server. The output tells why.",
    );
  }
}

/** One that doesn't answer any more can't be told to stop; it makes way for the next all the same. */
async function stopServer(client: Client, output: vscode.LogOutputChannel): Promise<void> {
  try {
    await client.stop();
  } catch (error) {
    output.warn(`The language server did not stop when it was told to: ${error}`);
  }
}

/** Opens the let-out table beside the journal: for the place a lens names, else for the line that the cursor is on. */
async function showLetOutTable(client: Client, [uri, line]: readonly unknown[]): Promise<void> {
  const place = typeof uri === "string" && typeof line === "number" ? [uri, line] : cursorPlace();
  if (place === undefined) {
    void vscode.window.showInformationMessage("Open a trip journal first: the table is for its boat.");
    return;
  }
  const content = await client.sendRequest<string | null>("workspace/executeCommand", {
    command: "deepwake.letOutMarkdown",
    arguments: place,
  });
  if (content === null) return;
  const document = await vscode.workspace.openTextDocument({ language: "markdown", content });
  await vscode.window.showTextDocument(document, { viewColumn: vscode.ViewColumn.Beside, preview: true });
}

/** The trip journal at hand and the line that the cursor is on. */
function cursorPlace(): [uri: string, line: number] | undefined {
  const editor = vscode.window.activeTextEditor;
  if (editor?.document.languageId !== "deepwake-trip") return undefined;
  return [editor.document.uri.toString(), editor.selection.active.line];
}
