/** Joins the language service to a connection. A feature that throws is logged and answers empty; the server lives on. */
import {
  type Connection,
  type InitializeParams,
  type InitializeResult,
  ResponseError,
  TextDocumentSyncKind,
  TextDocuments,
} from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import { LanguageService, type ServiceHost } from "../service/language-service.ts";
import { TOKEN_TYPES } from "../service/semantic-tokens.ts";
import { DEFAULT_SETTINGS, readSettings, type Settings } from "./settings.ts";

/** What the transport brings: books from wherever the files are. */
export interface ServerWorld {
  booksNear: ServiceHost["booksNear"];
  /** Called with the workspace's folders before anything else is asked. */
  setRoots(uris: readonly string[]): void;
  /** Files on disk changed. */
  forgetFiles(): void;
}

/** Serves one client until it says goodbye. */
export function connect(connection: Connection, world: ServerWorld): void {
  const server = new Server(connection, world);
  server.listen();
}

class Server {
  readonly #connection: Connection;
  readonly #world: ServerWorld;
  readonly #documents = new TextDocuments(TextDocument);
  readonly #service: LanguageService;
  #settings: Settings = DEFAULT_SETTINGS;
  #canAskSettings = false;
  #canRefreshHints = false;

  constructor(connection: Connection, world: ServerWorld) {
    this.#connection = connection;
    this.#world = world;
    this.#service = new LanguageService({
      booksNear: (uri) => world.booksNear(uri),
      severities: () => this.#settings.severities,
    });
  }

  listen(): void {
    const connection = this.#connection;
    connection.onInitialize((params) => this.#initialize(params));
    connection.onInitialized(() => void this.#askSettings());
    connection.onDidChangeConfiguration((change) => void this.#configure(change.settings));
    connection.onDidChangeWatchedFiles(() => this.#refreshAll());
    this.#documents.onDidChangeContent(({ document }) => this.#take(document));
    this.#documents.onDidClose(({ document }) => this.#close(document.uri));
    this.#answerRequests();
    this.#documents.listen(connection);
    connection.listen();
  }

  #initialize(params: InitializeParams): InitializeResult {
    const { workspace } = params.capabilities;
    this.#canAskSettings = workspace?.configuration === true;
    this.#canRefreshHints = workspace?.inlayHint?.refreshSupport === true;
    this.#world.setRoots((params.workspaceFolders ?? []).map((folder) => folder.uri));
    const options: unknown = params.initializationOptions;
    if (options !== undefined) this.#settings = readSettings(options);
    return {
      serverInfo: { name: "deepwake" },
      capabilities: {
        textDocumentSync: TextDocumentSyncKind.Incremental,
        hoverProvider: true,
        inlayHintProvider: true,
        documentSymbolProvider: true,
        foldingRangeProvider: true,
        completionProvider: { triggerCharacters: [" "] },
        documentFormattingProvider: true,
        documentRangeFormattingProvider: true,
        definitionProvider: true,
        codeActionProvider: { codeActionKinds: ["quickfix"] },
        semanticTokensProvider: {
          legend: { tokenTypes: [...TOKEN_TYPES], tokenModifiers: [] },
          full: true,
          range: true,
        },
        workspace: { workspaceFolders: { supported: true } },
      },
    };
  }

  #answerRequests(): void {
    const connection = this.#connection;
    const service = this.#service;
    connection.onHover(
      this.#guard("hover", null, ({ textDocument, position }) => service.hover(textDocument.uri, position)),
    );
    connection.onCompletion(
      this.#guard("completion", [], ({ textDocument, position }) =>
        service.completion(textDocument.uri, position),
      ),
    );
    connection.onDefinition(
      this.#guard("definition", null, ({ textDocument, position }) =>
        service.definition(textDocument.uri, position),
      ),
    );
    connection.onDocumentSymbol(
      this.#guard("symbols", [], ({ textDocument }) => service.documentSymbols(textDocument.uri)),
    );
    connection.onFoldingRanges(
      this.#guard("folding", [], ({ textDocument }) => service.foldingRanges(textDocument.uri)),
    );
    connection.onDocumentFormatting(
      this.#guard("formatting", [], ({ textDocument }) => service.formatting(textDocument.uri)),
    );
    connection.onDocumentRangeFormatting(
      this.#guard("range formatting", [], ({ textDocument, range }) =>
        service.formatting(textDocument.uri, range),
      ),
    );
    connection.onCodeAction(
      this.#guard("code actions", [], ({ textDocument, range }) =>
        service.codeActions(textDocument.uri, range),
      ),
    );
    connection.languages.inlayHint.on(
      this.#guard("inlay hints", [], ({ textDocument, range }) =>
        this.#settings.showDepths ? service.inlayHints(textDocument.uri, range) : [],
      ),
    );
    connection.languages.semanticTokens.on(
      this.#guard("semantic tokens", { data: [] }, ({ textDocument }) => ({
        data: service.semanticTokens(textDocument.uri),
      })),
    );
    connection.languages.semanticTokens.onRange(
      this.#guard("semantic tokens", { data: [] }, ({ textDocument, range }) => ({
        data: service.semanticTokens(textDocument.uri, range),
      })),
    );
  }

  /** Runs a feature; a bug in it costs its answer, not the server. */
  #guard<Params, Answer>(
    name: string,
    none: Answer,
    ask: (params: Params) => Answer,
  ): (params: Params) => Answer {
    return (params) => {
      try {
        return ask(params);
      } catch (error) {
        if (error instanceof ResponseError) throw error;
        this.#connection.console.error(
          `${name} failed: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`,
        );
        return none;
      }
    };
  }

  #take(document: TextDocument): void {
    this.#guard("reading", undefined, () => {
      this.#service.update(document.uri, document.version, document.getText());
    })(undefined);
    this.#publish(document.uri);
    this.#refreshReaders(document.uri);
  }

  #publish(uri: string): void {
    const version = this.#service.snapshot(uri)?.version;
    const diagnostics = this.#guard("checks", [], () => this.#service.diagnostics(uri))(undefined);
    void this.#connection.sendDiagnostics({
      uri,
      diagnostics,
      ...(version === undefined ? {} : { version }),
    });
  }

  /** A changed book changes the trips that lean on it. */
  #refreshReaders(uri: string): void {
    const readers = this.#service
      .openUris()
      .filter(
        (other) => other !== uri && this.#service.snapshot(other)?.books.some((book) => book.uri === uri),
      );
    for (const reader of readers) {
      this.#service.refresh(reader);
      this.#publish(reader);
    }
    if (readers.length > 0) this.#refreshHints();
  }

  #close(uri: string): void {
    this.#service.close(uri);
    void this.#connection.sendDiagnostics({ uri, diagnostics: [] });
  }

  #refreshAll(): void {
    this.#world.forgetFiles();
    for (const uri of this.#service.openUris()) {
      this.#service.refresh(uri);
      this.#publish(uri);
    }
    this.#refreshHints();
  }

  #refreshHints(): void {
    if (this.#canRefreshHints) this.#connection.languages.inlayHint.refresh();
  }

  async #askSettings(): Promise<void> {
    if (!this.#canAskSettings) return;
    this.#settings = readSettings(await this.#connection.workspace.getConfiguration("deepwake"));
    this.#refreshAll();
  }

  async #configure(pushed: unknown): Promise<void> {
    if (this.#canAskSettings) return this.#askSettings();
    const section = (pushed as { deepwake?: unknown } | null)?.deepwake;
    this.#settings = readSettings(section);
    this.#refreshAll();
  }
}
