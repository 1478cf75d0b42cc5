/** What the language client is told, the same in every kind of editor. */
import type * as vscode from "vscode";
import type { DocumentSelector, ErrorHandler, LanguageClientOptions } from "vscode-languageclient";

/** The name shown on the output channel and in messages. */
export const clientName = "Deepwake";

/** The languages of a trip journal and of a gear book. */
const languageIds = ["deepwake-trip", "deepwake-gear"] as const;

/** Commands of ours that the server's lenses may call. */
const lensCommands = ["deepwake.letOutTable"];

/** The documents that the server is asked about: our two languages, on disk, not yet saved, or in the workspace. */
function documentSelector(schemes: readonly string[]): DocumentSelector {
  const all = [...new Set(["file", "untitled", ...schemes])];
  return languageIds.flatMap((language) => all.map((scheme) => ({ scheme, language })));
}

/**
 * Builds the client's options, and what happens when the server ends by itself. Which files are watched and which
 * settings matter the server says itself, as it does to every client. Between runs it may keep what it knows of the
 * workspace in the folder that the editor has for that, and nothing in a workspace that isn't trusted.
 * The workspace's folders are in places of the kinds in `schemes`.
 */
export function clientOptions(
  output: vscode.LogOutputChannel,
  schemes: readonly string[],
  {
    storage,
    trusted,
    errorHandler,
  }: {
    readonly storage: vscode.Uri | undefined;
    readonly trusted: boolean;
    readonly errorHandler: ErrorHandler;
  },
): LanguageClientOptions {
  return {
    documentSelector: documentSelector(schemes),
    initializationOptions: { commands: lensCommands, storage: storage?.toString(), trusted },
    outputChannel: output,
    errorHandler,
    // What is told of it is told by whoever starts the server.
    initializationFailedHandler: () => false,
    diagnosticCollectionName: "deepwake",
  };
}
