/** What the language client is told, the same in every kind of editor. */
import type * as vscode from "vscode";
import type { DocumentSelector, LanguageClientOptions } from "vscode-languageclient";

/** The name shown on the output channel and in messages. */
export const clientName = "Deepwake";

/** The languages of a trip journal and of a gear book. */
const languageIds = ["deepwake-trip", "deepwake-gear"] as const;

/** How many times within three minutes a server that ends by itself is started again. */
const maxRestarts = 4;

/** The documents that the server is asked about: our two languages, saved or not yet saved. */
const documentSelector: DocumentSelector = languageIds.flatMap((language) =>
  ["file", "untitled"].map((scheme) => ({ scheme, language })),
);

/**
 * Builds the client's options, and what happens when the server ends by itself. Which files are watched and which
 * settings matter the server says itself, as it does to every client.
 */
export function clientOptions(output: vscode.LogOutputChannel): LanguageClientOptions {
  return {
    documentSelector,
    outputChannel: output,
    connectionOptions: { maxRestartCount: maxRestarts },
    diagnosticCollectionName: "deepwake",
  };
}
