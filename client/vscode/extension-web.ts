/** The extension's entry in a browser: the same server in a worker, which reads gear books through the editor. */
/// <reference lib="webworker" />
import * as vscode from "vscode";
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  LanguageClient,
  type MessageTransports,
} from "vscode-languageclient/browser";
import { clientName } from "./client-options.ts";
import { type DeepwakeExtension, startClient, stopClient } from "./start-client.ts";

let server: Worker | undefined;

/** Called by the editor when the first journal or gear book is opened. It starts the server and doesn't wait for it. */
export function activate(context: vscode.ExtensionContext): DeepwakeExtension {
  const bundle = vscode.Uri.joinPath(context.extensionUri, "dist", "server-worker.js").toString(true);
  const start = async (): Promise<MessageTransports> => {
    // Making a worker takes a while: the editor goes on first.
    await new Promise((resolve) => setTimeout(resolve, 0));
    return startWorker(bundle);
  };
  return startClient(context, (options) => new LanguageClient("deepwake", clientName, start, options));
}

/** Called by the editor when the extension is stopped; answers when the server has ended. */
export async function deactivate(): Promise<void> {
  await stopClient();
  endWorker();
}

/** A worker doesn't end by itself when its server is told to: the one before makes way here. */
function startWorker(bundle: string): MessageTransports {
  endWorker();
  server = new Worker(bundle);
  return { reader: new BrowserMessageReader(server), writer: new BrowserMessageWriter(server) };
}

function endWorker(): void {
  server?.terminate();
  server = undefined;
}
