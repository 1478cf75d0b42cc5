/** Joins the language service to a connection. A feature that throws is logged and answers empty; the server lives on. */
import {
  type Connection,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  type InitializeParams,
  type InitializeResult,
  TextDocuments,
} from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import { LanguageService, type ServiceHost } from "../service/language-service.ts";
import { answerRequests } from "./answer-requests.ts";
import { type ClientAbilities, clientAbilities, rootsOf, SERVER_CAPABILITIES } from "./capabilities.ts";
import { CheckQueue } from "./check-queue.ts";
import { createGuard } from "./guard.ts";
import { DEFAULT_SETTINGS, isSameSettings, readSettings, type Settings } from "./settings.ts";

/** What the transport brings: books from wherever the files are. */
export interface ServerWorld {
  booksNear: ServiceHost["booksNear"];
  /** The day it is where the captain sits, `2031-06-21`. */
  readonly today?: () => string;
  /** Called with the workspace's folders before anything else is asked, and when they change. */
  setRoots(uris: readonly string[]): void;
  /** Files on disk changed. */
  forgetFiles(): void;
}

/** The files whose changes on disk matter. */
const WATCHED = "**/*.{trip,gear}";

/** Serves one client until it says goodbye. */
export function connect(connection: Connection, world: ServerWorld): void {
  new Server(connection, world).listen();
}

class Server {
  readonly #connection: Connection;
  readonly #world: ServerWorld;
  readonly #documents = new TextDocuments(TextDocument);
  readonly #service: LanguageService;
  readonly #guard = createGuard((message) => this.#connection.console.error(message));
  #settings: Settings = DEFAULT_SETTINGS;
  #client: ClientAbilities | undefined;
  readonly #queue: CheckQueue;

  constructor(connection: Connection, world: ServerWorld) {
    this.#connection = connection;
    this.#world = world;
    this.#service = new LanguageService({
      booksNear: this.#guard.ask("finding gear books", [], (uri: string) => world.booksNear(uri)),
      severities: () => this.#settings.severities,
      ...(world.today === undefined ? {} : { today: world.today }),
    });
    this.#queue = new CheckQueue(this.#service, this.#guard, (uri) => {
      this.#publish(uri);
      this.#refreshReaders(uri);
    });
  }

  listen(): void {
    const connection = this.#connection;
    connection.onInitialize((params) => this.#initialize(params));
    connection.onInitialized(() => this.#initialized());
    connection.onDidChangeConfiguration((change) => this.#configure(change.settings));
    connection.onDidChangeWatchedFiles(() => this.#refreshAll());
    this.#documents.onDidChangeContent(({ document }) => this.#take(document));
    this.#documents.onDidClose(({ document }) => this.#close(document.uri));
    answerRequests(connection, this.#service, this.#guard, () => this.#settings);
    this.#documents.listen(connection);
    connection.listen();
  }

  #initialize(params: InitializeParams): InitializeResult {
    this.#client = clientAbilities(params);
    this.#world.setRoots(rootsOf(params));
    this.#settings = readSettings(params.initializationOptions);
    return { serverInfo: { name: "deepwake" }, capabilities: SERVER_CAPABILITIES };
  }

  /** Asks for what only a client that can tell is asked for. */
  #initialized(): void {
    const { client, workspace } = this.#connection;
    if (this.#client?.registersSettings === true)
      this.#background(
        "registering for settings",
        client.register(DidChangeConfigurationNotification.type, { section: "deepwake" }),
      );
    if (this.#client?.registersWatchers === true) {
      const watchers = [{ globPattern: WATCHED }];
      this.#background(
        "watching files",
        client.register(DidChangeWatchedFilesNotification.type, { watchers }),
      );
    }
    if (this.#client?.hasFolders === true)
      workspace.onDidChangeWorkspaceFolders(() => this.#background("reading folders", this.#readFolders()));
    if (this.#client?.tellsSettings === true) this.#background("reading settings", this.#askSettings());
  }

  #background(name: string, work: Promise<unknown>): void {
    this.#guard.background(name, work);
  }

  #take(document: TextDocument): void {
    this.#guard.ask("reading", undefined, () => {
      this.#service.update(document.uri, document.version, document.getText());
    })(undefined);
    this.#queue.add(document.uri);
  }

  #publish(uri: string): void {
    const version = this.#service.snapshot(uri)?.version;
    const diagnostics = this.#guard.ask("checks", [], () => this.#service.diagnostics(uri))(undefined);
    const found = { uri, diagnostics, ...(version === undefined ? {} : { version }) };
    this.#background("sending diagnostics", this.#connection.sendDiagnostics(found));
  }

  /** A changed book changes the trips that lean on it. */
  #refreshReaders(uri: string): void {
    const leansOn = (other: string): boolean =>
      other !== uri && this.#service.snapshot(other)?.books.some((book) => book.uri === uri) === true;
    this.#refresh(this.#service.openUris().filter(leansOn));
  }

  #close(uri: string): void {
    this.#service.close(uri);
    this.#background("clearing diagnostics", this.#connection.sendDiagnostics({ uri, diagnostics: [] }));
    // What was typed into a book and not saved is gone.
    this.#refreshReaders(uri);
  }

  #refreshAll(): void {
    this.#world.forgetFiles();
    this.#refresh(this.#service.openUris());
  }

  #refresh(uris: readonly string[]): void {
    for (const uri of uris) {
      this.#guard.ask("reading again", undefined, () => void this.#service.refresh(uri))(undefined);
      this.#publish(uri);
    }
    if (uris.length > 0 && this.#client?.refreshesHints === true)
      this.#background("refreshing hints", this.#connection.languages.inlayHint.refresh());
  }

  async #readFolders(): Promise<void> {
    const folders = await this.#connection.workspace.getWorkspaceFolders();
    this.#world.setRoots((folders ?? []).map((folder) => folder.uri));
    this.#refreshAll();
  }

  async #askSettings(): Promise<void> {
    this.#use(readSettings(await this.#connection.workspace.getConfiguration("deepwake")));
  }

  /** A client that can be asked is asked; from others come the settings themselves. */
  #configure(pushed: unknown): void {
    if (this.#client?.tellsSettings === true) this.#background("reading settings", this.#askSettings());
    else this.#use(readSettings((pushed as { deepwake?: unknown } | null)?.deepwake));
  }

  #use(settings: Settings): void {
    if (isSameSettings(settings, this.#settings)) return;
    this.#settings = settings;
    this.#refresh(this.#service.openUris());
  }
}
