/** What the server can do, and what it reads of what the client can. */
import { type InitializeParams, type ServerCapabilities, TextDocumentSyncKind } from "vscode-languageserver";
import { FIX_ALL_KIND } from "../service/code-actions.ts";
import { LET_OUT_COMMAND } from "../service/let-out-command.ts";
import { LINE_BREAK } from "../service/on-type-formatting.ts";
import { TOKEN_MODIFIERS, TOKEN_TYPES } from "../service/semantic-tokens.ts";
import { SET_FOR_KIND } from "../service/set-for-depth.ts";

/** Everything the server answers. */
export const SERVER_CAPABILITIES: ServerCapabilities = {
  textDocumentSync: TextDocumentSyncKind.Incremental,
  hoverProvider: true,
  inlayHintProvider: { resolveProvider: true },
  codeLensProvider: { resolveProvider: true },
  documentSymbolProvider: true,
  foldingRangeProvider: true,
  completionProvider: { triggerCharacters: [" ", '"'], resolveProvider: true },
  documentFormattingProvider: true,
  documentRangeFormattingProvider: { rangesSupport: true },
  documentOnTypeFormattingProvider: { firstTriggerCharacter: LINE_BREAK },
  selectionRangeProvider: true,
  signatureHelpProvider: { triggerCharacters: [" "], retriggerCharacters: [" "] },
  definitionProvider: true,
  codeActionProvider: {
    codeActionKinds: ["quickfix", SET_FOR_KIND, FIX_ALL_KIND],
    resolveProvider: true,
  },
  executeCommandProvider: { commands: [LET_OUT_COMMAND] },
  semanticTokensProvider: {
    legend: { tokenTypes: [...TOKEN_TYPES], tokenModifiers: [...TOKEN_MODIFIERS] },
    full: { delta: true },
    range: true,
  },
  workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
};

/** What of the client's abilities is made use of; every one of them is optional. */
export interface ClientAbilities {
  readonly tellsSettings: boolean;
  readonly registersSettings: boolean;
  readonly registersWatchers: boolean;
  readonly refreshesHints: boolean;
  readonly refreshesLenses: boolean;
  readonly resolvesHints: boolean;
  readonly resolvesActions: boolean;
  /** Commands of its own that a lens may call, which it names when it starts the server. */
  readonly commands: ReadonlySet<string>;
  readonly hasFolders: boolean;
}

/** Reads the client's abilities from its first message. */
export function clientAbilities({ capabilities, initializationOptions }: InitializeParams): ClientAbilities {
  const { workspace, textDocument } = capabilities;
  return {
    tellsSettings: workspace?.configuration === true,
    registersSettings: workspace?.didChangeConfiguration?.dynamicRegistration === true,
    registersWatchers: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    refreshesHints: workspace?.inlayHint?.refreshSupport === true,
    refreshesLenses: workspace?.codeLens?.refreshSupport === true,
    resolvesHints: textDocument?.inlayHint?.resolveSupport?.properties.includes("tooltip") === true,
    resolvesActions:
      textDocument?.codeAction?.dataSupport === true &&
      textDocument.codeAction.resolveSupport?.properties.includes("edit") === true,
    commands: commandsIn(initializationOptions),
    hasFolders: workspace?.workspaceFolders === true,
  };
}

function commandsIn(options: unknown): ReadonlySet<string> {
  const named = (options as { commands?: unknown } | null | undefined)?.commands;
  return new Set(Array.isArray(named) ? named.map(String) : []);
}

/** The folders the client works in; a client without folders has at most one root. */
export function rootsOf({ workspaceFolders, rootUri }: InitializeParams): string[] {
  if (workspaceFolders) return workspaceFolders.map((folder) => folder.uri);
  return rootUri ? [rootUri] : [];
}
