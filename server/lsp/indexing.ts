/** Keeps the index of the workspace, and what is found in files that aren't open, up with what happens to them. */
import type { Connection, FileEvent } from "vscode-languageserver";
import { kindOfFile } from "../workspace/file-record.ts";
import type { IndexView } from "../workspace/index-view.ts";
import { readSavedIndex, saveIndex } from "../workspace/saved-index.ts";
import { type CheckHost, WorkspaceChecks } from "../workspace/workspace-checks.ts";
import type { IndexStore, Turns, WorkspaceFiles } from "../workspace/workspace-files.ts";
import { type OpenDocuments, WorkspaceIndex } from "../workspace/workspace-index.ts";
import { ClosedFindings, type Telling } from "./closed-findings.ts";
import type { ClosedFile } from "./diagnostic-report.ts";
import type { Guard } from "./guard.ts";
import { CHECKING, IndexProgress, READING } from "./index-progress.ts";

/** What indexing needs from around it. */
export interface IndexingParts {
  readonly connection: Connection;
  readonly guard: Guard;
  readonly turns: Turns;
  readonly files: WorkspaceFiles;
  readonly open: OpenDocuments;
  readonly checking: Omit<CheckHost, "read">;
  readonly telling: Telling;
}

/** Where an index is kept between runs, and which build of the program keeps it. */
export interface Keeping {
  readonly store: IndexStore;
  readonly program: string;
}

/** An edited gear book is taken to be finished with when nothing was typed into it for so long, ms. */
const BOOK_PAUSE_MS = 300;
/** How long what was found may wait for more to be handed out with it, ms. */
const FOLLOWED_MS = 500;
/** After so many files checked the index is kept, so that a long first check is not lost. */
const SAVED_EVERY = 200;
const TOO_MANY = "The workspace holds more journals or folders than are looked at; the rest is not searched.";

/** Follows one workspace. Nothing here is waited for by anybody who types. */
export class Indexing {
  readonly #parts: IndexingParts;
  readonly #index: WorkspaceIndex;
  readonly #checks: WorkspaceChecks;
  readonly #closed: ClosedFindings;
  #keeping: Keeping | undefined;
  /** Looks at files, one after the other; the first once `start` is called. */
  #looking: Promise<void>;
  #begin: () => void = () => undefined;
  #checking: Promise<void> | undefined;
  #bookPause: ReturnType<typeof setTimeout> | undefined;
  #runsSaved = 0;
  #isToBeSaved = false;

  constructor(parts: IndexingParts) {
    this.#parts = parts;
    this.#looking = new Promise((resolve) => {
      this.#begin = resolve;
    });
    const { files, open, checking, telling } = parts;
    this.#index = new WorkspaceIndex(files, open);
    this.#checks = new WorkspaceChecks(this.#index, { ...checking, read: (uri) => files.read(uri) });
    this.#closed = new ClosedFindings(this.#index, this.#checks, telling);
  }

  /** What searches read; complete once `searchable` is. */
  get view(): IndexView {
    return this.#index;
  }

  /** What was found in files that aren't open. */
  get closed(): ClosedFindings {
    return this.#closed;
  }

  /** How much work was done, for tests that count it. */
  get work(): { readonly files: number; readonly lines: number; readonly checks: number } {
    return { ...this.#index.work, checks: this.#checks.runs };
  }

  /** Begins: takes what was kept, reads what changed since, then checks everything. */
  start(keeping: Keeping | undefined): void {
    this.#keeping = keeping;
    if (keeping !== undefined) this.#look("reading the kept index", () => this.#restore(keeping));
    this.rescan();
    this.#begin();
  }

  /** Answers when it has started and every file that is known to have changed was looked at. */
  async searchable(): Promise<void> {
    let looking: Promise<void>;
    do {
      looking = this.#looking;
      await looking;
    } while (looking !== this.#looking);
  }

  /** Answers when nothing waits to be checked. */
  async settled(): Promise<void> {
    do {
      await this.searchable();
      await this.#checking;
    } while (this.#checking !== undefined);
  }

  /** What was found in files that aren't open, each as soon as it is known, until nothing waits to be checked. */
  async *follow(): AsyncGenerator<ClosedFile> {
    const given = new Map<string, string>();
    let isSettled = false;
    const settled = this.settled().then(() => {
      isSettled = true;
    });
    await this.searchable();
    for (let isLast = false; !isLast; ) {
      isLast = isSettled;
      for (const file of this.#closed.all()) {
        if (this.#checks.isWaiting(file.uri)) continue;
        if (given.get(file.uri) !== file.resultId) yield file;
        given.set(file.uri, file.resultId);
      }
      if (!isLast) await Promise.race([settled, new Promise((resolve) => setTimeout(resolve, FOLLOWED_MS))]);
    }
  }

  /** Folders came, went or were renamed: every file is looked at. */
  rescan(): void {
    this.#look("indexing", async () => {
      const progress = new IndexProgress(this.#parts.connection, READING);
      const { removed, changed, isCut } = await this.#index
        .scan(this.#parts.turns, progress.report)
        .finally(() => progress.end());
      if (isCut) this.#parts.connection.window.showWarningMessage(TOO_MANY);
      this.#isToBeSaved ||= changed.length + removed.length > 0;
      for (const uri of removed) this.#forget(uri);
      // Kept before everything is checked: that may take longer than the captain has the editor open.
      if (this.#isToBeSaved) this.#save();
      this.recheck();
    });
  }

  /** Files changed on disk, as whoever watches them says. */
  filesChanged(changes: readonly Pick<FileEvent, "uri">[]): void {
    this.#look("reading changed files", async () => {
      const changed: string[] = [];
      for (const uri of new Set(changes.map((change) => change.uri))) {
        if (await this.#index.update(uri)) changed.push(uri);
        await this.#parts.turns.pause();
      }
      for (const uri of changed) if (!this.#index.kept().has(uri)) this.#forget(uri);
      this.#isToBeSaved ||= changed.length > 0;
      // Trips lean on books only.
      if (changes.some(({ uri }) => kindOfFile(uri) === "gear")) this.recheck();
      else this.recheck(changed);
    });
  }

  /** A file or folder is gone. */
  removed(uri: string): void {
    this.#look("forgetting files", async () => {
      for (const gone of this.#index.remove(uri)) this.#forget(gone);
      this.#isToBeSaved = true;
      this.recheck();
    });
  }

  /** An open document was edited; a book is waited with until it is finished. */
  edited(uri: string): void {
    if (kindOfFile(uri) !== "gear") return;
    clearTimeout(this.#bookPause);
    this.#bookPause = setTimeout(() => this.recheck(), BOOK_PAUSE_MS);
  }

  /** A document was opened: what is said of it is now for others to say. */
  opened(uri: string): void {
    this.#closed.tell(uri);
  }

  /** A document was closed: it counts as it is on disk. */
  documentClosed(uri: string): void {
    this.filesChanged([{ uri }]);
    this.#look("checking a closed file", async () => this.recheck([uri]));
  }

  /** Looks at files whose findings may hang on something new; at all of them where none are named. */
  recheck(uris?: Iterable<string>): void {
    if (this.#parts.telling.isWanted()) this.#checks.ask(uris);
    else this.#checks.giveUp();
    this.#closed.tellAll();
    if (this.#checking === undefined) this.#beginChecking();
  }

  #beginChecking(): void {
    this.#checking = this.#parts.guard.safely("checking the workspace", this.#check()).finally(() => {
      this.#checking = undefined;
      // Asked for between the last look and now.
      if (this.#checks.waiting > 0) this.#beginChecking();
    });
  }

  async #check(): Promise<void> {
    const { connection, turns } = this.#parts;
    const progress = new IndexProgress(connection, CHECKING, () => this.#checks.giveUp());
    let done = 0;
    await this.#checks
      .run(turns, (uri) => {
        progress.report(++done, done + this.#checks.waiting);
        this.#closed.tell(uri);
        if (this.#checks.runs - this.#runsSaved >= SAVED_EVERY) this.#save();
      })
      .finally(() => progress.end());
    if (this.#isToBeSaved || this.#checks.runs > this.#runsSaved) this.#save();
  }

  #forget(uri: string): void {
    this.#checks.forget(uri);
    this.#closed.tell(uri);
  }

  /** One look at the files after the other, so that the later always knows better. */
  #look(name: string, work: () => Promise<void>): void {
    this.#looking = this.#looking.then(() => this.#parts.guard.safely(name, work()));
  }

  async #restore({ store, program }: Keeping): Promise<void> {
    const parts = await store.read();
    const saved = parts === undefined ? undefined : readSavedIndex(program, parts);
    if (saved === undefined) return;
    this.#index.restore(saved.names, saved.files);
    this.#checks.restore(saved.checked);
  }

  #save(): void {
    this.#runsSaved = this.#checks.runs;
    this.#isToBeSaved = false;
    if (this.#keeping === undefined) return;
    const { store, program } = this.#keeping;
    const files = this.#index.kept().values();
    const parts = saveIndex(program, { names: this.#index.names, files, checked: this.#checks.checked() });
    this.#parts.guard.background(
      "keeping the index",
      Promise.resolve(parts).then((all) => store.write(all)),
    );
  }
}
