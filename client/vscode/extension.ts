/**
 * The extension's entry in a desktop editor: starts the language server in a process of its own and joins the
 * editor to it. Everything a captain sees comes from the server; this side only carries it.
 */
import type * as vscode from "vscode";
import { LanguageClient, type ServerOptions, TransportKind } from "vscode-languageclient/node";
import { clientName } from "./client-options.ts";
import { type DeepwakeExtension, startClient, stopClient } from "./start-client.ts";

/** Called by the editor when the first journal or gear book is opened. It starts the server and doesn't wait for it. */
export function activate(context: vscode.ExtensionContext): DeepwakeExtension {
  return startClient(
    context,
    (options) => new LanguageClient("deepwake", clientName, serverOptions(context), options),
  );
}

/** Called by the editor when the extension is stopped; answers when the server has ended. */
export function deactivate(): Promise<void> {
  return stopClient();
}

/** The server is one bundled file, run by the editor's own Node and talked to over its process channel. */
function serverOptions(context: vscode.ExtensionContext): ServerOptions {
  const module = context.asAbsolutePath("dist/server.cjs");
  return {
    run: { module, transport: TransportKind.ipc },
    debug: { module, transport: TransportKind.ipc, options: { execArgv: ["--nolazy", "--inspect=6009"] } },
  };
}
