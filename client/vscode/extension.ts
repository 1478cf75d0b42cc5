/**
 * The extension's entry in a desktop editor: starts the language server in a process of its own and joins the
 * editor to it. Everything a captain sees comes from the server; this side only carries it.
 */
import * as vscode from "vscode";
import { LanguageClient, type ServerOptions, TransportKind } from "vscode-languageclient/node";
import { clientName, clientOptions } from "./client-options.ts";
import { registerCommands } from "./commands.ts";

/** What the extension hands to other extensions and to its own tests. */
export interface DeepwakeExtension {
  /** Settles when the server has answered the editor's first request. */
  readonly ready: Promise<void>;
  /** How long `activate` held up the editor, in milliseconds. */
  readonly activateMs: number;
}

let client: LanguageClient | undefined;

/** Called by the editor when the first journal or gear book is opened. It starts the server and doesn't wait for it. */
export function activate(context: vscode.ExtensionContext): DeepwakeExtension {
  const started = performance.now();
  const output = vscode.window.createOutputChannel(clientName, { log: true });
  const languageClient = new LanguageClient(
    "deepwake",
    clientName,
    serverOptions(context),
    clientOptions(output, context.storageUri, vscode.workspace.isTrusted),
  );
  client = languageClient;
  context.subscriptions.push(output, ...registerCommands(languageClient, output));
  const ready = languageClient.start();
  ready.catch((error: unknown) => output.error(`The language server could not be started: ${error}`));
  return { ready, activateMs: performance.now() - started };
}

/** Called by the editor when the extension is stopped; answers when the server has ended. */
export async function deactivate(): Promise<void> {
  await client?.dispose();
  client = undefined;
}

/** The server is one bundled file, run by the editor's own Node and talked to over its process channel. */
function serverOptions(context: vscode.ExtensionContext): ServerOptions {
  const module = context.asAbsolutePath("dist/server.cjs");
  return {
    run: { module, transport: TransportKind.ipc },
    debug: { module, transport: TransportKind.ipc, options: { execArgv: ["--nolazy", "--inspect=6009"] } },
  };
}
