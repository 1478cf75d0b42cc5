/**
 * Every feature of the language on one screen. Pure: texts and books go in, plain LSP data comes out; files, clock,
 * settings and connection belong to the caller.
 */
import type {
  CodeAction,
  CompletionItem,
  Diagnostic,
  DocumentSymbol,
  FoldingRange,
  Hover,
  InlayHint,
  Location,
  Position,
  Range,
  TextEdit,
} from "vscode-languageserver-types";
import { createDepthMemo } from "../analysis/depth-memo.ts";
import type { SeverityChoices } from "../checks/run-checks.ts";
import type { BookFile } from "../model/gear-lines.ts";
import { tokensWithMark, withMark, withoutMark } from "./byte-order-mark.ts";
import { codeActions } from "./code-actions.ts";
import { completion } from "./completion.ts";
import { definition } from "./definition.ts";
import { diagnostics } from "./diagnostics.ts";
import { documentSymbols } from "./document-symbols.ts";
import { foldingRanges } from "./folding-ranges.ts";
import { formatting } from "./formatting.ts";
import { hover } from "./hover.ts";
import { inlayHints } from "./inlay-hints.ts";
import { letOutMarkdownAt } from "./let-out-command.ts";
import { semanticTokens } from "./semantic-tokens.ts";
import { readAgain, Snapshot } from "./snapshot.ts";

/** What the service asks of the world around it. */
export interface ServiceHost {
  /** Gear books within reach of a document, nearest first, itself left out. */
  booksNear(uri: string): readonly BookFile[];
  /** Severities the user chose. */
  severities(): SeverityChoices;
  /** The day it is, `2031-06-21`; nothing is said of days to come without it. */
  readonly today?: () => string;
}

/** The language service over a set of open documents. */
export class LanguageService {
  readonly #host: ServiceHost;
  readonly #memo = createDepthMemo();
  readonly #open = new Map<string, Snapshot>();

  constructor(host: ServiceHost) {
    this.#host = host;
  }

  /** Takes a document's text at a version; unchanged lines are kept from the version before. */
  update(uri: string, version: number, text: string): Snapshot {
    const parse = readAgain(this.#open.get(uri), text);
    const snapshot = new Snapshot(
      { uri, version, parse },
      this.#booksNear(uri),
      this.#memo,
      this.#host.severities(),
      this.#host.today?.(),
    );
    this.#open.set(uri, snapshot);
    return snapshot;
  }

  /** Computes a document anew with the books and settings as they are now. */
  refresh(uri: string): Snapshot | undefined {
    const known = this.#open.get(uri);
    if (known === undefined) return undefined;
    const snapshot = new Snapshot(
      known,
      this.#booksNear(uri),
      this.#memo,
      this.#host.severities(),
      this.#host.today?.(),
    );
    this.#open.set(uri, snapshot);
    return snapshot;
  }

  close(uri: string): void {
    this.#open.delete(uri);
  }

  snapshot(uri: string): Snapshot | undefined {
    return this.#open.get(uri);
  }

  openUris(): string[] {
    return [...this.#open.keys()];
  }

  /** An open book is read as it stands in the editor, not as it was saved. */
  #booksNear(uri: string): readonly BookFile[] {
    return this.#host.booksNear(uri).map((book) => {
      const open = this.#open.get(book.uri);
      return open === undefined ? book : { uri: book.uri, parse: open.parse };
    });
  }

  diagnostics = (uri: string): Diagnostic[] => this.#answer(uri, [], diagnostics);
  hover = (uri: string, at: Position): Hover | null =>
    this.#answer(uri, null, (document, move) => hover(document, move(at)));
  inlayHints = (uri: string, range: Range): InlayHint[] =>
    this.#answer(uri, [], (document) => inlayHints(document, range));
  documentSymbols = (uri: string): DocumentSymbol[] => this.#answer(uri, [], documentSymbols);
  foldingRanges = (uri: string): FoldingRange[] => this.#answer(uri, [], foldingRanges);
  completion = (uri: string, at: Position): CompletionItem[] =>
    this.#answer(uri, [], (document, move) => completion(document, move(at)));
  formatting = (uri: string, range?: Range): TextEdit[] =>
    this.#answer(uri, [], (document) => formatting(document, range));
  codeActions = (uri: string, { start, end }: Range, only?: readonly string[]): CodeAction[] =>
    this.#answer(uri, [], (document, move) =>
      codeActions(document, { start: move(start), end: move(end) }, only),
    );
  definition = (uri: string, at: Position): Location | null =>
    this.#answer(uri, null, (document, move) => definition(document, move(at)));
  letOutTable = (uri: string, line: number): string | null =>
    this.#answer(uri, null, (document) => letOutMarkdownAt(document, line));
  semanticTokens = (uri: string, range?: Range): number[] => {
    const document = this.#open.get(uri);
    if (document === undefined) return [];
    const data = semanticTokens(document, range?.start.line, range?.end.line);
    return document.parse.journal.bom ? tokensWithMark(data) : data;
  };

  /** Asks a feature about an open document; a byte order mark is taken out of what goes in and put back after. */
  #answer<T>(uri: string, none: T, ask: (document: Snapshot, move: (at: Position) => Position) => T): T {
    const document = this.#open.get(uri);
    if (document === undefined) return none;
    if (!document.parse.journal.bom) return ask(document, (at) => at);
    return withMark(ask(document, withoutMark), uri);
  }
}
