/** An editor that somebody uses at random: it keeps its own copy of every text, and tells the server what it does. */
import { LSPErrorCodes, ResponseError } from "vscode-languageserver";
import { CancellationTokenSource } from "vscode-languageserver-protocol";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { Random } from "../../bench/random.ts";
import type { TestClient } from "../test-client.ts";
import { randomEdit, randomText } from "./random-edit.ts";
import { randomQuestion } from "./random-question.ts";

/** Settings that are switched between. */
const SETTINGS = [
  {},
  { hints: { depth: false } },
  { checks: { "number-format": "off", "touching-bottom": "hint" } },
  { checks: { syntax: "information" }, hints: { depth: "yes" } },
  { hints: { temperature: false } },
];

const FOLDER = "file:///season/";

/** What is on the disk. */
export interface SessionDisk {
  /** Texts by address: gear books, and trips where those are kept too. */
  readonly books: Map<string, string>;
  readonly keepsTrips?: boolean;
}

/** The whole state of the editor, played step by step. */
export class RandomEditor {
  readonly open = new Map<string, TextDocument>();
  settings: object = {};
  readonly #random: Random;
  readonly #client: TestClient;
  readonly #world: SessionDisk;
  readonly #undo = new Map<string, string[]>();
  readonly #shut = new Map<string, string>();
  #asked: Promise<unknown>[] = [];
  #names = 0;
  /** How often each kind of step was taken. */
  readonly taken = new Map<string, number>();

  constructor(random: Random, client: TestClient, world: SessionDisk) {
    this.#random = random;
    this.#client = client;
    this.#world = world;
    for (const [uri, text] of world.books) this.#shut.set(uri, text);
  }

  /** Does one thing; `isRare` makes it one that no text changes by: a file shut, saved, gone, or a setting. */
  async step(isRare = this.#random.chance(0.15)): Promise<void> {
    const kinds = ["edit", "edit", "edit", "edit", "edit", "edit", "ask", "ask", "undo", "burst"];
    const rare = ["open", "shut", "save", "rename", "delete", "settings", "whole"];
    const kind = this.#random.pick<string>(isRare ? rare : kinds);
    this.taken.set(kind, (this.taken.get(kind) ?? 0) + 1);
    if (this.open.size === 0) await this.#openOne();
    await this.#do(kind);
  }

  /** Waits for everything that was asked. */
  async answered(): Promise<void> {
    const asked = this.#asked;
    this.#asked = [];
    await Promise.all(asked);
  }

  #do(kind: string): Promise<void> {
    switch (kind) {
      case "ask":
        return this.#ask();
      case "undo":
        return this.#undoOne();
      case "burst":
        return this.#burst();
      case "open":
        return this.#openOne();
      case "shut":
        return this.#shutOne(this.#any());
      case "save":
        return this.#save(this.#any());
      case "rename":
        return this.#rename(this.#any());
      case "delete":
        return this.#delete(this.#any());
      case "settings":
        return this.#set(this.#random.pick(SETTINGS));
      case "whole":
        return this.#replace(this.#any());
      default:
        return this.#edit(this.#any(), 1);
    }
  }

  #any(): TextDocument {
    return this.#random.pick([...this.open.values()]);
  }

  /** A file that was shut before, or a new one. */
  async #openOne(): Promise<void> {
    const known = [...this.#shut.keys()];
    const isKnown = known.length > 0 && this.#random.chance(0.6);
    const uri = isKnown ? this.#random.pick(known) : this.#newUri();
    const text = this.#shut.get(uri) ?? randomText(this.#random, uri);
    this.#shut.delete(uri);
    if (this.open.size >= 6) await this.#shutOne(this.#any());
    await this.#openAs(uri, text);
  }

  async #openAs(uri: string, text: string): Promise<void> {
    this.open.set(uri, TextDocument.create(uri, "deepwake", 1, text));
    this.#undo.set(uri, []);
    await this.#client.open(uri, text);
  }

  #newUri(): string {
    this.#names++;
    if (this.#random.chance(0.1)) return `untitled:Untitled-${this.#names}`;
    return `${FOLDER}${this.#names}.${this.#random.chance(0.3) ? "gear" : "trip"}`;
  }

  /** What wasn't saved is gone, as when a captain says so. */
  async #shutOne({ uri }: TextDocument): Promise<void> {
    const { [uri]: saved } = Object.fromEntries(this.#world.books);
    if (saved !== undefined) this.#shut.set(uri, saved);
    this.open.delete(uri);
    await this.#client.close(uri);
  }

  async #edit(document: TextDocument, count: number): Promise<void> {
    this.#remember(document);
    const changes = Array.from({ length: count }, () => {
      const edit = randomEdit(this.#random, document);
      TextDocument.update(document, [edit], document.version);
      return edit;
    });
    TextDocument.update(document, [], document.version + 1);
    await this.#client.change(document.uri, document.version, changes);
  }

  /** Several quick edits and a question among them, as fast typing gives. */
  async #burst(): Promise<void> {
    const document = this.#any();
    await this.#edit(document, 3);
    await this.#ask();
    await this.#edit(document, 1);
  }

  async #undoOne(): Promise<void> {
    const document = this.#any();
    const before = this.#undo.get(document.uri)?.pop();
    if (before === undefined) return;
    TextDocument.update(document, [{ text: before }], document.version + 1);
    await this.#client.change(document.uri, document.version, [{ text: before }]);
  }

  async #replace(document: TextDocument): Promise<void> {
    const text = randomText(this.#random, document.uri);
    this.#remember(document);
    TextDocument.update(document, [{ text }], document.version + 1);
    await this.#client.change(document.uri, document.version, [{ text }]);
  }

  #remember(document: TextDocument): void {
    const before = this.#undo.get(document.uri) ?? [];
    this.#undo.set(document.uri, [...before.slice(-20), document.getText()]);
  }

  async #save(document: TextDocument): Promise<void> {
    if (this.#isKept(document.uri)) this.#world.books.set(document.uri, document.getText());
    else this.#shut.delete(document.uri);
    await this.#client.notify("textDocument/didSave", { textDocument: { uri: document.uri } });
    await this.#watched(document.uri, 2);
  }

  /** Closed under one name, opened under another, as editors do it. */
  async #rename(document: TextDocument): Promise<void> {
    const uri = this.#newUri();
    const saved = this.#world.books.get(document.uri);
    this.#world.books.delete(document.uri);
    if (saved !== undefined && this.#isKept(uri)) this.#world.books.set(uri, saved);
    this.open.delete(document.uri);
    await this.#client.close(document.uri);
    await this.#openAs(uri, document.getText());
    await this.#watched(document.uri, 3);
    await this.#watched(uri, 1);
  }

  #isKept(uri: string): boolean {
    return uri.endsWith(".gear") || (this.#world.keepsTrips === true && uri.endsWith(".trip"));
  }

  async #delete(document: TextDocument): Promise<void> {
    this.#world.books.delete(document.uri);
    this.open.delete(document.uri);
    await this.#client.close(document.uri);
    await this.#watched(document.uri, 3);
  }

  async #set(settings: object): Promise<void> {
    this.settings = settings;
    await this.#client.notify("workspace/didChangeConfiguration", { settings: { deepwake: settings } });
  }

  #watched(uri: string, type: number): Promise<void> {
    return this.#client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri, type }] });
  }

  /** A question that is often taken back; it is answered, cancelled or said to be stale, and nothing else. */
  async #ask(): Promise<void> {
    const { method, params } = randomQuestion(this.#random, this.#any());
    const cancel = new CancellationTokenSource();
    const answer = this.#client.connection.sendRequest(method, params, cancel.token);
    this.#asked.push(answer.catch(refuseOthers));
    if (this.#random.chance(0.3)) cancel.cancel();
    await Promise.resolve();
  }
}

/** Given up, out of date, or refused in the captain's words, as a rename of what has no name of its own is. */
const FINE: readonly number[] = [
  LSPErrorCodes.RequestFailed,
  LSPErrorCodes.RequestCancelled,
  LSPErrorCodes.ContentModified,
  LSPErrorCodes.ServerCancelled,
];

function refuseOthers(error: unknown): void {
  if (!(error instanceof ResponseError) || !FINE.includes(error.code)) throw error;
}
