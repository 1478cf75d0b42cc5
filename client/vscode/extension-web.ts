/** The extension's entry in a browser: the same server in a worker, which reads gear books through the editor. */
/// <reference lib="webworker" />
import * as vscode from "vscode";
import {
  LanguageClient,
  type LanguageClientOptions,
  type MessageTransports,
  State,
} from "vscode-languageclient/browser";
import type { LIFE_LOCK as LifeLock } from "../../server/lsp/protocol.ts";
import { clientName } from "./client-options.ts";
import { type DeepwakeExtension, startClient, stopClient } from "./start-client.ts";
import { WatchedWorker } from "./watched-worker.ts";

const LIFE_LOCK: typeof LifeLock = "deepwake/lifeLock";

let server: WatchedWorker | undefined;

/** Called by the editor when the first journal or gear book is opened. It starts the server and doesn't wait for it. */
export function activate(context: vscode.ExtensionContext): DeepwakeExtension {
  const bundle = vscode.Uri.joinPath(context.extensionUri, "dist", "server-worker.js").toString(true);
  return startClient(context, (options) => createClient(bundle, options));
}

/** Called by the editor when the extension is stopped; answers when the server has ended. */
export async function deactivate(): Promise<void> {
  await stopClient();
  server?.end();
}

function createClient(bundle: string, options: LanguageClientOptions): LanguageClient {
  const start = async (): Promise<MessageTransports> => {
    // Making a worker takes a while: the editor goes on first.
    await new Promise((resolve) => setTimeout(resolve, 0));
    return startWorker(bundle);
  };
  const client = new LanguageClient("deepwake", clientName, start, options);
  client.onDidChangeState(({ newState }) => {
    if (newState === State.Running && server !== undefined) watch(client, server);
  });
  return client;
}

/** A worker doesn't end by itself when its server is told to: the one before makes way here. */
function startWorker(bundle: string): WatchedWorker {
  server?.end();
  server = new WatchedWorker(bundle);
  return server;
}

function watch(client: LanguageClient, worker: WatchedWorker): void {
  const watching = client.sendRequest<string | null>(LIFE_LOCK).then((lock) => {
    if (lock !== null) worker.watch(lock);
  });
  // A server that is gone before it could answer was told of.
  watching.catch(() => undefined);
}
