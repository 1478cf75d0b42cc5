/** What the extension does in every kind of editor: join the editor to a server that somebody else starts. */
import * as vscode from "vscode";
import type { BaseLanguageClient, LanguageClientOptions } from "vscode-languageclient";
import { answerFileRequests } from "./client-files.ts";
import { clientName, clientOptions } from "./client-options.ts";
import { registerCommands } from "./commands.ts";
import { ServerKeeper } from "./server-keeper.ts";

/** What the extension hands to other extensions and to its own tests. */
export interface DeepwakeExtension {
  /** Settles when the server has answered the editor's first request. */
  readonly ready: Promise<void>;
  /** How long `activate` held up the editor, in milliseconds. */
  readonly activateMs: number;
}

let client: BaseLanguageClient | undefined;
let keeper: ServerKeeper | undefined;

/** Makes the client, which knows how its server is started, and starts both without waiting for them. */
export function startClient(
  context: vscode.ExtensionContext,
  create: (options: LanguageClientOptions) => BaseLanguageClient,
): DeepwakeExtension {
  const started = performance.now();
  const output = vscode.window.createOutputChannel(clientName, { log: true });
  const schemes = (vscode.workspace.workspaceFolders ?? []).map(({ uri }) => uri.scheme);
  keeper = new ServerKeeper(output);
  const { errorHandler } = keeper;
  const keeping = { storage: context.storageUri, trusted: vscode.workspace.isTrusted, errorHandler };
  const made = create(clientOptions(output, schemes, keeping));
  client = made;
  context.subscriptions.push(output, ...answerFileRequests(made), ...registerCommands(made, output));
  const ready = keeper.start(made);
  // Told of where it failed.
  ready.catch(() => undefined);
  return { ready, activateMs: performance.now() - started };
}

/** Answers when the server has ended. */
export async function stopClient(): Promise<void> {
  keeper?.leave();
  await client?.dispose();
  client = undefined;
}
