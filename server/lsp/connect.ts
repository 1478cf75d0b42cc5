/** Joins the language service to a connection. A feature that throws is logged and answers empty; the server lives on. */
import {
  type Connection,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  type FileEvent,
  type InitializeParams,
  type InitializeResult,
  ResponseError,
} from "vscode-languageserver";
import { LanguageService } from "../service/language-service.ts";
import { kindOfFile } from "../workspace/file-record.ts";
import type { WorkspaceFiles } from "../workspace/workspace-files.ts";
import { answerNames } from "./answer-names.ts";
import { answerRequests } from "./answer-requests.ts";
import { type ClientAbilities, capabilitiesFor, clientAbilities, rootsOf } from "./capabilities.ts";
import { CheckQueue } from "./check-queue.ts";
import { Desk } from "./desk.ts";
import type { ClosedFile } from "./diagnostic-report.ts";
import { Documents } from "./documents.ts";
import { FileLines } from "./file-lines.ts";
import { FileTexts } from "./file-texts.ts";
import { createGuard } from "./guard.ts";
import type { Keeping } from "./indexing.ts";
import { REFUSED, type Refusal } from "./message-gate.ts";
import { fromClient } from "./position-encoding.ts";
import { Publishing } from "./publishing.ts";
import { DiagnosticPulls } from "./pull-diagnostics.ts";
import { Rehearsal } from "./rehearsal.ts";
import { Rereading } from "./rereading.ts";
import type { ServerWorld } from "./server-world.ts";
import { storageIn } from "./settings.ts";
import { SettingsInUse } from "./settings-in-use.ts";
import { createTranslator, type Translator } from "./translate-positions.ts";
import { BackgroundTurns, Preparer } from "./turns.ts";
import { WorkspaceLink } from "./workspace-link.ts";

/** The files whose changes on disk matter. */
const WATCHED = "**/*.{trip,gear}";

/** How long the workspace waits for the settings it is checked by, ms. */
const SETTINGS_MS = 1000;

/** Serves one client until it says goodbye. The connection has to be made with the options of `gateMessages`. */
export function connect(connection: Connection, world: ServerWorld): void {
  new Server(connection, world).listen();
}

class Server {
  readonly #connection: Connection;
  readonly #world: ServerWorld;
  readonly #documents: Documents;
  readonly #service: LanguageService;
  readonly #guard = createGuard((message) => this.#connection.console.error(message));
  readonly #settings: SettingsInUse;
  readonly #rereading: Rereading;
  readonly #preparer: Preparer;
  readonly #queue: CheckQueue;
  readonly #desk: Desk;
  readonly #publishing: Publishing;
  readonly #pulls: DiagnosticPulls;
  readonly #lines: FileLines;
  readonly #rehearsal: Rehearsal;
  readonly #workspace: WorkspaceLink | undefined;
  /** Texts of files that aren't open. */
  readonly #texts: FileTexts;
  #keeping: Keeping | undefined;
  #client: ClientAbilities = clientAbilities({ processId: null, rootUri: null, capabilities: {} });
  #translator: Translator = createTranslator(this.#client.encoding, () => undefined);

  constructor(connection: Connection, world: ServerWorld) {
    this.#connection = connection;
    this.#world = world;
    const guard = this.#guard;
    const client = (): ClientAbilities => this.#client;
    const translator = (): Translator => this.#translator;
    this.#settings = new SettingsInUse({ connection, guard, client, changed: () => this.#settingsChanged() });
    this.#service = this.#makeService();
    const service = this.#service;
    this.#documents = new Documents((uri, version, parse) => {
      guard.ask("reading", undefined, () => void service.take(uri, version, parse))(undefined);
      this.#rereading.again(this.#rereading.readersOf(uri));
    });
    const settle = (): void => this.#documents.settle();
    this.#texts = new FileTexts((uri) => world.files?.read(uri));
    this.#lines = new FileLines({ service, documents: this.#documents, texts: this.#texts, world });
    this.#rereading = new Rereading({
      guard,
      world,
      service,
      settle,
      tell: (uris) => this.#publishing.tell(uris),
    });
    const ready = (uri: string): Promise<void> | undefined => this.#rereading.ready(uri);
    this.#preparer = new Preparer((uri) => this.#settled().snapshot(uri), ready, guard);
    const preparer = this.#preparer;
    this.#queue = new CheckQueue(preparer, guard, (uri) => this.#checked(uri));
    this.#desk = new Desk({ guard, preparer, translator, settle, ready });
    const pulls = (): DiagnosticPulls => this.#pulls;
    this.#publishing = new Publishing({
      connection,
      guard,
      service,
      preparer,
      pulls,
      client,
      translated: (diagnostics, uri) => {
        this.#lines.forget();
        return this.#translator.outgoing(diagnostics, uri);
      },
    });
    this.#pulls = this.#makePulls();
    this.#rehearsal = new Rehearsal({
      guard,
      turns: new BackgroundTurns(preparer, () => this.#queue.isBusy),
      service: () => this.#settled(),
    });
    this.#workspace = world.files === undefined ? undefined : this.#linkTo(world.files);
  }

  #makeService(): LanguageService {
    const world = this.#world;
    return new LanguageService({
      booksNear: this.#guard.ask("finding gear books", [], (uri: string) => world.booksNear(uri)),
      severities: () => this.#settings.current.severities,
      closedFiles: {
        index: {
          records: () => this.#workspace?.closedView.records() ?? [],
          record: (uri) => this.#workspace?.closedView.record(uri),
        },
        read: (uri) => this.#lines.parseOf(uri),
        text: (uri) => this.#lines.textOf(uri),
      },
      thresholds: () => this.#settings.current.thresholds,
      now: () => Date.now(),
      ...(world.today === undefined ? {} : { today: world.today }),
    });
  }

  #makePulls(): DiagnosticPulls {
    return new DiagnosticPulls(this.#desk, {
      openUris: () => this.#settled().openUris(),
      readersOf: (uri) => this.#rereading.readersOf(uri),
      versionOf: (uri) => this.#service.snapshot(uri)?.version,
      diagnostics: (uri) => this.#publishing.diagnostics(uri),
      closedFiles: () => this.#closedFiles(),
      closedFile: (uri) => this.#workspace?.diagnosticsOf(uri),
      takesRelated: () => this.#client.takesRelated,
    });
  }

  #linkTo(files: WorkspaceFiles): WorkspaceLink {
    return new WorkspaceLink(
      {
        connection: this.#connection,
        guard: this.#guard,
        preparer: this.#preparer,
        world: this.#world,
        service: () => this.#settled(),
        settings: () => this.#settings.current,
        isBusy: () => this.#queue.isBusy,
        pullsDiagnostics: () => this.#client.pullsDiagnostics,
        forClient: (uri, diagnostics) => this.#publishing.forClient(uri, diagnostics),
      },
      files,
    );
  }

  async *#closedFiles(): AsyncGenerator<ClosedFile> {
    if (this.#workspace !== undefined) yield* this.#workspace.closedFiles();
  }

  listen(): void {
    const connection = this.#connection;
    connection.onInitialize((params) => this.#initialize(params));
    connection.onInitialized(() => this.#initialized());
    connection.onRequest(REFUSED, ({ code, message }: Refusal) => new ResponseError(code, message));
    connection.onDidChangeConfiguration((change) => this.#settings.configure(change.settings));
    connection.onDidChangeWatchedFiles(({ changes }) => this.#filesChanged(changes));
    this.#listenToFolders();
    this.#documents.listen(connection, {
      changed: (uri) => {
        this.#preparer.typed();
        this.#workspace?.opened(uri);
        this.#queue.add(uri);
      },
      closed: (uri) => this.#close(uri),
    });
    answerRequests(connection, this.#service, this.#desk, {
      settings: () => this.#settings.current,
      client: () => this.#client,
      applyEdit: (edit) => this.#applyEdit(edit),
    });
    answerNames(
      connection,
      this.#service,
      this.#desk,
      () => this.#client,
      async (question) => {
        await this.#workspace?.searchable();
        return await this.#texts.complete(question);
      },
    );
    this.#pulls.listen(connection);
    connection.listen();
  }

  #initialize(params: InitializeParams): InitializeResult {
    const client = clientAbilities(params);
    this.#client = client;
    this.#documents.readColumn = (line, character) => fromClient(client.encoding, line, character);
    this.#translator = createTranslator(client.encoding, (uri, line) => this.#lines.lineText(uri, line));
    this.#world.setRoots(rootsOf(params));
    this.#settings.begin(params.initializationOptions);
    const storage = storageIn(params.initializationOptions);
    this.#keeping = storage === undefined ? undefined : this.#world.keeping?.(storage);
    return { serverInfo: { name: "deepwake" }, capabilities: capabilitiesFor(client) };
  }

  /** Asks for what only a client that can tell is asked for. */
  #initialized(): void {
    const { client, workspace } = this.#connection;
    if (this.#client.registersSettings)
      this.#background(
        "registering for settings",
        client.register(DidChangeConfigurationNotification.type, { section: "deepwake" }),
      );
    if (this.#client.registersWatchers) {
      const watchers = [{ globPattern: WATCHED }];
      this.#background(
        "watching files",
        client.register(DidChangeWatchedFilesNotification.type, { watchers }),
      );
    }
    if (this.#client.hasFolders)
      workspace.onDidChangeWorkspaceFolders(() => this.#background("reading folders", this.#readFolders()));
    const settings = this.#settings.start();
    this.#background("reading settings", settings);
    const start = (): void => this.#workspace?.start(this.#keeping);
    const known = Promise.race([settings, new Promise((resolve) => setTimeout(resolve, SETTINGS_MS))]);
    void known.then(start, start);
  }

  #background(name: string, work: Promise<unknown>): void {
    this.#guard.background(name, work);
  }

  #settingsChanged(): void {
    this.#rereading.those(this.#settled().openUris());
    this.#workspace?.settingsChanged();
  }

  /** What the captain does in the editor's tree of files, folders too: those no watcher tells of. */
  #listenToFolders(): void {
    const { workspace } = this.#connection;
    const refresh = (uris: readonly string[]): void => {
      this.#world.forgetFiles();
      this.#workspace?.foldersChanged(uris);
      this.#rereading.those(this.#settled().openUris());
    };
    workspace.onDidCreateFiles(() => refresh([]));
    workspace.onDidDeleteFiles(({ files }) => refresh(files.map(({ uri }) => uri)));
    workspace.onDidRenameFiles(({ files }) => refresh(files.map(({ oldUri }) => oldUri)));
  }

  async #readFolders(): Promise<void> {
    const folders = await this.#connection.workspace.getWorkspaceFolders();
    this.#world.setRoots((folders ?? []).map((folder) => folder.uri));
    this.#rereading.all();
    this.#workspace?.foldersChanged();
  }

  /** Open documents lean on books, which a change of a trip leaves as they are. */
  #filesChanged(changes: readonly FileEvent[]): void {
    this.#lines.forget();
    if (changes.some(({ uri }) => kindOfFile(uri) === "gear")) this.#rereading.all();
    this.#workspace?.filesChanged(changes);
  }

  #applyEdit(edit: unknown): void {
    if (typeof edit !== "object" || edit === null) return;
    const translated = this.#translator.outgoing(edit, undefined);
    this.#background("applying an edit", this.#connection.workspace.applyEdit(translated));
  }

  /** The service with every edit in it. */
  #settled(): LanguageService {
    this.#documents.settle();
    return this.#service;
  }

  /** A document's checks cost no more time. */
  #checked(uri: string): void {
    if (this.#settled().snapshot(uri) === undefined) return;
    this.#publishing.checked(uri);
    // A changed book changed the trips that lean on it.
    this.#publishing.tell(this.#rereading.readersOf(uri));
    this.#workspace?.edited(uri);
    this.#rehearsal.begin(uri);
  }

  #close(uri: string): void {
    this.#service.close(uri);
    this.#pulls.forget(uri);
    this.#publishing.closed(uri);
    // What was typed into a book and not saved is gone.
    this.#rereading.those(this.#rereading.readersOf(uri));
    this.#workspace?.closed(uri);
  }
}
