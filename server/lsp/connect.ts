/** Joins the language service to a connection. A feature that throws is logged and answers empty; the server lives on. */
import {
  CodeLensRefreshRequest,
  type Connection,
  type Diagnostic,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  type FileEvent,
  type InitializeParams,
  type InitializeResult,
  MessageType,
  ResponseError,
  ShowMessageNotification,
} from "vscode-languageserver";
import { type Parse, parse } from "../../grammar/parse.ts";
import { LanguageService, type ServiceHost } from "../service/language-service.ts";
import { kindOfFile } from "../workspace/file-record.ts";
import type { WorkspaceFiles } from "../workspace/workspace-files.ts";
import { answerNames } from "./answer-names.ts";
import { answerRequests } from "./answer-requests.ts";
import { type ClientAbilities, capabilitiesFor, clientAbilities, rootsOf } from "./capabilities.ts";
import { CheckQueue } from "./check-queue.ts";
import { Desk } from "./desk.ts";
import type { NamedFindings } from "./diagnostic-report.ts";
import { Documents } from "./documents.ts";
import { FileTexts } from "./file-texts.ts";
import { diagnosticsFor } from "./for-client.ts";
import { createGuard } from "./guard.ts";
import type { Keeping } from "./indexing.ts";
import { REFUSED, type Refusal } from "./message-gate.ts";
import { fromClient } from "./position-encoding.ts";
import { DiagnosticPulls } from "./pull-diagnostics.ts";
import { DEFAULT_SETTINGS, isSameSettings, readSettings, type Settings, storageIn } from "./settings.ts";
import { createTranslator, type Translator } from "./translate-positions.ts";
import { Preparer } from "./turns.ts";
import { WorkspaceLink } from "./workspace-link.ts";

/** A file of the workspace that isn't open, with what is found in it. */
export interface ClosedFile extends NamedFindings {
  readonly uri: string;
}

/** What the transport brings: books from wherever the files are. */
export interface ServerWorld {
  booksNear: ServiceHost["booksNear"];
  /** The day it is where the captain sits, `2031-06-21`. */
  readonly today?: () => string;
  /** Called with the workspace's folders before anything else is asked, and when they change. */
  setRoots(uris: readonly string[]): void;
  /** Files on disk changed. */
  forgetFiles(): void;
  /** Fetches the books near a document where that takes time; undefined when they are there. */
  ready?(uri: string): Promise<void> | undefined;
  /** The files of the workspace, where they can be listed. */
  readonly files?: WorkspaceFiles;
  /** Where an index is kept; `storage` is what the client gave for it. */
  keeping?(storage: string): Keeping | undefined;
  /** The one spelling of an address under which `files` lists it; clients may write others. */
  canonical?(uri: string): string;
  /** A file that isn't open, read. */
  parseOf?(uri: string): Parse | undefined;
}

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
  readonly #preparer: Preparer;
  readonly #queue: CheckQueue;
  readonly #desk: Desk;
  readonly #pulls: DiagnosticPulls;
  readonly #workspace: WorkspaceLink | undefined;
  /** Texts of files that aren't open. */
  readonly #texts: FileTexts;
  #keeping: Keeping | undefined;
  #looked: { readonly uri: string; readonly parse: Parse } | undefined;
  readonly #awaited = new WeakMap<Promise<void>, Promise<void>>();
  #settings: Settings = DEFAULT_SETTINGS;
  /** What of the settings in use was told that it can't be used. */
  #told: readonly string[] = [];
  #client: ClientAbilities = clientAbilities({ processId: null, rootUri: null, capabilities: {} });
  #translator: Translator = createTranslator(this.#client.encoding, () => undefined);

  constructor(connection: Connection, world: ServerWorld) {
    this.#connection = connection;
    this.#world = world;
    this.#texts = new FileTexts((uri) => world.files?.read(uri));
    this.#service = new LanguageService({
      booksNear: this.#guard.ask("finding gear books", [], (uri: string) => world.booksNear(uri)),
      severities: () => this.#settings.severities,
      closedFiles: {
        index: {
          records: () => this.#workspace?.closedView.records() ?? [],
          record: (uri) => this.#workspace?.closedView.record(uri),
        },
        read: (uri) => this.#parseOf(uri),
      },
      thresholds: () => this.#settings.thresholds,
      now: () => Date.now(),
      ...(world.today === undefined ? {} : { today: world.today }),
    });
    this.#documents = new Documents((uri, version, parse) => {
      this.#guard.ask("reading", undefined, () => void this.#service.take(uri, version, parse))(undefined);
      this.#refreshService(this.#readersOf(uri));
    });
    const ready = (uri: string): Promise<void> | undefined => this.#ready(uri);
    this.#preparer = new Preparer((uri) => this.#settled().snapshot(uri), ready, this.#guard);
    this.#queue = new CheckQueue(this.#preparer, this.#guard, (uri) => this.#checked(uri));
    const settle = (): void => this.#documents.settle();
    const translator = (): Translator => this.#translator;
    this.#desk = new Desk({ guard: this.#guard, preparer: this.#preparer, translator, settle, ready });
    this.#pulls = new DiagnosticPulls(this.#desk, {
      openUris: () => this.#settled().openUris(),
      readersOf: (uri) => this.#readersOf(uri),
      versionOf: (uri) => this.#service.snapshot(uri)?.version,
      diagnostics: (uri) => this.#diagnostics(uri),
      closedFiles: () => this.#closedFiles(),
      closedFile: (uri) => this.#workspace?.diagnosticsOf(uri),
      takesRelated: () => this.#client.takesRelated,
    });
    this.#workspace = world.files === undefined ? undefined : this.#linkTo(world.files);
  }

  #linkTo(files: WorkspaceFiles): WorkspaceLink {
    return new WorkspaceLink(
      {
        connection: this.#connection,
        guard: this.#guard,
        preparer: this.#preparer,
        world: this.#world,
        service: () => this.#settled(),
        settings: () => this.#settings,
        isBusy: () => this.#queue.isBusy,
        pullsDiagnostics: () => this.#client.pullsDiagnostics,
        forClient: (uri, diagnostics) => this.#forClient(uri, diagnostics),
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
    connection.onDidChangeConfiguration((change) => this.#configure(change.settings));
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
      settings: () => this.#settings,
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
    this.#translator = createTranslator(client.encoding, (uri, line) => this.#lineText(uri, line));
    this.#world.setRoots(rootsOf(params));
    this.#settings = readSettings(params.initializationOptions);
    const storage = storageIn(params.initializationOptions);
    this.#keeping = storage === undefined ? undefined : this.#world.keeping?.(storage);
    return { serverInfo: { name: "deepwake" }, capabilities: capabilitiesFor(client) };
  }

  /** Asks for what only a client that can tell is asked for. */
  #initialized(): void {
    const { client, workspace } = this.#connection;
    this.#warn(this.#settings.problems);
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
    const settings = this.#client.tellsSettings ? this.#askSettings() : Promise.resolve();
    this.#background("reading settings", settings);
    const start = (): void => this.#workspace?.start(this.#keeping);
    const known = Promise.race([settings, new Promise((resolve) => setTimeout(resolve, SETTINGS_MS))]);
    void known.then(start, start);
  }

  /** What the captain does in the editor's tree of files, folders too: those no watcher tells of. */
  #listenToFolders(): void {
    const { workspace } = this.#connection;
    const refresh = (uris: readonly string[]): void => {
      this.#world.forgetFiles();
      this.#workspace?.foldersChanged(uris);
      this.#refresh(this.#settled().openUris());
    };
    workspace.onDidCreateFiles(() => refresh([]));
    workspace.onDidDeleteFiles(({ files }) => refresh(files.map(({ uri }) => uri)));
    workspace.onDidRenameFiles(({ files }) => refresh(files.map(({ oldUri }) => oldUri)));
  }

  /** Open documents lean on books, which a change of a trip leaves as they are. */
  #filesChanged(changes: readonly FileEvent[]): void {
    this.#looked = undefined;
    if (changes.some(({ uri }) => kindOfFile(uri) === "gear")) this.#refreshAll();
    this.#workspace?.filesChanged(changes);
  }

  #applyEdit(edit: unknown): void {
    if (typeof edit !== "object" || edit === null) return;
    const translated = this.#translator.outgoing(edit, undefined);
    this.#background("applying an edit", this.#connection.workspace.applyEdit(translated));
  }

  #background(name: string, work: Promise<unknown>): void {
    this.#guard.background(name, work);
  }

  /** The service with every edit in it. */
  #settled(): LanguageService {
    this.#documents.settle();
    return this.#service;
  }

  /** A line as the client has it: of an open document, a book that one leans on, or a file that is kept. */
  #lineText(uri: string, line: number): string | undefined {
    if (this.#service.snapshot(uri) !== undefined) return this.#documents.lineText(uri, line);
    const books = this.#service.openUris().flatMap((open) => this.#service.snapshot(open)?.books ?? []);
    const parse = books.find((book) => book.uri === uri)?.parse ?? this.#parseOf(uri);
    const raw = parse?.journal.lines[line]?.raw;
    return line === 0 && parse?.journal.bom === true && raw !== undefined ? `\ufeff${raw}` : raw;
  }

  /** A file that isn't open, read; kept while the places of one answer are looked up. */
  #parseOf(uri: string): Parse | undefined {
    if (this.#looked?.uri === uri) return this.#looked.parse;
    const text = this.#texts.read(uri);
    const read = text === undefined ? this.#world.parseOf?.(uri) : parse(text);
    this.#looked = read === undefined ? undefined : { uri, parse: read };
    return read;
  }

  #diagnostics(uri: string): Diagnostic[] {
    return this.#guard.ask("checks", [], () => this.#forClient(uri, this.#service.diagnostics(uri)))(
      undefined,
    );
  }

  #forClient(uri: string, diagnostics: readonly Diagnostic[]): Diagnostic[] {
    this.#looked = undefined;
    return this.#translator.outgoing(diagnosticsFor(this.#client, diagnostics), uri);
  }

  /** A document's checks cost no more time; a client that asks for them does so itself. */
  #checked(uri: string): void {
    if (this.#settled().snapshot(uri) === undefined) return;
    if (!this.#client.pullsDiagnostics) this.#publish(uri);
    // A changed book changed the trips that lean on it.
    this.#tell(this.#readersOf(uri));
    this.#workspace?.edited(uri);
  }

  #publish(uri: string): void {
    const version = this.#service.snapshot(uri)?.version;
    const found = {
      uri,
      diagnostics: this.#diagnostics(uri),
      ...(version === undefined ? {} : { version }),
    };
    this.#background("sending diagnostics", this.#connection.sendDiagnostics(found));
  }

  #readersOf(uri: string): string[] {
    const leansOn = (other: string): boolean =>
      other !== uri && this.#service.snapshot(other)?.books.some((book) => book.uri === uri) === true;
    return this.#service.openUris().filter(leansOn);
  }

  #close(uri: string): void {
    this.#service.close(uri);
    this.#pulls.forget(uri);
    if (!this.#client.pullsDiagnostics)
      this.#background("clearing diagnostics", this.#connection.sendDiagnostics({ uri, diagnostics: [] }));
    // What was typed into a book and not saved is gone.
    this.#refresh(this.#readersOf(uri));
    this.#workspace?.closed(uri);
  }

  #refreshAll(): void {
    this.#world.forgetFiles();
    this.#refresh(this.#settled().openUris());
  }

  /** Computes documents anew with the books and settings as they are now. */
  #refresh(uris: readonly string[]): void {
    const waiting = uris.flatMap((uri) => this.#ready(uri) ?? []);
    this.#refreshService(uris);
    this.#background(
      "reading again",
      Promise.all(waiting).then(() => this.#tell(uris)),
    );
  }

  /** Has the client hear of documents that changed without being edited. */
  #tell(uris: readonly string[]): void {
    if (uris.length === 0) return;
    const { languages } = this.#connection;
    if (this.#client.refreshesHints) this.#background("refreshing hints", languages.inlayHint.refresh());
    if (this.#client.refreshesLenses)
      this.#background("refreshing lenses", this.#connection.sendRequest(CodeLensRefreshRequest.type));
    if (!this.#client.pullsDiagnostics) this.#background("sending diagnostics", this.#publishAll(uris));
    else if (this.#client.refreshesDiagnostics)
      this.#background("refreshing diagnostics", this.#refreshDiagnostics(uris));
  }

  async #refreshDiagnostics(uris: readonly string[]): Promise<void> {
    if (await this.#pulls.isStale(uris)) await this.#connection.languages.diagnostics.refresh();
  }

  /** One after another, in turns; what changes meanwhile is checked by whoever changed it. */
  async #publishAll(uris: readonly string[]): Promise<void> {
    for (const uri of uris) {
      const how = await this.#preparer.prepare(uri);
      if (how === "ready" && this.#service.snapshot(uri) !== undefined) this.#publish(uri);
    }
  }

  #refreshService(uris: readonly string[]): void {
    for (const uri of uris)
      this.#guard.ask("reading again", undefined, () => void this.#settled().refresh(uri))(undefined);
  }

  /** Waits for the books near a document where they have to be fetched; those that came are then leaned on. */
  #ready(uri: string): Promise<void> | undefined {
    const fetched = this.#world.ready?.(uri);
    if (fetched === undefined) return undefined;
    const known = this.#awaited.get(fetched);
    if (known !== undefined) return known;
    const leanedOn = fetched.then(() => this.#refreshService(this.#service.openUris()));
    this.#awaited.set(fetched, leanedOn);
    return leanedOn;
  }

  async #readFolders(): Promise<void> {
    const folders = await this.#connection.workspace.getWorkspaceFolders();
    this.#world.setRoots((folders ?? []).map((folder) => folder.uri));
    this.#refreshAll();
    this.#workspace?.foldersChanged();
  }

  async #askSettings(): Promise<void> {
    this.#use(readSettings(await this.#connection.workspace.getConfiguration("deepwake")));
  }

  /** A client that can be asked is asked; from others come the settings themselves. */
  #configure(pushed: unknown): void {
    if (this.#client.tellsSettings) this.#background("reading settings", this.#askSettings());
    else this.#use(readSettings((pushed as { deepwake?: unknown } | null)?.deepwake));
  }

  /** Shows what can't be used of the settings, each once until it was mended. */
  #warn(problems: readonly string[]): void {
    for (const message of problems.filter((problem) => !this.#told.includes(problem))) {
      const shown = this.#connection.sendNotification(ShowMessageNotification.type, {
        type: MessageType.Warning,
        message,
      });
      this.#background("telling of settings", shown);
    }
    this.#told = problems;
  }

  #use(settings: Settings): void {
    this.#warn(settings.problems);
    if (isSameSettings(settings, this.#settings)) return;
    this.#settings = settings;
    this.#refresh(this.#settled().openUris());
    this.#workspace?.settingsChanged();
  }
}
