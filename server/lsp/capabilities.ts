/** What the server can do, and what it reads of what the client can. */
import {
  type FileOperationRegistrationOptions,
  type InitializeParams,
  PositionEncodingKind,
  type ServerCapabilities,
  TextDocumentSyncKind,
} from "vscode-languageserver";
import { FIX_ALL_KIND } from "../service/code-actions.ts";
import { LET_OUT_COMMAND } from "../service/let-out-command.ts";
import { LINE_BREAK } from "../service/on-type-formatting.ts";
import { TOKEN_MODIFIERS, TOKEN_TYPES } from "../service/semantic-tokens.ts";
import { SET_FOR_KIND } from "../service/set-for-depth.ts";
import { chooseEncoding } from "./position-encoding.ts";

/** The command that applies an edit, for clients that take commands for code actions; its argument is the edit. */
export const APPLY_COMMAND = "deepwake.applyEdit";

/** Files whose moves matter: journals, books, the pictures they name, and folders with any of them. */
const MOVED_FILES: FileOperationRegistrationOptions = {
  filters: [
    { pattern: { glob: "**/*.{trip,gear,jpg,jpeg,png,webp,gif,heic,avif}", options: { ignoreCase: true } } },
    { pattern: { glob: "**", matches: "folder" } },
  ],
};

/** Single files are watched; that a folder with files in it came or went no watcher of files tells. */
const FOLDERS: FileOperationRegistrationOptions = {
  filters: [{ scheme: "file", pattern: { glob: "**/*", matches: "folder" } }],
};

/** Everything the server answers, whatever the client. */
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
  referencesProvider: true,
  documentHighlightProvider: true,
  documentLinkProvider: {},
  renameProvider: { prepareProvider: true },
  workspaceSymbolProvider: true,
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
  workspace: {
    workspaceFolders: { supported: true, changeNotifications: true },
    fileOperations: {
      didCreate: FOLDERS,
      willRename: MOVED_FILES,
      didRename: MOVED_FILES,
      didDelete: MOVED_FILES,
    },
  },
};

/** What of the client's abilities is made use of; every one of them is optional. */
export interface ClientAbilities {
  readonly tellsSettings: boolean;
  readonly registersSettings: boolean;
  readonly registersWatchers: boolean;
  readonly refreshesHints: boolean;
  /** Asks for a hint's reasons when it is pointed at. */
  readonly resolvesHints: boolean;
  readonly refreshesLenses: boolean;
  readonly resolvesActions: boolean;
  /** Commands of its own that a lens may call, which it names when it starts the server. */
  readonly commands: ReadonlySet<string>;
  readonly hasFolders: boolean;
  /** It asks for diagnostics; then none are sent unasked. */
  readonly pullsDiagnostics: boolean;
  readonly refreshesDiagnostics: boolean;
  /** With one file's diagnostics it takes those of other files. */
  readonly takesRelated: boolean;
  readonly relatesPlaces: boolean;
  readonly hoversMarkdown: boolean;
  readonly completesMarkdown: boolean;
  readonly fillsSnippets: boolean;
  readonly nestsSymbols: boolean;
  readonly takesActions: boolean;
  readonly appliesEdits: boolean;
  readonly encoding: PositionEncodingKind;
  /** Shows the whole name as the start of a jump, and the whole line as its end. */
  readonly followsLinks: boolean;
  /** Takes edits for a version of a document, so that none lands in a newer text. */
  readonly versionsEdits: boolean;
}

/** Reads the client's abilities from its first message. */
export function clientAbilities(params: InitializeParams): ClientAbilities {
  const { workspace, textDocument: text } = params.capabilities;
  return {
    followsLinks: text?.definition?.linkSupport === true,
    versionsEdits: workspace?.workspaceEdit?.documentChanges === true,
    tellsSettings: workspace?.configuration === true,
    registersSettings: workspace?.didChangeConfiguration?.dynamicRegistration === true,
    registersWatchers: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    refreshesHints: workspace?.inlayHint?.refreshSupport === true,
    refreshesLenses: workspace?.codeLens?.refreshSupport === true,
    resolvesHints: text?.inlayHint?.resolveSupport?.properties.includes("tooltip") === true,
    resolvesActions:
      text?.codeAction?.dataSupport === true &&
      text.codeAction.resolveSupport?.properties.includes("edit") === true,
    commands: commandsIn(params.initializationOptions),
    hasFolders: workspace?.workspaceFolders === true,
    pullsDiagnostics: text?.diagnostic !== undefined,
    refreshesDiagnostics: workspace?.diagnostics?.refreshSupport === true,
    takesRelated: text?.diagnostic?.relatedDocumentSupport === true,
    relatesPlaces: (text?.diagnostic ?? text?.publishDiagnostics)?.relatedInformation === true,
    hoversMarkdown: text?.hover?.contentFormat?.includes("markdown") === true,
    completesMarkdown: text?.completion?.completionItem?.documentationFormat?.includes("markdown") === true,
    fillsSnippets: text?.completion?.completionItem?.snippetSupport === true,
    nestsSymbols: text?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    takesActions: text?.codeAction?.codeActionLiteralSupport !== undefined,
    appliesEdits: workspace?.applyEdit === true,
    encoding: chooseEncoding(params),
  };
}

/** What the server answers this client. */
export function capabilitiesFor(client: ClientAbilities): ServerCapabilities {
  const all = SERVER_CAPABILITIES;
  const commands = [
    ...(all.executeCommandProvider?.commands ?? []),
    ...(client.takesActions ? [] : [APPLY_COMMAND]),
  ];
  return {
    ...all,
    ...(client.encoding === PositionEncodingKind.UTF16 ? {} : { positionEncoding: client.encoding }),
    // Changes of packed tokens can't be told to a client that counts columns in its own way.
    ...(client.encoding === PositionEncodingKind.UTF16 || all.semanticTokensProvider === undefined
      ? {}
      : { semanticTokensProvider: { ...all.semanticTokensProvider, full: true } }),
    executeCommandProvider: { commands },
    ...(client.pullsDiagnostics
      ? {
          diagnosticProvider: {
            identifier: "deepwake",
            interFileDependencies: true,
            workspaceDiagnostics: true,
          },
        }
      : {}),
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
