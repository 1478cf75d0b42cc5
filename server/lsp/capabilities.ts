/** What the server can do, and what it reads of what the client can. */
import {
  type FileOperationRegistrationOptions,
  type InitializeParams,
  type ServerCapabilities,
  TextDocumentSyncKind,
} from "vscode-languageserver";
import { FIX_ALL_KIND } from "../service/code-actions.ts";
import { LET_OUT_COMMAND } from "../service/let-out-command.ts";
import { TOKEN_TYPES } from "../service/semantic-tokens.ts";
import { SET_FOR_KIND } from "../service/set-for-depth.ts";

/** Files whose moves matter: journals, books, the pictures they name, and folders with any of them. */
const MOVED_FILES: FileOperationRegistrationOptions = {
  filters: [
    { pattern: { glob: "**/*.{trip,gear,jpg,jpeg,png,webp,gif,heic,avif}", options: { ignoreCase: true } } },
    { pattern: { glob: "**", matches: "folder" } },
  ],
};

/** Everything the server answers. */
export const SERVER_CAPABILITIES: ServerCapabilities = {
  textDocumentSync: TextDocumentSyncKind.Incremental,
  hoverProvider: true,
  inlayHintProvider: true,
  documentSymbolProvider: true,
  foldingRangeProvider: true,
  completionProvider: { triggerCharacters: [" ", '"'] },
  documentFormattingProvider: true,
  documentRangeFormattingProvider: true,
  definitionProvider: true,
  referencesProvider: true,
  documentHighlightProvider: true,
  documentLinkProvider: {},
  renameProvider: { prepareProvider: true },
  workspaceSymbolProvider: true,
  codeActionProvider: { codeActionKinds: ["quickfix", SET_FOR_KIND, FIX_ALL_KIND] },
  executeCommandProvider: { commands: [LET_OUT_COMMAND] },
  semanticTokensProvider: {
    legend: { tokenTypes: [...TOKEN_TYPES], tokenModifiers: [] },
    full: true,
    range: true,
  },
  workspace: {
    workspaceFolders: { supported: true, changeNotifications: true },
    fileOperations: { willRename: MOVED_FILES, didRename: MOVED_FILES, didDelete: MOVED_FILES },
  },
};

/** What of the client's abilities is made use of; every one of them is optional. */
export interface ClientAbilities {
  readonly tellsSettings: boolean;
  readonly registersSettings: boolean;
  readonly registersWatchers: boolean;
  readonly refreshesHints: boolean;
  readonly hasFolders: boolean;
  /** Shows the whole name as the start of a jump, and the whole line as its end. */
  readonly followsLinks: boolean;
  /** Takes edits for a version of a document, so that none lands in a newer text. */
  readonly versionsEdits: boolean;
}

/** Reads the client's abilities from its first message. */
export function clientAbilities({ capabilities }: InitializeParams): ClientAbilities {
  const { workspace, textDocument } = capabilities;
  return {
    followsLinks: textDocument?.definition?.linkSupport === true,
    versionsEdits: workspace?.workspaceEdit?.documentChanges === true,
    tellsSettings: workspace?.configuration === true,
    registersSettings: workspace?.didChangeConfiguration?.dynamicRegistration === true,
    registersWatchers: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    refreshesHints: workspace?.inlayHint?.refreshSupport === true,
    hasFolders: workspace?.workspaceFolders === true,
  };
}

/** The folders the client works in; a client without folders has at most one root. */
export function rootsOf({ workspaceFolders, rootUri }: InitializeParams): string[] {
  if (workspaceFolders) return workspaceFolders.map((folder) => folder.uri);
  return rootUri ? [rootUri] : [];
}
