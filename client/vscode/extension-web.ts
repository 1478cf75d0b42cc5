/** The extension's entry in a browser: the same server in a worker, which reads gear books through the editor. */
/// <reference lib="webworker" />
import * as vscode from "vscode";
import { LanguageClient } from "vscode-languageclient/browser";
import { clientName } from "./client-options.ts";
import { type DeepwakeExtension, startClient, stopClient } from "./start-client.ts";

/** Called by the editor when the first journal or gear book is opened. It starts the server and doesn't wait for it. */
export function activate(context: vscode.ExtensionContext): DeepwakeExtension {
  const bundle = vscode.Uri.joinPath(context.extensionUri, "dist", "server-worker.js");
  // A new worker for each start, so that a server that was ended can be started again.
  const start = async (): Promise<Worker> => new Worker(bundle.toString(true));
  return startClient(context, (options) => new LanguageClient("deepwake", clientName, start, options));
}

/** Called by the editor when the extension is stopped; answers when the server has ended. */
export function deactivate(): Promise<void> {
  return stopClient();
}
