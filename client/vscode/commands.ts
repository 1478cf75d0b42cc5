/** The commands that the extension adds to the editor. */
import * as vscode from "vscode";

/** What a command needs of the language client, whichever kind of editor it runs in. */
interface Restartable {
  restart(): Promise<void>;
}

/** Registers every command; the answer is to be disposed of with the extension. */
export function registerCommands(client: Restartable, output: vscode.LogOutputChannel): vscode.Disposable[] {
  return [vscode.commands.registerCommand("deepwake.restartServer", () => restartServer(client, output))];
}

/** Ends the server and starts it again, for the day when it has lost its way. */
async function restartServer(client: Restartable, output: vscode.LogOutputChannel): Promise<void> {
  try {
    await client.restart();
    output.info("The language server was restarted.");
  } catch (error) {
    output.error(`The language server could not be restarted: ${error}`);
    void vscode.window.showErrorMessage(
      "Deepwake could not restart its language server. The output tells why.",
    );
  }
}
