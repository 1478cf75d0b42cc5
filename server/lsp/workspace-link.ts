/** Joins the index of the workspace to the server: what happens to documents and files goes in, findings come out. */
import type { Connection, Diagnostic, FileEvent } from "vscode-languageserver";
import type { LanguageService } from "../service/language-service.ts";
import type { IndexView } from "../workspace/index-view.ts";
import type { WorkspaceFiles } from "../workspace/workspace-files.ts";
import type { ClosedFile, NamedFindings } from "./diagnostic-report.ts";
import type { Guard } from "./guard.ts";
import { Indexing, type Keeping } from "./indexing.ts";
import type { ServerWorld } from "./server-world.ts";
import type { Settings } from "./settings.ts";
import { BackgroundTurns, type Preparer } from "./turns.ts";

/** Spellings of more addresses are told anew; past what an index holds twice over. */
const MOST_ADDRESSES = 50_000;

/** What the link needs of the server. */
export interface LinkedServer {
  readonly connection: Connection;
  readonly guard: Guard;
  readonly preparer: Preparer;
  readonly world: ServerWorld;
  /** The service with every edit in it. */
  service(): LanguageService;
  settings(): Settings;
  /** Documents wait to be checked. */
  isBusy(): boolean;
  pullsDiagnostics(): boolean;
  /** Diagnostics as this client takes them. */
  forClient(uri: string, diagnostics: readonly Diagnostic[]): Diagnostic[];
}

/** The workspace of one server. */
export class WorkspaceLink {
  readonly #server: LinkedServer;
  readonly #indexing: Indexing;
  /** Open documents as the client writes their addresses, by the one spelling of each. */
  readonly #open = new Map<string, string>();
  /** The one spelling of each address that was asked about. */
  readonly #addresses = new Map<string, string>();

  constructor(server: LinkedServer, files: WorkspaceFiles) {
    this.#server = server;
    const { connection, guard, preparer, world } = server;
    const isOpen = (uri: string): boolean => this.#open.has(uri);
    this.#indexing = new Indexing({
      connection,
      guard,
      turns: new BackgroundTurns(preparer, () => server.isBusy()),
      files,
      open: {
        uris: () => this.#open.values(),
        parseOf: (uri) => server.service().snapshot(this.#open.get(this.#address(uri)) ?? uri)?.parse,
      },
      checking: {
        booksNear: (uri) => server.service().booksNear(uri),
        choices: () => ({ ...server.settings(), today: world.today?.() }),
        ready: (uri) => world.ready?.(uri),
        failed: (uri, error) => guard.background(`checking ${uri}`, Promise.reject(error)),
        isOpen,
      },
      telling: {
        forClient: (uri, diagnostics) => server.forClient(uri, diagnostics),
        send: (uri, diagnostics) => this.#send(uri, diagnostics),
        isWanted: () => server.settings().checksWorkspace,
        isOpen,
      },
    });
  }

  /** What searches read; complete once `searchable` is. */
  get view(): IndexView {
    return this.#indexing.view;
  }

  /** The same without the documents that are open, however the client writes their addresses. */
  get closedView(): IndexView {
    const { view } = this;
    const isOpen = (uri: string): boolean => this.#open.has(this.#address(uri));
    return {
      *records() {
        for (const record of view.records()) if (!isOpen(record.uri)) yield record;
      },
      record: (uri) => (isOpen(uri) ? undefined : view.record(this.#address(uri))),
    };
  }

  /** Answers when every file that is known to have changed was looked at. */
  searchable(): Promise<void> {
    return this.#indexing.searchable();
  }

  start(keeping: Keeping | undefined): void {
    this.#indexing.start(keeping);
  }

  /** A document was opened or edited. */
  opened(uri: string): void {
    const address = this.#address(uri);
    if (this.#open.get(address) === uri) return;
    this.#open.set(address, uri);
    this.#indexing.opened(address);
  }

  /** What was typed into a document was checked. */
  edited(uri: string): void {
    this.#indexing.edited(this.#address(uri));
  }

  closed(uri: string): void {
    const address = this.#address(uri);
    this.#open.delete(address);
    this.#indexing.documentClosed(address);
  }

  filesChanged(changes: readonly FileEvent[]): void {
    this.#indexing.filesChanged(changes.map(({ uri }) => ({ uri: this.#address(uri) })));
  }

  /** Folders came or went; those named are gone. */
  foldersChanged(gone: readonly string[] = []): void {
    for (const uri of gone) this.#indexing.removed(this.#address(uri));
    this.#indexing.rescan();
  }

  settingsChanged(): void {
    this.#indexing.recheck();
  }

  /** What was found in files that aren't open, each as soon as it is known. */
  closedFiles(): AsyncIterable<ClosedFile> {
    return this.#indexing.follow();
  }

  /** What was found in a file that isn't open; undefined where it isn't known yet. */
  diagnosticsOf(uri: string): NamedFindings | undefined {
    return this.#indexing.closed.of(this.#address(uri));
  }

  /** The one spelling of an address under which files are listed. */
  #address(uri: string): string {
    const known = this.#addresses.get(uri);
    if (known !== undefined) return known;
    const address = this.#server.world.canonical?.(uri) ?? uri;
    if (this.#addresses.size >= MOST_ADDRESSES) this.#addresses.clear();
    this.#addresses.set(uri, address);
    return address;
  }

  #send(uri: string, diagnostics: readonly Diagnostic[]): void {
    const { guard, connection, pullsDiagnostics } = this.#server;
    if (pullsDiagnostics()) return;
    const found = { uri, diagnostics: [...diagnostics] };
    guard.background("sending diagnostics", connection.sendDiagnostics(found));
  }
}
